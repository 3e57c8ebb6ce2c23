import { type Budget, type BudgetOption, bounds, spend } from '../issues/budget.ts';
import { type Issue, issue } from '../issues/issue.ts';
import { restIssue } from '../issues/issue-list.ts';
import type { Path } from '../issues/path.ts';

/**
 * Half of a surrogate pair, a noncharacter, or a control character that neither XML 1.0 nor a FHIR
 * string may hold.
 * @see https://www.w3.org/TR/xml/#charsets and https://hl7.org/fhir/R4/datatypes.html#string
 */
const badCharacter = /[\p{Cs}\uFFFE\uFFFF]|(?![\t\n\r\u007F-\u009F])\p{Cc}/u;

/** Finds quickly, in one pass without pairs, what may be bad; surrogates are then looked at in pairs. */
const suspect = /[^\t\n\r -\uD7FF\uE000-\uFFFD]/;

interface Search {
  readonly limits: Pick<Budget, 'depth' | 'values' | 'issues'>;
  readonly issues: Issue[];
  readonly path: (string | number)[];
  values: number;
  /** Number of values at which something is to be done: the budget is told, or the search ends. */
  mark: number;
  /** Faults beyond those listed. */
  more: number;
}

function say(search: Search, found: Issue): void {
  if (search.issues.length < search.limits.issues) search.issues.push(found);
  else search.more += 1;
}

/** Values after which the budget is told of them: telling it of each would cost as much as the look. */
const stepsTold = 1000;

/** Texts up to this length are gone through faster by code than by an expression. */
const shortText = 32;

function isSuspect(text: string): boolean {
  if (text.length > shortText) return suspect.test(text);
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    // The same characters as in `suspect`; nearly all are between the two.
    if (unit < 0x20 ? unit !== 9 && unit !== 10 && unit !== 13 : unit > 0xd7ff) {
      return suspect.test(text);
    }
  }
  return false;
}

/**
 * Whether an issue says that what it is about is not looked into. A list with too many entries is looked
 * into all the same.
 */
export function endsLook({ code, facts }: Issue): boolean {
  return code === 'too-deep' || (code === 'too-large' && facts.reason !== 'list');
}

/**
 * What makes data of unknown origin unfit to be looked at closer: `too-deep` and `too-large` (both end
 * the search), `unsafe-property` and `invalid-unicode`. It goes no deeper than the limit, so that
 * neither a cycle nor deep nesting can exhaust the stack.
 */
export function plainDataIssues(
  value: unknown,
  given?: Pick<BudgetOption, 'depth' | 'values'>,
): Issue[] {
  const limits = given === undefined ? bounds() : { ...bounds(), ...given };
  const mark = Math.min(stepsTold, limits.values + 1);
  const search: Search = { limits, issues: [], path: [], values: 1, mark, more: 0 };
  look(value, search);
  return search.more === 0 ? search.issues : [...search.issues, restIssue(search.more)];
}

/** False once the search has ended. */
function look(value: unknown, search: Search): boolean {
  if (typeof value === 'string') {
    if (isSuspect(value)) checkText(value, search);
    return true;
  }
  if (typeof value !== 'object' || value === null) return true;
  const { path, limits, issues } = search;
  if (path.length === limits.depth) {
    issues.push(tooDeep([...path], limits.depth));
    return false;
  }
  return Array.isArray(value) ? lookInList(value, search) : lookInObject(value, search);
}

function lookInList(list: readonly unknown[], search: Search): boolean {
  for (let at = 0; at < list.length; at++) {
    if (!lookAt(list[at], at, search)) return false;
  }
  return true;
}

/** Own properties of three names are how prototypes get changed by a careless copy. */
function lookInObject(value: object, search: Search): boolean {
  // An object can be read by any of its own names.
  const holder = value as Readonly<Record<string, unknown>>;
  // Faster than a list of the keys; what is inherited is passed over.
  for (const name in holder) {
    if (!Object.hasOwn(holder, name)) continue;
    if (name === '__proto__' || name === 'constructor' || name === 'prototype') {
      const path = [...search.path, name];
      say(search, issue('unsafe-property', path, { reason: 'name' }));
    }
    if (!lookAt(holder[name], name, search)) return false;
  }
  return true;
}

function lookAt(member: unknown, step: string | number, search: Search): boolean {
  search.values += 1;
  if (search.values >= search.mark && !goesOnAtMark(search)) return false;
  const harmless = typeof member === 'string' ? !isSuspect(member) : typeof member !== 'object';
  if (harmless) return true;
  search.path.push(step);
  const goesOn = look(member, search);
  search.path.pop();
  return goesOn;
}

function goesOnAtMark(search: Search): boolean {
  const { values } = search.limits;
  if (search.values > values) {
    search.issues.push(tooLarge(values));
    return false;
  }
  spend(stepsTold);
  search.mark = Math.min(search.mark + stepsTold, values + 1);
  return true;
}

export function isPlainObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether two values say the same, in whatever order their properties stand. */
export function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((entry, at) => isSame(entry, b[at]));
  }
  const names = Object.keys(b);
  if (Object.keys(a).length !== names.length) return false;
  return names.every(
    (name) =>
      Object.hasOwn(a, name) &&
      // Own properties of both, as just seen.
      isSame((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]),
  );
}

/** The same text with U+FFFD for every character that FHIR does not allow. */
export function withoutBadCharacters(text: string): string {
  return text.replace(new RegExp(badCharacter, 'gu'), '\uFFFD');
}

function checkText(text: string, search: Search): void {
  const bad = badCharacter.exec(text)?.[0];
  if (bad === undefined) return;
  const code = bad.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
  const isSurrogate = bad >= '\uD800' && bad <= '\uDFFF';
  const facts = {
    reason: isSurrogate ? 'surrogate' : 'character',
    character: `U+${code}`,
  } as const;
  say(search, issue('invalid-unicode', [...search.path], facts));
}

function tooDeep(path: Path, depth: number): Issue {
  const details = {};
  return issue('too-deep', path, { reason: 'levels', maximum: depth }, details);
}

function tooLarge(values: number): Issue {
  return issue('too-large', [], { reason: 'values', maximum: values });
}
