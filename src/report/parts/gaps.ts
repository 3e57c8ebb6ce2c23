import type { CoverageItem } from '../../checks/coverage/coverage.ts';
import { cautionText } from '../../checks/words/check-words.ts';
import { type Content, element, joined, list, section } from '../html.ts';
import { inEnglish, type Page } from '../page.ts';
import { placesText } from '../places.ts';
import type { ToldPlace } from '../teller.ts';

/** What the protocol asks for and the exam is silent on; and what the protocol leaves out. */
export function gapPart(page: Page): Content {
  const { checks, labels, teller, catalogue } = page;
  const { coverage } = checks;
  if (coverage === undefined) {
    return section('gaps', labels.gaps, element('p', {}, labels.unknownProtocol));
  }
  const gaps = coverage.items.filter((item) => item.status === 'gap');
  return joined(
    section(
      'gaps',
      labels.gaps,
      element('p', {}, gaps.length === 0 ? labels.noGaps : labels.gapNote),
      list(gapTexts(page, gaps)),
    ),
    section(
      'outside',
      labels.outside,
      list(
        coverage.outside.map((text) =>
          catalogue.regions.has(text) ? teller.display('regions', text) : inEnglish(text),
        ),
      ),
    ),
    coverage.cautions.length > 0 &&
      section(
        'mind',
        labels.checks.headings.mind,
        list(coverage.cautions.map((id) => cautionText(labels.checks, id))),
      ),
  );
}

/** Places of which all is missing together, then those where something is missing, by what. */
function gapTexts(page: Page, gaps: readonly CoverageItem[]): string[] {
  const { teller, labels } = page;
  const whole = gaps.filter(({ kind }) => kind === 'region').map(placeOf);
  const silent = new Set(whole.map(({ region, side }) => `${region}/${side}`));
  const missing = new Map<string, ToldPlace[]>();
  const named: string[] = [];
  for (const gap of gaps) {
    if (gap.kind === 'region' || (gap.kind === 'method' && silent.has(`${gap.code}/${gap.side}`))) {
      continue;
    }
    if (gap.kind === 'method' && gap.method !== undefined) {
      const method = teller.display('methods', gap.method);
      missing.set(method, [...(missing.get(method) ?? []), placeOf(gap)]);
    } else {
      named.push(pointText(page, gap));
    }
  }
  const nothing = labels.marks.silent;
  return [
    ...(whole.length === 0 ? [] : [`${nothing}${placesText(whole, page)}`]),
    ...[...missing].map(
      ([method, places]) => `${labels.gapOf} ${method}${placesText(places, page)}`,
    ),
    ...named,
  ];
}

function placeOf({ code, side }: CoverageItem): ToldPlace {
  return { region: code, side };
}

function pointText({ teller, labels }: Page, { kind, code, side, modality }: CoverageItem): string {
  const name = teller.display(kind === 'measure' ? 'measures' : 'testPoints', code);
  const what = modality === undefined ? '' : `, ${teller.display('modalities', modality)}`;
  return `${labels.gapOf} ${name}${side === undefined ? '' : `, ${teller.side(side)}`}${what}`;
}
