import { folded } from '../../find/fold.ts';
import { joiningWords } from './words.ts';

/** A piece of a text: its first character, and the place behind its last. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Words whose full stop ends no sentence, folded (common practice, no source). */
const abbreviated: ReadonlySet<string> = new Set([
  ...['re', 'li', 'bds', 'bdst', 'beids', 'rt', 'lt', 'ca', 'bzw', 'ggf', 'evtl', 'approx', 'dr'],
  ...['prof', 'mr', 'mrs', 'ms', 'vs', 'incl', 'inkl', 'unauff', 'path', 'obb', 'fragl', 'sog'],
  ...['usw', 'etc', 'ausgepr', 'resp', 'vgl', 'dd', 'klin', 'oberfl'],
]);

/** Lines that are at least so long can have been broken by the width of the page alone. */
const WRAPPED = 40;

/**
 * The sentences of a text. A line break ends one only where the line ends with a mark, a blank line
 * follows, the next begins with a list mark, or the line is too short to be broken by its width and ends
 * with no word that wants another: "kein" and a line break deny what the next line begins with.
 */
export function sentencesIn(text: string): readonly Span[] {
  const spans: Span[] = [];
  let from = 0;
  const close = (to: number): void => {
    let [start, end] = [from, to];
    while (start < end && /[\s*•>–-]/.test(text[start] ?? '')) start += 1;
    while (end > start && /\s/.test(text[end - 1] ?? '')) end -= 1;
    if (end > start) spans.push({ start, end });
    from = to;
  };
  for (const { index, 0: mark } of text.matchAll(/[.;!?\n]/g)) {
    if (mark === '\n' ? endsLine(text, from, index) : endsSentence(text, index, mark)) {
      close(index + 1);
    }
  }
  close(text.length);
  return spans;
}

function endsSentence(text: string, at: number, mark: string): boolean {
  const next = text[at + 1];
  if (next !== undefined && !/[\s"”)]/.test(next)) return false;
  if (mark !== '.') return true;
  const before = /[\p{L}\p{N}]+$/u.exec(text.slice(Math.max(0, at - 30), at))?.[0] ?? '';
  if (/^\p{L}$/u.test(before)) return false;
  return !abbreviated.has(folded(before));
}

function endsLine(text: string, from: number, at: number): boolean {
  const line = text.slice(Math.max(from, text.lastIndexOf('\n', at - 1) + 1), at).trim();
  const rest = text.slice(at + 1, at + 80);
  if (line === '' || /^[ \t\r]*(?:\n|$|[*•-])/.test(rest)) return true;
  if (/[.;!?]$/.test(line)) return !/(?:^|\s)\p{L}{1,5}\.$/u.test(line) || line.length < WRAPPED;
  if (line.length >= WRAPPED) return false;
  const last = /[\p{L}\p{N}]+$/u.exec(line)?.[0];
  return last !== undefined && !joiningWords.has(folded(last)) && /^\s*[\p{Lu}\p{N}]/u.test(rest);
}
