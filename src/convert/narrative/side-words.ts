import { folded } from '../../find/fold.ts';

/** A side as a text names it; `of` is the part of the body whose organs alone are named so. */
export interface NamedSide {
  readonly side: 'right' | 'left' | 'both';
  readonly of?: 'eyes' | 'ears';
}

/** Words that are a side wherever they stand, folded: English and German (common practice, no source). */
const words: ReadonlyMap<string, NamedSide> = new Map<string, NamedSide>([
  ...listed(
    'right',
    'right right-sided rightsided rt rechts rechte rechter rechtes rechten rechtem',
  ),
  ...listed('right', 'rechtsseitig rechtsseitige rechtsseitiger rechtsseitiges rechtsseitigen'),
  ...listed('left', 'left left-sided leftsided lt links linke linker linkes linken linkem'),
  ...listed('left', 'linksseitig linksseitige linksseitiger linksseitiges linksseitigen'),
  ...listed('both', 'both bilateral bilaterally beidseits beidseitig beidseitige beidseitiger'),
  ...listed('both', 'beidseitiges beidseitigen beide beider beiden bds bdst beids'),
]);

/** Abbreviations that are sides as they are written here, and nothing in another case. */
const abbreviations: ReadonlyMap<string, NamedSide> = new Map<string, NamedSide>([
  ['R', { side: 'right' }],
  ['L', { side: 'left' }],
  ['OD', { side: 'right', of: 'eyes' }],
  ['OS', { side: 'left', of: 'eyes' }],
  ['OU', { side: 'both', of: 'eyes' }],
  ['AD', { side: 'right', of: 'ears' }],
  ['AS', { side: 'left', of: 'ears' }],
  ['AU', { side: 'both', of: 'ears' }],
]);

/** With a point behind it: `re` alone is English for "about". */
const pointed: ReadonlyMap<string, NamedSide> = new Map<string, NamedSide>([
  ['re', { side: 'right' }],
  ['li', { side: 'left' }],
]);

function listed(side: NamedSide['side'], list: string): (readonly [string, NamedSide])[] {
  return list.split(' ').map((word) => [folded(word), { side }] as const);
}

/** The side that a word is; `point`: a full stop stands behind it. */
export function sideOfWord(word: string, point: boolean): NamedSide | undefined {
  const low = folded(word);
  return abbreviations.get(word) ?? words.get(low) ?? (point ? pointed.get(low) : undefined);
}
