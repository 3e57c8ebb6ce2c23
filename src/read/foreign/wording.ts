import type { Side } from '../../model/primitive.ts';

/**
 * What words in a foreign record can warn of. Words are never read as data, except the side of a
 * site, which is then told; they only keep a finding from being read where they contradict it.
 * English, German, French, Spanish, Italian and the Latin of prescriptions; from memory.
 */

/** Word by word, so that `nodule` is not `no`; a hyphen joins: `non-healing` denies nothing. */
const negations: ReadonlySet<string> = new Set([
  ...['no', 'not', 'without', 'denies', 'denied', 'absent', 'absence', 'negative', 'never', 'none'],
  ...['nil', 'excluded', 'refuted', 'free', 'neither', 'nor', 'ruled', 'unremarkable', 'cannot'],
  ...['kein', 'keine', 'keinen', 'keiner', 'keinerlei', 'nicht', 'ohne', 'fehlt', 'fehlend'],
  ...['verneint', 'ausgeschlossen', 'negativ', 'unauffällig', 'unauff', 'pas', 'sans', 'aucun'],
  ...['aucune', 'sin', 'ningún', 'ninguna', 'senza', 'nessun', 'nessuna', 'assente', 'ausente'],
]);

/** Words that put the statement on someone else, or in another time. */
const elsewhere = [
  /\bfamily (?:history|member)\b/,
  /\b(?:mother|father|brother|sister|sibling|parent|maternal|paternal)\b/,
  /\b(?:history of|h\/o|past|previous(?:ly)?|resolved|at risk|risk of)\b/,
  /\b(?:familienanamnese|mutter|vater|bruder|schwester|anamnestisch|zustand nach)\b|z\. ?n\./,
  /\b(?:possible|probable|suspected|suspicion|query|rule out|differential)\b|\?/,
  /\b(?:verdacht|fraglich|möglich|wahrscheinlich)(?!\p{L})|v\. ?a\./u,
];

export function isNegated(text: string): boolean {
  return words(text).some((word) => negations.has(word));
}

export function isElsewhere(text: string): boolean {
  const low = text.toLowerCase();
  return elsewhere.some((pattern) => pattern.test(low));
}

type Worded = 'right' | 'left' | 'both';

const sideOf: ReadonlyMap<string, Worded> = new Map<string, Worded>([
  ...spread('right', 'right right-sided rechts rechte rechten rechter rechtes rechtsseitig'),
  ...spread('right', 'dexter dextra dextrum droit droite derecho derecha destro destra'),
  ...spread('left', 'left left-sided links linke linken linker linkes linksseitig'),
  ...spread('left', 'sinister sinistra sinistrum sinistro gauche izquierdo izquierda'),
  ...spread('both', 'both bilateral bilaterally beide beiden beider beidseits beidseitig bds'),
  ...spread('both', 'bilatéral bilaterale ambos ambas entrambi'),
]);

/** Abbreviations that are sides as they stand here and only at a site: OD is the right eye, and odd is not. */
const abbreviations: ReadonlyMap<string, Worded> = new Map<string, Worded>([
  ...spread('right', 'R OD AD RE Rt rt re'),
  ...spread('left', 'L OS AS LE Lt lt li'),
  ...spread('both', 'OU AU B/L'),
]);

function spread(side: Worded, list: string): [string, Worded][] {
  return list.split(' ').map((word) => [word, side]);
}

/** Sides that words name; `atSite`: the words name a place, so that abbreviations count. */
export function sidesIn(text: string, atSite = false): ReadonlySet<Side> {
  const found = new Set<Side>();
  for (const word of words(text)) {
    const side = sideOf.get(word);
    if (side !== undefined) found.add(side);
  }
  if (atSite) {
    for (const word of text.split(/[^A-Za-z/]+/)) {
      const side = abbreviations.get(word);
      if (side !== undefined) found.add(side);
    }
  }
  return found;
}

function words(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}.-]+/u)
    .map((word) => word.replace(/^[.-]+|[.-]+$/g, ''));
}
