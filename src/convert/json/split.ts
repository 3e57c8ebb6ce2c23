import type { Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { RawUnit, Splitter } from '../record/record.ts';
import { type LinePlace, Place } from '../xml/place.ts';

/** UTF-16 units of one exam, so that no input takes unbounded memory. */
const MOST_UNITS = 16 * 1024 * 1024;

/** A container around the exams: how many steps of the path lead to it, and the property that is read. */
interface Frame {
  readonly isArray: boolean;
  readonly done: number;
  key: string | undefined;
}

/** A text that is being collected. */
interface Open {
  readonly at: LinePlace;
  /** It ends with the partner of its bracket, with its quote, before a separator, or with its line. */
  readonly form: 'brackets' | 'string' | 'key' | 'plain' | 'line';
  readonly isExam: boolean;
  text: string;
  depth: number;
  inString: boolean;
  escaped: boolean;
  tooLarge: boolean;
}

/** What a mark does to an open text: it goes on, ends with the mark or before it, or is broken off. */
type Step = 'on' | 'ends-with' | 'ends-before' | 'broken';

/**
 * Cuts JSON into exams: each object at the path, through lists. What stands elsewhere becomes units of
 * its own, which are told and set aside. Only brackets and strings are looked at; whether an exam is JSON
 * is seen when it is read. A string that a line end breaks ends its unit there, so that the next line can
 * begin anew.
 */
export function jsonSplitter(path: readonly string[]): Splitter {
  const cutter = new JsonCutter(path);
  return { push: (piece) => cutter.push(piece), end: () => cutter.end() };
}

class JsonCutter {
  readonly #path: readonly string[];
  readonly #frames: Frame[] = [];
  readonly #place = new Place();
  #open: Open | undefined;
  #units: RawUnit[] = [];

  constructor(path: readonly string[]) {
    this.#path = path;
  }

  push(piece: string): RawUnit[] {
    let from = 0;
    const pass = (to: number): void => {
      const text = piece.slice(from, to);
      if (this.#open !== undefined) keep(this.#open, text);
      this.#place.pass(text);
      from = to;
    };
    for (let at = 0; at < piece.length; at += 1) {
      const mark = piece[at] ?? '';
      const step = this.#open === undefined ? 'on' : stepOf(this.#open, mark);
      if (step === 'ends-with') {
        pass(at + 1);
        this.#close(false);
        continue;
      }
      if (step !== 'on') {
        pass(at);
        this.#close(step === 'broken');
      }
      if (this.#open === undefined && !isBetween(mark)) {
        pass(at);
        this.#begin(mark);
      }
    }
    pass(piece.length);
    return this.#taken();
  }

  end(): RawUnit[] {
    const open = this.#open;
    if (open !== undefined) this.#close(open.form !== 'plain' && open.form !== 'line');
    else if (this.#frames.length > 0) {
      const at = this.#place.now();
      this.#units.push({ raw: '', at, issues: [broken(at)] });
    }
    return this.#taken();
  }

  #taken(): RawUnit[] {
    const units = this.#units;
    this.#units = [];
    return units;
  }

  #close(isBroken: boolean): void {
    const open = this.#open;
    this.#open = undefined;
    if (open === undefined) return;
    const top = this.#frames.at(-1);
    if (open.form === 'key' && !isBroken && top !== undefined) {
      top.key = nameOf(open.text);
      return;
    }
    this.#units.push(unitOf(open, isBroken, top?.key));
    if (top !== undefined) top.key = undefined;
  }

  /** What begins outside every unit: a container to look into, its end, or a text to collect. */
  #begin(mark: string): void {
    const top = this.#frames.at(-1);
    if (mark === '}' || mark === ']') this.#leave(mark);
    else if (top !== undefined && !top.isArray && top.key === undefined) {
      this.#collect(mark === '"' ? 'key' : 'line');
    } else if (mark === '"') this.#collect('string');
    else if (mark === '{' || mark === '[') this.#enter(mark, top);
    else this.#collect(/[-\w]/.test(mark) ? 'plain' : 'line');
  }

  #leave(mark: string): void {
    if (this.#frames.at(-1)?.isArray !== (mark === ']')) {
      this.#collect('line');
      return;
    }
    this.#frames.pop();
    const around = this.#frames.at(-1);
    if (around !== undefined) around.key = undefined;
  }

  #enter(mark: string, top: Frame | undefined): void {
    const isOnPath = top === undefined || top.isArray || top.key === this.#path[top.done];
    const done = top === undefined ? 0 : top.done + (top.isArray ? 0 : 1);
    const isArray = mark === '[';
    if (isOnPath && (isArray || done < this.#path.length)) {
      this.#frames.push({ isArray, done, key: undefined });
    } else this.#collect('brackets', isOnPath);
  }

  #collect(form: Open['form'], isExam = false): void {
    this.#open = {
      ...{ at: this.#place.now(), form, isExam, text: '' },
      ...{ depth: form === 'brackets' ? 1 : 0, inString: form === 'string' || form === 'key' },
      ...{ escaped: false, tooLarge: false },
    };
  }
}

function isBetween(mark: string): boolean {
  return mark.trim() === '' || mark === ',' || mark === ':' || mark === '\uFEFF';
}

function stepOf(open: Open, mark: string): Step {
  if (open.inString) return stepInString(open, mark);
  switch (open.form) {
    case 'line':
      return mark === '\n' ? 'ends-before' : 'on';
    case 'plain':
      return /[\s,:\]}]/.test(mark) ? 'ends-before' : 'on';
    default:
      if (mark === '"') open.inString = true;
      if (mark === '{' || mark === '[') open.depth += 1;
      if (mark === '}' || mark === ']') open.depth -= 1;
      return open.depth === 0 ? 'ends-with' : 'on';
  }
}

function stepInString(open: Open, mark: string): Step {
  if (mark === '\n') return 'broken';
  if (open.escaped) open.escaped = false;
  else if (mark === '\\') open.escaped = true;
  else if (mark === '"') {
    open.inString = false;
    if (open.form !== 'brackets') return 'ends-with';
  }
  return 'on';
}

function keep(open: Open, text: string): void {
  if (open.text.length + text.length <= MOST_UNITS) open.text += text;
  else open.tooLarge = true;
}

function nameOf(quoted: string): string {
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted;
  }
}

function unitOf(open: Open, isBroken: boolean, key: string | undefined): RawUnit {
  const { at, text, isExam, tooLarge } = open;
  const raw = isExam || key === undefined ? text : `${JSON.stringify(key)}: ${text}`;
  const issues: Issue[] = [];
  if (tooLarge) issues.push(issue('too-large', [], { reason: 'json' }, { source: at }));
  else if (isBroken) issues.push(broken(at));
  else if (!isExam) issues.push(issue('stray-text', [], { reason: 'json' }, { source: at }));
  return { raw, at, ...(issues.length > 0 && { issues }) };
}

function broken(at: LinePlace): Issue {
  return issue('malformed-record', [], { reason: 'json' }, { source: at });
}
