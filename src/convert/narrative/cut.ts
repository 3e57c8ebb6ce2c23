import { folded } from '../../find/fold.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Heading, HeadingLookUp } from './headings.ts';
import type { Span } from './sentences.ts';
import { sideOfWord } from './side-words.ts';
import { tokensIn } from './tokens.ts';

/** A piece of a text below one heading, the heading among it. */
export interface Part extends Span {
  /** Where its text begins behind the heading. */
  readonly body: number;
  /** What its heading means; none above the first heading and below one that is not known. */
  readonly heading?: Heading;
  /** It stands below a heading that is not known. */
  readonly unknown?: true;
}

/** Longest heading that is looked for. */
const LONGEST = 60;

/**
 * Cuts a text at its headings: a label with a colon at the beginning of a line or sentence, or a known
 * heading or one in capitals on a line of its own. A label that is not known ends the part before, since
 * what follows may be of another part of the body, unless its words are those of a sign or measure. All
 * parts together are the whole text.
 */
export function cutAtHeadings(
  text: string,
  meaningOf: HeadingLookUp,
  catalogue: Catalogue,
): readonly Part[] {
  const parts: Part[] = [];
  let open: Omit<Part, 'end'> = { start: 0, body: 0 };
  for (const start of startsIn(text)) {
    const label = labelAt(text, start, meaningOf, catalogue);
    if (label === undefined || start < open.body) continue;
    if (text.slice(open.start, start).trim() !== '') parts.push({ ...open, end: start });
    const from = text.slice(open.start, start).trim() === '' ? open.start : start;
    const { heading, body } = label;
    open =
      heading === undefined ? { start: from, body, unknown: true } : { start: from, body, heading };
  }
  return [...parts, { ...open, end: text.length }];
}

/** Beginnings of lines, and of sentences in them. */
function* startsIn(text: string): Generator<number> {
  let at = skipMarks(text, 0);
  yield at;
  for (const { index, 0: mark } of text.matchAll(/\n|[.;!?](?=[ \t])/g)) {
    if (index < at || (mark === '.' && isShort(text, index))) continue;
    at = skipMarks(text, index + 1);
    yield at;
  }
}

/** An abbreviation such as `re.` belongs to what follows it. */
function isShort(text: string, point: number): boolean {
  const before = text.slice(Math.max(0, point - 12), point);
  return /(?:^|[^\p{L}])(?:\p{L}|re|li|rt|lt|bds|beids)$/iu.test(before);
}

function skipMarks(text: string, from: number): number {
  let at = from;
  while (at < text.length && /[\s*•#>_–-]/.test(text[at] ?? '')) at += 1;
  return at;
}

function labelAt(
  text: string,
  start: number,
  meaningOf: HeadingLookUp,
  catalogue: Catalogue,
): { readonly heading?: Heading; readonly body: number } | undefined {
  const [before = ''] = /^[^\n:]*/.exec(text.slice(start, start + LONGEST)) ?? [];
  const end = start + before.length;
  const label = before.replace(/[\s*_#]+$/, '');
  if (!/^\p{Lu}/u.test(label) && !beginsWithSide(label)) return undefined;
  if (text[end] === ':' && !/\d$/.test(label)) {
    const heading = headingOf(label, meaningOf);
    const body = end + 1;
    if (heading !== undefined) return { heading, body };
    return isUnknownHeading(label, catalogue) ? { body } : undefined;
  }
  const endsLine = end === text.length || /[\n\r]/.test(text[end] ?? '');
  if (!endsLine || !isApart(text, start)) return undefined;
  const heading = headingOf(label, meaningOf);
  if (heading !== undefined) return { heading, body: end };
  return /^[\p{Lu}\s/&-]{4,}$/u.test(label) ? { body: end } : undefined;
}

/** A label over several sentences is none. */
function headingOf(label: string, meaningOf: HeadingLookUp): Heading | undefined {
  return /[.;!?]\s/.test(label) && !isSideLabel(label) ? undefined : meaningOf(label);
}

/** A line that goes on with none before it: at the beginning, below a blank one, or behind a mark. */
function isApart(text: string, start: number): boolean {
  const line = text.lastIndexOf('\n', start - 1) + 1;
  if (skipMarks(text, line) !== start) return false;
  return /(?:^|\n[ \t\r]*\n|[.;!?:][ \t\r]*\n)$/.test(text.slice(Math.max(0, line - 20), line));
}

function beginsWithSide(label: string): boolean {
  const [first] = tokensIn(label);
  return first !== undefined && sideOfWord(first.text, first.point) !== undefined;
}

/** `re. Auge`: its full stop is no end. */
function isSideLabel(label: string): boolean {
  return tokensIn(label).every(
    ({ text, point }, at, all) =>
      !point || at === all.length - 1 || sideOfWord(text, true) !== undefined,
  );
}

/** A label that reads as a heading, of which no word is a side and not all are of signs and measures. */
function isUnknownHeading(label: string, catalogue: Catalogue): boolean {
  if (!/^\p{Lu}/u.test(label) || /[.,;!?]/.test(label)) return false;
  const tokens = tokensIn(label);
  if (tokens.length > 5 || tokens.some(({ text }) => sideOfWord(text, true) !== undefined)) {
    return false;
  }
  const known = displayWords(catalogue);
  const telling = tokens.map(({ low }) => low).filter((low) => low.length > 2);
  return telling.length === 0 || telling.some((low) => !known.has(low));
}

const words = new WeakMap<Catalogue, ReadonlySet<string>>();

function displayWords(catalogue: Catalogue): ReadonlySet<string> {
  const known = words.get(catalogue);
  if (known !== undefined) return known;
  const displays = [...catalogue.findings.values(), ...catalogue.measures.values()];
  const all = new Set(displays.flatMap(({ display }) => folded(display).split(' ')));
  words.set(catalogue, all);
  return all;
}
