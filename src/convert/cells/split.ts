import { isNegated } from '../../read/foreign/wording.ts';
import type { SplitList, SplitSides } from '../mapping/cells.ts';

/** A part of a text: what it is called, and its place in the text. What lies between parts says nothing. */
export interface Part {
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

/** A side word where it stands. */
interface Mark {
  readonly side: 'right' | 'left' | 'both';
  readonly word: string;
  readonly start: number;
  readonly end: number;
}

/**
 * The parts of a text such as "R 4 mm L 2 mm", "R+ L-" or "RE: normal; LE: scar", one a side; undefined
 * where it is not such a text. A side word counts at the beginning, behind a comma, semicolon, slash,
 * bar or line end, or before a colon or equals sign; behind a mere space only as an abbreviation, and
 * only if both values beside it are a single word, a sign or a number with its unit: "R scar left of
 * the nose" is not two values.
 */
export function splitSides(text: string, operation: SplitSides): readonly Part[] | undefined {
  const marks = marksIn(text, operation);
  const [first] = marks;
  if (first === undefined || text.slice(0, first.start).trim() !== '') return undefined;
  const parts: Part[] = [];
  for (const [at, mark] of marks.entries()) {
    const next = marks[at + 1];
    const part = trimmed(text, mark.end, next?.start ?? text.length);
    const name = operation.into[mark.side];
    if (part === undefined || name === undefined || parts.some((one) => one.name === name)) {
      return undefined;
    }
    const value = text.slice(part.start, part.end);
    const loose = next !== undefined && !hasBreak(text, part.end, next);
    const before = parts[at - 1]?.end ?? mark.end;
    const isLoose = loose || !hasBreak(text, before, mark);
    if (isLoose && (!single.test(value) || mark.word.length > 2)) return undefined;
    parts.push({ name, ...part });
  }
  return parts;
}

/** One word, a sign, or a number with a short unit in small letters, so that no glued side word is one. */
const single = /^(?:[+-]{1,4}|[\p{L}-]+|[<>]?\d+(?:[.,]\d+)?\s*(?:\p{Ll}{1,3}|[%°])?)$/u;

function hasBreak(text: string, from: number, mark: Mark): boolean {
  return /[,;/|\n\r]/.test(text.slice(from, mark.start)) || /^\s*[:=]/.test(text.slice(mark.end));
}

function marksIn(text: string, { words }: SplitSides): Mark[] {
  const sides = new Map(
    (['right', 'left', 'both'] as const).flatMap((side) =>
      (words[side] ?? []).map((word) => [word, side] as const),
    ),
  );
  const marks: Mark[] = [];
  for (const match of text.matchAll(/\p{L}+/gu)) {
    const [word] = match;
    const side = sides.get(word);
    if (side !== undefined) {
      marks.push({ side, word, start: match.index, end: match.index + word.length });
    }
  }
  return marks;
}

/** The part between two places without the marks around it; undefined where nothing is left. */
function trimmed(text: string, from: number, to: number): Omit<Part, 'name'> | undefined {
  let [start, end] = [from, to];
  while (start < end && /[\s:=.]/.test(text[start] ?? '')) start += 1;
  while (end > start && /[\s,;/|]/.test(text[end - 1] ?? '')) end -= 1;
  return start === end ? undefined : { start, end };
}

/**
 * The parts of a list; undefined for a text without the mark. A list in which a word denies is not
 * split unless every part of it denies: "no scar, naevus" may deny both.
 */
export function splitList(text: string, { at, into }: SplitList): readonly Part[] | undefined {
  const parts: Part[] = [];
  let from = 0;
  while (from <= text.length) {
    const found = text.indexOf(at, from);
    const to = found < 0 ? text.length : found;
    const part = trimmed(text, from, to);
    if (part !== undefined) parts.push({ name: into, ...part });
    if (found < 0) break;
    from = found + at.length;
  }
  const denied = parts.filter(({ start, end }) => isNegated(text.slice(start, end)));
  if (parts.length === 0 || (denied.length > 0 && denied.length < parts.length)) return undefined;
  return parts;
}
