import type { CoverageItem } from '../../checks/coverage/coverage.ts';
import { type Content, element, joined, list, section } from '../html.ts';
import type { Page } from '../page.ts';

/** What the protocol asks for and the exam is silent on; and what the protocol leaves out. */
export function gapPart(page: Page): Content {
  const { checks, labels, teller } = page;
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
    section('outside', labels.outside, list(coverage.outside.map((text) => outsideText(text)))),
  );

  function outsideText(text: string): string {
    return teller.display('regions', text);
  }
}

/** One line a place: the place alone where all of it is missing, else what is missing there. */
function gapTexts({ teller }: Page, gaps: readonly CoverageItem[]): string[] {
  const lines = new Map<string, string[]>();
  const whole = new Set<string>();
  for (const item of gaps) {
    const place = gapPlace(teller, item);
    const line = lines.get(place) ?? [];
    lines.set(place, line);
    if (item.kind === 'region') whole.add(place);
    if (item.method !== undefined) line.push(teller.display('methods', item.method));
    if (item.modality !== undefined) line.push(teller.display('modalities', item.modality));
  }
  return [...lines].map(([place, missing]) =>
    whole.has(place) || missing.length === 0 ? place : `${place}: ${missing.join(', ')}`,
  );
}

function gapPlace(teller: Page['teller'], { kind, code, side }: CoverageItem): string {
  if (kind === 'region' || kind === 'method') return teller.place(code, side);
  const name = teller.display(kind === 'measure' ? 'measures' : 'testPoints', code);
  return side === undefined ? name : `${name}, ${teller.side(side)}`;
}
