import { contentOf, isBlank } from '../exams/note.ts';
import type { SourceField, TextPart, TextSource, Where } from '../mapping/mapping.ts';
import type { Field, LegacyRecord, Scope } from './record.ts';

/**
 * Whether two fields of one record speak of the same thing: as far as the names of what they stand in
 * go together, it is the same element, repetition or row.
 */
export function inContext(one: Field, other: Field): boolean {
  if (one.scope === other.scope) return true;
  return sharedScope(one.scope, other.scope) !== false;
}

/** The innermost scope of both, none at the top of the record; false where they are of two things. */
function sharedScope(one: Scope | undefined, other: Scope | undefined): Scope | undefined | false {
  const [first, second] = [chain(one), chain(other)];
  let shared: Scope | undefined;
  for (const [at, scope] of first.entries()) {
    const beside = second[at];
    if (beside === undefined || beside.name !== scope.name) break;
    if (beside !== scope) return false;
    shared = scope;
  }
  return shared;
}

/** The scopes from the outermost on. */
function chain(scope: Scope | undefined): Scope[] {
  const scopes: Scope[] = [];
  for (let at = scope; at !== undefined; at = at.parent) scopes.unshift(at);
  return scopes;
}

/** Whether a scope is another or around it. */
export function isAround(outer: Scope | undefined, inner: Scope | undefined): boolean {
  for (let at = inner; ; at = at.parent) {
    if (at === outer) return true;
    if (at === undefined) return false;
  }
}

/** What the fields beside a value say, or that it cannot be told which of them belongs to it. */
export interface Beside {
  /** Those with content. */
  readonly fields: readonly Field[];
  /** Fields by which they were told apart from others of their name. */
  readonly tests: readonly Field[];
  /** Several values share the field, and any of them may have lost its own. */
  readonly unclear: boolean;
}

/**
 * The fields that a name means for a value: those of its own element, row or repetition, and of what
 * is around it. Where the syntax gives elements that stand side by side no meaning of their own, such
 * an element counts only beside a value that is the one of its name there, and, unless it can say `many`
 * things that add up, if no second one, blank or not, stands there: `<side>R</side><v>1</v><side/><v>2</v>` does not say whose side is whose.
 */
export function besideValue(
  name: SourceField,
  value: Field,
  record: LegacyRecord,
  many: 'one' | 'many' = 'one',
): Beside {
  const found = matching(name, record).filter((field) => inContext(value, field));
  const said = found.filter((field) => !isBlank(field));
  const tests = testsOf(name, said, record);
  if (record.looseSiblings !== true) return { fields: said, tests, unclear: false };
  const unclear = said.some((field) => {
    if (isAround(field.scope, value.scope)) return false;
    const shared = sharedScope(value.scope, field.scope);
    const isHere = (other: Field): boolean => shared !== false && isAround(shared, other.scope);
    const values = record.fields.filter((other) => other.name === value.name && isHere(other));
    return values.length > 1 || (many === 'one' && found.filter(isHere).length > 1);
  });
  return { fields: said, tests, unclear };
}

function testsOf(source: SourceField, said: readonly Field[], record: LegacyRecord): Field[] {
  const { where } = parts(source);
  if (where === undefined) return [];
  return record.fields.filter(
    (other) => other.name === where.field && said.some((field) => inContext(field, other)),
  );
}

/** Fields of a record that a mapping names, blank ones among them. */
export function matching(source: SourceField, record: LegacyRecord): Field[] {
  const { from, where } = parts(source);
  const named = record.fields.filter(({ name }) => name === from);
  return where === undefined ? named : named.filter((field) => fits(field, where, record));
}

/** Whether a field has beside it what the mapping asks for, and nothing else under that name. */
export function fits(field: Field, where: Where, record: LegacyRecord): boolean {
  const accepted = typeof where.is === 'string' ? [where.is] : where.is;
  const beside = record.fields.filter(
    (other) => other.name === where.field && inContext(field, other),
  );
  return beside.length > 0 && beside.every((other) => accepted.includes(contentOf(other).trim()));
}

export function parts(source: SourceField): { readonly from: string; readonly where?: Where } {
  return typeof source === 'string' ? { from: source } : source;
}

/** Names of a field and of what must stand beside it. */
export function sourceNames(source: SourceField | undefined): string[] {
  if (source === undefined) return [];
  const { from, where } = parts(source);
  return where === undefined ? [from] : [from, where.field];
}

/** The parts of a text in order of preference. */
export function partsOfText(source: TextSource | undefined): readonly TextPart[] {
  if (source === undefined) return [];
  return isOnePart(source) ? [source] : source;
}

function isOnePart(source: TextSource): source is TextPart {
  return !Array.isArray(source);
}

/** Names of the fields that a text is taken from. */
export function namesOfText(source: TextSource | undefined): string[] {
  return partsOfText(source).flatMap((part) => (typeof part === 'string' ? [part] : part.join));
}
