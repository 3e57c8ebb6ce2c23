import { type Issue, issue } from './issue.ts';
import type { Path } from './path.ts';

export interface PlainDataLimits {
  /** Levels of objects and lists; the outermost is 1. */
  readonly depth: number;
  /** Values of any kind, counted over the whole structure. */
  readonly values: number;
}

interface Frame {
  readonly holder: Readonly<Record<string | number, unknown>>;
  /** Property names of an object; none for a list. */
  readonly keys: readonly string[] | undefined;
  readonly length: number;
  at: number;
}

/** Own properties of these names are how prototypes get changed by a careless copy. */
const unsafeNames: ReadonlySet<unknown> = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Half of a surrogate pair, a noncharacter, or a control character that neither XML 1.0 nor a FHIR
 * string may hold.
 * @see https://www.w3.org/TR/xml/#charsets and https://hl7.org/fhir/R4/datatypes.html#string
 */
const badCharacter = /[\p{Cs}\uFFFE\uFFFF]|(?![\t\n\r\u007F-\u009F])\p{Cc}/u;

/**
 * What makes data of unknown origin unfit to be looked at closer, found without recursion, so that
 * neither a cycle nor deep nesting can exhaust the stack: `too-deep` and `too-large` (both end the
 * search), `unsafe-property` and `invalid-unicode`.
 */
export function plainDataIssues(value: unknown, limits: PlainDataLimits): Issue[] {
  const issues: Issue[] = [];
  const frames: Frame[] = [];
  let values = 1;
  if (typeof value === 'string') checkText(value, frames, issues);
  const root = frameOf(value);
  if (root !== undefined) frames.push(root);

  for (let frame = frames.at(-1); frame !== undefined; frame = frames.at(-1)) {
    if (frame.at === frame.length) {
      frames.pop();
      continue;
    }
    const step = frame.keys?.[frame.at] ?? frame.at;
    const member = frame.holder[step];
    frame.at += 1;
    values += 1;
    if (values > limits.values) return [...issues, tooLarge(limits.values)];
    if (unsafeNames.has(step)) {
      issues.push(
        issue('unsafe-property', pathOf(frames), 'a property of this name is not accepted'),
      );
    }
    if (typeof member === 'string') checkText(member, frames, issues);
    const inner = frameOf(member);
    if (inner === undefined) continue;
    if (frames.length === limits.depth) return [...issues, tooDeep(pathOf(frames), limits.depth)];
    frames.push(inner);
  }
  return issues;
}

/** The same text with U+FFFD for every character that FHIR does not allow. */
export function withoutBadCharacters(text: string): string {
  return text.replace(new RegExp(badCharacter, 'gu'), '\uFFFD');
}

function frameOf(value: unknown): Frame | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const keys = Array.isArray(value) ? undefined : Object.keys(value);
  // An object can be read by any of its own keys, and a list by its indexes.
  const holder = value as Frame['holder'];
  return { holder, keys, length: keys?.length ?? (value as unknown[]).length, at: 0 };
}

/** The member last taken from each open holder leads to the one now looked at. */
function pathOf(frames: readonly Frame[]): Path {
  return frames.map(({ keys, at }) => keys?.[at - 1] ?? at - 1);
}

function checkText(text: string, frames: readonly Frame[], issues: Issue[]): void {
  const bad = badCharacter.exec(text)?.[0];
  if (bad === undefined) return;
  const code = bad.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
  const what =
    bad >= '\uD800' && bad <= '\uDFFF' ? 'half a surrogate pair' : 'a forbidden character';
  const details = {
    expected: 'Unicode text with tab, line feed and carriage return as only controls',
  };
  issues.push(issue('invalid-unicode', pathOf(frames), `text holds ${what}, U+${code}`, details));
}

function tooDeep(path: Path, depth: number): Issue {
  const details = { expected: `at most ${depth} levels` };
  return issue('too-deep', path, 'nested too deep, or in a circle', details);
}

function tooLarge(values: number): Issue {
  return issue('too-large', [], 'too many values', { expected: `at most ${values}` });
}
