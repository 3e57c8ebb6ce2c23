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
  const texts = [...new Set(gaps.map((item) => gapText(page, item)))];
  return joined(
    section(
      'gaps',
      labels.gaps,
      element('p', {}, gaps.length === 0 ? labels.noGaps : labels.gapNote),
      list(texts),
    ),
    section('outside', labels.outside, list(coverage.outside.map((text) => outsideText(text)))),
  );

  function outsideText(text: string): string {
    return teller.display('regions', text);
  }
}

function gapText({ teller }: Page, item: CoverageItem): string {
  const side = item.side === undefined ? '' : `, ${teller.side(item.side)}`;
  switch (item.kind) {
    case 'region':
      return teller.place(item.code, item.side);
    case 'method':
      return `${teller.place(item.code, item.side)}: ${teller.display('methods', item.method ?? '')}`;
    case 'point':
      return `${teller.display('testPoints', item.code)}${side}: ${teller.display('modalities', item.modality ?? '')}`;
    case 'test':
      return `${teller.display('testPoints', item.code)}${side}`;
    case 'measure':
      return `${teller.display('measures', item.code)}${side}`;
  }
}
