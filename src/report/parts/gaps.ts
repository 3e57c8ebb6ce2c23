import type { CoverageItem } from '../../checks/coverage/coverage.ts';
import { listIn } from '../../checks/exam-index.ts';
import { cautionText } from '../../checks/words/check-words.ts';
import type { Side } from '../../model/primitive.ts';
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
  const named: CoverageItem[] = [];
  for (const gap of gaps) {
    if (gap.kind === 'region' || (gap.kind === 'method' && silent.has(`${gap.code}/${gap.side}`))) {
      continue;
    }
    if (gap.kind === 'method' && gap.method !== undefined) {
      listIn(missing, teller.display('methods', gap.method)).push(placeOf(gap));
    } else {
      named.push(gap);
    }
  }
  const nothing = labels.marks.silent;
  return [
    ...(whole.length === 0 ? [] : [`${nothing}${placesText(whole, page)}`]),
    ...[...missing].map(
      ([method, places]) => `${labels.gapOf} ${method}${placesText(places, page)}`,
    ),
    ...pointTexts(page, named),
  ];
}

function placeOf({ code, side }: CoverageItem): ToldPlace {
  return { region: code, side };
}

/** Tests and measures of which nothing was said, those on the same sides and in the same ways in one line. */
function pointTexts({ teller, labels }: Page, gaps: readonly CoverageItem[]): string[] {
  const points = new Map<string, CoverageItem[]>();
  for (const gap of gaps) listIn(points, `${gap.kind}/${gap.code}`).push(gap);
  const alike = new Map<string, string[]>();
  for (const some of points.values()) {
    const [{ kind, code } = { kind: 'point', code: '' }] = some;
    const name = teller.display(kind === 'measure' ? 'measures' : 'testPoints', code);
    listIn(alike, waysText(teller, some)).push(name);
  }
  return [...alike].map(([ways, names]) => `${labels.gapOf} ${names.join('; ')}${ways}`);
}

/** ` – right and left: Light touch; Pinprick` */
function waysText(teller: Page['teller'], gaps: readonly CoverageItem[]): string {
  const bySide = new Map<Side | undefined, string[]>();
  for (const { side, modality } of gaps) {
    const ways = listIn(bySide, side);
    if (modality !== undefined) ways.push(teller.display('modalities', modality));
  }
  const [right, left] = [bySide.get('right'), bySide.get('left')];
  if (right !== undefined && right.join() === left?.join()) {
    bySide.delete('right');
    bySide.delete('left');
    bySide.set('both', right);
  }
  return [...bySide]
    .map(([side, ways]) => {
      const where = side === undefined ? '' : ` – ${teller.side(side)}`;
      return `${where}${ways.length > 0 ? `: ${ways.join('; ')}` : ''}`;
    })
    .join('');
}
