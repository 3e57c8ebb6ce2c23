import { joined, words } from '../../report/html.ts';
import { methodText, type Page } from '../../report/page.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { KindPage, ToldAlone, ToldAmong } from '../facets/page.ts';
import type { Finding } from './statement.ts';

/** Signs: what is there in lines of their own; what is denied, or usual, together with its like. */
export const findingPage: KindPage<Finding> = {
  tell: (finding, page) => {
    const { teller, catalogue, labels } = page;
    const name = teller.subject(finding);
    if (isAbnormal(finding, catalogue)) {
      if (finding.presence === 'absent') return abnormal(finding, page, teller.absence(finding));
      const suspected = finding.certainty === 'suspected';
      return abnormal(finding, page, suspected ? `${labels.suspectedAs}: ${name}` : name);
    }
    if (finding.presence === 'absent')
      return among(finding, page, 'negatives', teller.absence(finding));
    if (finding.presence === 'present') return among(finding, page, 'usual', name);
    return among(finding, page, 'undecided', `${labels.undecidedAs}: ${name}`);
  },
  mark: (finding, catalogue) => (isAbnormal(finding, catalogue) ? 'sign' : 'said'),
};

/** There and not usual, or usual and not there. What was not decided is neither. */
function isAbnormal({ finding, presence }: Finding, catalogue: Catalogue): boolean {
  const usual = catalogue.findings.get(finding)?.usual === true;
  return usual ? presence === 'absent' : presence === 'present';
}

function abnormal(finding: Finding, page: Page, head: string): ToldAlone {
  const { teller } = page;
  const attributes = (finding.attributes ?? []).map(teller.attribute);
  return {
    section: 'abnormal',
    line: joined(
      `${head} – ${teller.placeOf(finding)}`,
      finding.place && joined(' (', words(finding.place), ')'),
      attributes.length > 0 && `. ${attributes.join('; ')}`,
      methodText(page, finding),
    ),
  };
}

/** With words of its own on the place a sign has a line of its own. */
function among(
  finding: Finding,
  page: Page,
  section: 'negatives' | 'usual' | 'undecided',
  head: string,
): ToldAlone | ToldAmong {
  const { region, side, except, place } = finding;
  const tail = tailOf(page, finding);
  if (place === undefined) return { section, head, of: { region, side, except }, tail };
  const line = [`${head}: ${page.teller.placeOf(finding)} (`, words(place), `)${tail}`];
  return { section, line: joined(line) };
}

/** Attributes and methods: those of what is denied are refused by the parser and told all the same. */
function tailOf(page: Page, finding: Finding): string {
  const attributes = (finding.attributes ?? []).map(page.teller.attribute);
  return `${attributes.length > 0 ? `. ${attributes.join('; ')}` : ''}${methodText(page, finding)}`;
}
