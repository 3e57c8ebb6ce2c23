import { positionsIn, type TextPosition } from '../../data/text-position.ts';
import { type BudgetOption, bounds, spend, within } from '../../issues/budget.ts';
import type { FormWord } from '../../issues/forms.ts';
import {
  failure,
  hasErrors,
  type Issue,
  issue,
  type Outcome,
  success,
} from '../../issues/issue.ts';
import { cutIssues, endedIssue, longTextIssues } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import { isKnownName, unknownStep } from '../../issues/shown-path.ts';
import { DECIMAL_TEXT, type DecimalCarrier } from './decimal.ts';

/** Bounds on the text. */
export interface FromJsonOptions {
  /** What the call may take; default `budgets.json`. */
  readonly budget?: BudgetOption;
}

/**
 * Reads JSON and keeps each decimal as it was written, so that `toJson` writes 4.0 as 4.0. Unlike
 * `JSON.parse` it refuses an object that names a property twice, since one of the two would be lost
 * in silence, and it says where a fault stands. A property `__proto__` becomes an ordinary one,
 * which the checks of exams and resources refuse.
 *
 * @param text JSON, without a byte order mark.
 * @param options `budget`: what the call may take. Default `budgets.json`.
 * @returns The value. It fails where the text is not JSON; issues hold the line and column and
 *   nothing of the text.
 * @example
 * const { value, issues } = fromJson(text);
 * @see https://www.rfc-editor.org/rfc/rfc8259
 */
export function fromJson(text: string, { budget }: FromJsonOptions = {}): Outcome<unknown> {
  return within(
    'json',
    budget,
    () => readText(text),
    (why) => failure([endedIssue(why)]),
  );
}

function readText(text: string): Outcome<unknown> {
  const long = longTextIssues(text);
  if (long.length > 0) return failure(long);
  const { depth, values } = bounds();
  const cursor: Cursor = {
    text,
    at: 0,
    backslash: text.indexOf('\\'),
    control: -1,
    path: [],
    places: [],
    depth,
    most: values,
    values: 0,
    issues: [],
    position: positionsIn(text),
  };
  try {
    skipSpace(cursor);
    const value = readValue(cursor);
    skipSpace(cursor);
    if (cursor.at < text.length) fail(cursor, 'json-end');
    const issues = cutIssues(cursor.issues);
    return hasErrors(issues) ? failure(issues) : success(value, issues);
  } catch (thrown) {
    if (thrown instanceof Stop) return failure(cutIssues([...cursor.issues, thrown.issue]));
    throw thrown;
  }
}

interface Cursor {
  readonly text: string;
  at: number;
  /** Place of the next backslash at or after `at`, as far as known; -1 when there is none. */
  backslash: number;
  /** Place of the next control character at or after `at`, as far as known; the end when there is none. */
  control: number;
  readonly path: (string | number)[];
  /** Beside each step of the path, the place of the property in its object, from 1. */
  readonly places: number[];
  readonly depth: number;
  readonly most: number;
  /** Values read so far. */
  values: number;
  readonly issues: Issue[];
  readonly position: (at: number) => TextPosition;
}

/** Values after which the budget is told of them. */
const stepsTold = 1000;

/** Ends the reading: what follows a fault of syntax cannot be understood. */
class Stop extends Error {
  readonly issue: Issue;

  constructor(found: Issue) {
    super(found.message);
    this.issue = found;
  }
}

function readValue(cursor: Cursor): unknown {
  cursor.values += 1;
  if (cursor.values % stepsTold === 0) spend(stepsTold);
  if (cursor.values > cursor.most) {
    throw new Stop(issue('too-large', [], { reason: 'values', maximum: cursor.most }));
  }
  const { text, at } = cursor;
  switch (text[at]) {
    case '{':
      return readObject(cursor);
    case '[':
      return readList(cursor);
    case '"':
      return readString(cursor);
    case 't':
      return readWord(cursor, 'true', true);
    case 'f':
      return readWord(cursor, 'false', false);
    case 'n':
      return readWord(cursor, 'null', null);
    default:
      return Number(numberText(cursor));
  }
}

function readObject(cursor: Cursor): unknown {
  const { path, places } = cursor;
  const holder: Record<string, unknown> & DecimalCarrier = {};
  if (open(cursor, '}')) return holder;
  for (let place = 1; ; place++) {
    if (cursor.text[cursor.at] !== '"') fail(cursor, 'json-property');
    const start = cursor.at;
    const name = readString(cursor);
    path.push(name);
    places.push(place);
    // Assigned where nothing has that name, which costs a fraction of a definition. Of a name that all
    // objects have, `__proto__` above all, an assignment could do something else.
    const isTaken = name in holder;
    if (isTaken && Object.hasOwn(holder, name)) {
      const source = cursor.position(start);
      cursor.issues.push(
        issue('duplicate-property', shownPath(cursor), { reason: 'twice' }, { source }),
      );
    }
    skipSpace(cursor);
    if (cursor.text[cursor.at] !== ':') fail(cursor, 'json-colon');
    cursor.at += 1;
    skipSpace(cursor);
    const from = cursor.at;
    const value = readValue(cursor);
    if (isTaken) put(holder, name, value);
    else holder[name] = value;
    if (typeof value === 'number')
      keepText(holder, name, value, cursor.text.slice(from, cursor.at));
    path.pop();
    places.pop();
    if (closed(cursor, '}')) return holder;
  }
}

function readList(cursor: Cursor): unknown {
  const list: unknown[] & DecimalCarrier = [];
  if (open(cursor, ']')) return list;
  for (;;) {
    const from = cursor.at;
    cursor.path.push(list.length);
    cursor.places.push(0);
    const value = readValue(cursor);
    if (typeof value === 'number') {
      keepText(list, String(list.length), value, cursor.text.slice(from, cursor.at));
    }
    list.push(value);
    cursor.path.pop();
    cursor.places.pop();
    if (closed(cursor, ']')) return list;
  }
}

/** Carries the text of a number that JavaScript would write otherwise. */
function keepText(holder: DecimalCarrier, name: string, value: number, written: string): void {
  if (String(value) === written) return;
  holder[DECIMAL_TEXT] ??= {};
  put(holder[DECIMAL_TEXT], name, written);
}

/** Past the opening bracket; true when the closing one follows at once. */
function open(cursor: Cursor, closing: string): boolean {
  if (cursor.path.length >= cursor.depth) {
    const source = cursor.position(cursor.at);
    throw new Stop(
      issue('too-deep', shownPath(cursor), { reason: 'levels', maximum: cursor.depth }, { source }),
    );
  }
  cursor.at += 1;
  skipSpace(cursor);
  if (cursor.text[cursor.at] !== closing) return false;
  cursor.at += 1;
  return true;
}

/** Past a comma (false) or the closing bracket (true). */
function closed(cursor: Cursor, closing: string): boolean {
  skipSpace(cursor);
  const next = cursor.text[cursor.at];
  if (next !== ',' && next !== closing)
    fail(cursor, closing === '}' ? 'json-comma-or-brace' : 'json-comma-or-bracket');
  cursor.at += 1;
  if (next === closing) return true;
  skipSpace(cursor);
  return false;
}

function put(holder: object, name: string, value: unknown): void {
  Object.defineProperty(holder, name, {
    value,
    writable: true,
    enumerable: true,
    configurable: true,
  });
}

/** The control characters, which JSON escapes: all below the space. */
const controlCharacter = /[^ -\uFFFF]/g;

function readString(cursor: Cursor): string {
  const { text, at: start } = cursor;
  let end = text.indexOf('"', start + 1);
  let escaped = false;
  for (let back = nextBackslash(cursor, start); back !== -1 && back < end; ) {
    escaped = true;
    if (back + 1 === end) end = text.indexOf('"', end + 1);
    back = nextBackslash(cursor, back + 2);
  }
  if (end === -1) fail(cursor, 'json-closing-quote');
  const control = nextControl(cursor, start);
  if (control < end) {
    cursor.at = control;
    fail(cursor, 'json-control-escape');
  }
  cursor.at = end + 1;
  return escaped ? unescaped(cursor, start, end) : text.slice(start + 1, end);
}

function nextBackslash(cursor: Cursor, from: number): number {
  if (cursor.backslash !== -1 && cursor.backslash < from) {
    cursor.backslash = cursor.text.indexOf('\\', from);
  }
  return cursor.backslash;
}

/** One look serves all strings up to the next control character, which is mostly a line break between them. */
function nextControl(cursor: Cursor, from: number): number {
  if (cursor.control < from) {
    controlCharacter.lastIndex = from;
    cursor.control = controlCharacter.exec(cursor.text)?.index ?? cursor.text.length;
  }
  return cursor.control;
}

const wrongEscape = /\\(?:[^"\\/bfnrtu]|u(?![0-9A-Fa-f]{4}))/;

function unescaped(cursor: Cursor, start: number, end: number): string {
  const raw = cursor.text.slice(start, end + 1);
  // Escaped backslashes are taken out first, so that what follows one is not an escape.
  const wrong = wrongEscape.exec(raw.replaceAll('\\\\', '  '));
  if (wrong !== null) {
    cursor.at = start + wrong.index;
    fail(cursor, 'json-escape');
  }
  return JSON.parse(raw);
}

const numberForm = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;

function numberText(cursor: Cursor): string {
  numberForm.lastIndex = cursor.at;
  const written = numberForm.exec(cursor.text)?.[0];
  if (written === undefined) fail(cursor, 'json-value');
  if (!Number.isFinite(Number(written))) fail(cursor, 'json-number');
  cursor.at += written.length;
  return written;
}

function readWord<T>(cursor: Cursor, word: string, value: T): T {
  if (!cursor.text.startsWith(word, cursor.at)) fail(cursor, 'json-value');
  cursor.at += word.length;
  return value;
}

function skipSpace(cursor: Cursor): void {
  const { text } = cursor;
  for (;;) {
    const code = text.charCodeAt(cursor.at);
    if (code > 0x20) return;
    if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return;
    cursor.at += 1;
  }
}

/** The path without names that exams and FHIR do not have: a lost bracket makes a value a name. */
function shownPath({ path, places }: Cursor): Path {
  return path.map((step, at) =>
    typeof step === 'number' || isKnownName(step) ? step : unknownStep(places[at] ?? 0),
  );
}

function fail(cursor: Cursor, form: FormWord): never {
  const { text, at, position } = cursor;
  const reason = at >= text.length ? 'ends-early' : 'syntax';
  throw new Stop(issue('not-json', shownPath(cursor), { reason, form }, { source: position(at) }));
}
