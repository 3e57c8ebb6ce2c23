import type { Delimiters } from './delimiters.ts';

/** Text with its escape sequences resolved, and what could not be resolved or carried over. */
export interface Unescaped {
  readonly text: string;
  /** Sequences left in `text` as they stood: local, for another character set, or not published. */
  readonly kept: readonly string[];
  /** Layout commands without a counterpart in plain text (indent, highlight, fill), taken out. */
  readonly layout: readonly string[];
}

/** Bytes of a `\Xhh..\` sequence as text of the message's character set; undefined when they are none. */
export type BytesToText = (bytes: Uint8Array) => string | undefined;

type Resolved = { readonly text: string } | { readonly layout: true } | undefined;

/**
 * Most lines or blanks that one `.sp` or `.sk` command may ask for. The standard sets no bound; ours
 * keeps a short message from growing without limit.
 */
const MOST_SPACES = 200;

/**
 * Resolves the escape sequences of HL7 v2 chapter 2 ("Use of escape sequences in text fields") and
 * the formatting commands of the FT type: `\F\ \S\ \T\ \R\ \E\`, `\Xhh..\`, `\.br\ \.sp\ \.sk\ \.ce\`,
 * `\H\ \N\ \.in\ \.ti\ \.fi\ \.nf\`. `\C..\`, `\M..\` (other character sets), `\Z..\` (local) and
 * whatever is not published stay as they are. A lone escape character is data.
 */
export function unescapeText(raw: string, delimiters: Delimiters, toText: BytesToText): Unescaped {
  const mark = delimiters.escape;
  if (mark === undefined || !raw.includes(mark)) return { text: raw, kept: [], layout: [] };
  const kept: string[] = [];
  const layout: string[] = [];
  let text = '';
  let from = 0;
  for (;;) {
    const open = raw.indexOf(mark, from);
    const close = open === -1 ? -1 : raw.indexOf(mark, open + 1);
    if (close === -1) break;
    const command = raw.slice(open + 1, close);
    const resolved = resolve(command, delimiters, toText);
    text += raw.slice(from, open);
    from = close + 1;
    if (resolved === undefined) {
      kept.push(command);
      // Outside the published forms the closing character may open the next sequence: `a\b\F\` is
      // a stray escape character and then `\F\`.
      if (!/^[CMXZ.]\S*$/.test(command)) from = close;
      text += raw.slice(open, from);
    } else if ('text' in resolved) text += resolved.text;
    else layout.push(command);
  }
  return { text: text + raw.slice(from), kept, layout };
}

function resolve(command: string, delimiters: Delimiters, toText: BytesToText): Resolved {
  const first = command.charAt(0);
  if (command.length === 1) return resolveLetter(first, delimiters);
  if (first === '.') return resolveFormat(command.slice(1));
  if (first === 'X') return resolveHex(command.slice(1), toText);
  return undefined;
}

function resolveLetter(letter: string, delimiters: Delimiters): Resolved {
  switch (letter) {
    case 'F':
      return { text: delimiters.field };
    case 'S':
      return { text: delimiters.component };
    case 'R':
      return { text: delimiters.repetition };
    case 'E':
      return delimiters.escape === undefined ? undefined : { text: delimiters.escape };
    case 'T':
      return delimiters.subcomponent === undefined ? undefined : { text: delimiters.subcomponent };
    case 'P':
      // v2.7; from memory.
      return delimiters.truncation === undefined ? undefined : { text: delimiters.truncation };
    case 'H':
    case 'N':
      return { layout: true };
    default:
      return undefined;
  }
}

const formats = /^(?:(br|ce|fi|nf)|(sp|sk)(\d{0,4})|(in|ti)([+-]?\d{1,4}))$/;

function resolveFormat(command: string): Resolved {
  const match = formats.exec(command);
  if (match === null) return undefined;
  const [, plain, skip, count] = match;
  if (plain === 'br' || plain === 'ce') return { text: '\n' };
  if (skip === undefined) return { layout: true };
  const times = Math.min(count === undefined || count === '' ? 1 : Number(count), MOST_SPACES);
  return { text: (skip === 'sp' ? '\n' : ' ').repeat(times) };
}

function resolveHex(digits: string, toText: BytesToText): Resolved {
  if (!/^(?:[0-9A-Fa-f]{2})+$/.test(digits)) return undefined;
  const bytes = new Uint8Array(digits.length / 2);
  for (let at = 0; at < bytes.length; at++) {
    bytes[at] = Number.parseInt(digits.slice(2 * at, 2 * at + 2), 16);
  }
  const text = toText(bytes);
  if (text === undefined || hasForbiddenControl(text)) return undefined;
  return { text: text.replace(/\r\n?/g, '\n') };
}

/** Control characters that neither XML nor a FHIR string may hold: all but tab, line feed, return. */
function hasForbiddenControl(text: string): boolean {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code < 0x20 && code !== 0x09 && code !== 0x0a && code !== 0x0d) return true;
  }
  return false;
}
