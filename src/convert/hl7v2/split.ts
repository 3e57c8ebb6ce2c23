import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { RawUnit, Splitter } from '../record/record.ts';
import { declaredEncoding } from './charset.ts';

/** Longest message and longest line held in memory, in UTF-16 units. */
const MOST_UNITS = 16 * 1024 * 1024;

/**
 * Cuts HL7 v2 text into messages and holds no more than one. Lines end in CR as published, or in LF
 * or CRLF as files arrive. A unit is the exact text of one message, with the lines of the batch
 * envelope and the MLLP framing bytes around it, so that every character of the input is in one unit.
 * @see HL7 v2 chapter 2, "Message construction rules" and "Batch protocol"; MLLP release 1
 */
export function messageSplitter(limit: number = MOST_UNITS): Splitter {
  const gathering = new Gathering(limit);
  let pending = '';
  let line = 1;

  const takeLines = (last: boolean): RawUnit[] => {
    // Made here because an expression with the flag g keeps its place in itself.
    const lineBreak = /\r\n|\r|\n/g;
    let from = 0;
    for (;;) {
      const next = nextLine(lineBreak, pending, from, last);
      if (next === undefined) break;
      gathering.add(pending.slice(from, next), line);
      from = next;
      line += 1;
    }
    pending = pending.slice(from);
    if (pending.length > limit || (last && pending !== '')) {
      gathering.add(pending, line);
      pending = '';
    }
    if (last) gathering.close();
    return gathering.units.splice(0);
  };

  return {
    push(text) {
      pending += text;
      return takeLines(false);
    },
    end: () => takeLines(true),
  };
}

/** The unit that is being put together, line by line. */
class Gathering {
  readonly units: RawUnit[] = [];
  readonly #limit: number;
  #raw = '';
  #at = 1;
  /** `envelope`: only batch lines and blank ones so far. */
  #holds: 'envelope' | 'message' | 'stray' = 'envelope';
  #encoding: string | undefined;
  #issues: Issue[] = [];
  /** Messages since the batch header. */
  #messages = 0;

  constructor(limit: number) {
    this.#limit = limit;
  }

  add(text: string, line: number): void {
    const content = withoutFrame(text);
    const name = content.slice(0, 3);
    const begins = name === 'MSH' || name === 'FHS' || name === 'BHS';
    if (begins && this.#holds !== 'envelope') this.close();
    if (this.#raw === '') this.#at = line;
    if (name === 'MSH') {
      this.#holds = 'message';
      this.#messages += 1;
      this.#encoding = declaredEncoding(content);
    } else if (begins) {
      this.#messages = 0;
    } else if (name === 'BTS') {
      append(this.#issues, wrongCount(content, this.#messages, line));
    } else if (name !== 'FTS' && this.#holds === 'envelope' && content.trim() !== '') {
      this.#holds = 'stray';
    }
    this.#raw += text;
    if (this.#raw.length > this.#limit) this.#cut();
  }

  close(): void {
    if (this.#holds !== 'message') this.#issues.push(stray(this.#at));
    // Line breaks and framing bytes alone are not input.
    if (withoutFrame(this.#raw).trim() !== '') {
      this.units.push({
        raw: this.#raw,
        at: { line: this.#at },
        ...(this.#encoding !== undefined && { declaredEncoding: this.#encoding }),
        ...(this.#issues.length > 0 && { issues: this.#issues }),
      });
    }
    this.#raw = '';
    this.#holds = 'envelope';
    this.#encoding = undefined;
    this.#issues = [];
  }

  /** What follows an overlong message belongs to nothing until the next one begins. */
  #cut(): void {
    this.#issues.push(
      issue('too-large', [], { reason: 'message' }, { source: { line: this.#at } }),
    );
    this.close();
    this.#holds = 'stray';
  }
}

/** BTS-1 is the number of messages in the batch. */
function wrongCount(trailer: string, messages: number, line: number): Issue[] {
  const declared = trailer.slice(4).split(trailer.charAt(3), 1)[0]?.trim() ?? '';
  if (declared === '' || Number(declared) === messages) return [];
  return [
    issue(
      'batch-count',
      [],
      { reason: 'trailer', count: messages },
      {
        severity: 'warning',
        source: { line },
      },
    ),
  ];
}

function stray(line: number): Issue {
  return issue(
    'stray-text',
    [],
    { reason: 'message' },
    {
      source: { line },
    },
  );
}

/** Where the line after the one at `from` begins. A CR at the very end may be half of a CRLF. */
function nextLine(
  lineBreak: RegExp,
  text: string,
  from: number,
  last: boolean,
): number | undefined {
  lineBreak.lastIndex = from;
  const match = lineBreak.exec(text);
  if (match === null) return undefined;
  const next = match.index + match[0].length;
  return !last && match[0] === '\r' && next === text.length ? undefined : next;
}

/** Without byte order mark, VT (0B) in front and FS (1C) behind, where a line has them. */
export function withoutFrame(line: string): string {
  let from = 0;
  let to = line.length;
  while (from < to && isFrame(line.charCodeAt(from))) from += 1;
  while (to > from && isFrame(line.charCodeAt(to - 1))) to -= 1;
  return line.slice(from, to);
}

function isFrame(unit: number): boolean {
  return unit === 0x0b || unit === 0x1c || unit === 0xfeff;
}
