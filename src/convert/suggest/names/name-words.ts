import type { Side } from '../../../model/primitive.ts';

/*
 * Words in the names of fields, folded (common practice, no source): English and German, and the few of
 * Spanish, French and Dutch that no other language reads differently.
 */

/** Words that are a side wherever they stand. */
export const sideWords: ReadonlyMap<string, Side> = new Map<string, Side>([
  ...[
    'right',
    'rechts',
    'rechte',
    'rechter',
    'rechtes',
    'dexter',
    'derecha',
    'derecho',
    'droit',
    'droite',
  ].map((word): [string, Side] => [word, 'right']),
  ...[
    'left',
    'links',
    'linke',
    'linker',
    'linkes',
    'sinister',
    'izquierda',
    'izquierdo',
    'gauche',
  ].map((word): [string, Side] => [word, 'left']),
  ...['both', 'bilateral', 'bilaterally', 'beidseits', 'beidseitig', 'beide', 'bds'].map(
    (word): [string, Side] => [word, 'both'],
  ),
]);

export interface ShortSide {
  readonly right: string;
  readonly left: string;
  readonly both?: string;
  /** Section of the exam whose organs alone are named so: OD is the right eye. */
  readonly section?: string;
}

/** Words that are a side only where the other of the pair stands in another name of the export. */
export const shortSides: readonly ShortSide[] = [
  { right: 'r', left: 'l', both: 'b' },
  { right: 'rt', left: 'lt' },
  { right: 're', left: 'li' },
  { right: 're', left: 'le' },
  { right: 'od', left: 'os', both: 'ou', section: 'eyes' },
  { right: 'ad', left: 'as', both: 'au', section: 'ears' },
];

/** Words that turn what a name says into its opposite, or could. */
export const negations: ReadonlySet<string> = new Set([
  ...['no', 'not', 'non', 'without', 'absent', 'absence', 'lack', 'denies', 'denied', 'negative'],
  ...['neg', 'nil', 'never', 'none', 'excluded', 'free', 'ruled', 'negated', 'nor', 'un'],
  ...['kein', 'keine', 'keinen', 'keiner', 'keines', 'ohne', 'nicht', 'nie', 'verneint', 'fehlt'],
  ...['fehlend', 'fehlende', 'fehlender', 'fehlendes', 'negativ', 'ausgeschlossen', 'frei'],
  ...['sin', 'sans', 'pas', 'ninguna', 'ninguno', 'geen'],
]);

export const modalityWords: ReadonlyMap<string, string> = new Map([
  ['soft', 'light-touch'],
  ['touch', 'light-touch'],
  ['cotton', 'light-touch'],
  ['beruhrung', 'light-touch'],
  ['sharp', 'pinprick'],
  ['pin', 'pinprick'],
  ['pinprick', 'pinprick'],
  ['spitz', 'pinprick'],
  ['nadel', 'pinprick'],
]);

/** Units as names write them, with the UCUM code; no other is read from a name. */
export const unitWords: ReadonlyMap<string, string> = new Map([
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['l/min', 'L/min'],
  ['deg', 'deg'],
  ['°', 'deg'],
]);

/** Words that say no more than that there is a result, folded. */
export const emptyWords: ReadonlySet<string> = new Set([
  ...['finding', 'findings', 'status', 'exam', 'examination', 'result', 'value', 'assessment'],
  ...['befund', 'wert', 'ergebnis', 'untersuchung', 'beurteilung', 'skin', 'haut'],
]);

/** Abbreviations inside names, with what they stand for, folded. */
export const abbreviations: ReadonlyMap<string, string> = new Map([
  ['lk', 'lymphknoten'],
  ['ln', 'node'],
]);
