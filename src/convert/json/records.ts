import { append } from '../../data/append.ts';
import type { Field, LegacyRecord, Scope } from '../record/record.ts';
import type { LinePlace } from '../xml/place.ts';
import type { JsonNode, JsonObject } from './parse.ts';

/** How the parts of one exam become records. */
export interface JsonReading {
  /** Paths below the exam of the objects that are records of their own. */
  readonly items: ReadonlySet<string>;
  readonly placeOf: (offset: number) => LinePlace;
}

/** An object of the exam, or of an item in it. */
interface Visit {
  readonly path: string;
  /** The object, with those around it; none for the exam itself. */
  readonly scope?: Scope;
  /** Values of the objects between the exam and this one, nearest last; only while looking for items. */
  readonly outer?: readonly (readonly Field[])[];
}

/**
 * The exam and its items as records, in input order. Names of fields are paths: below the exam for its
 * own (`skin/cheek`), from the item on for those of an item (`finding/code`), of which each list member is
 * one. An item also has the values of the objects between the exam and it, as `../side`. A `/` or `~` in a
 * name is written `~1` and `~0`, as in a JSON Pointer.
 * @see https://www.rfc-editor.org/rfc/rfc6901
 */
export function jsonRecords(exam: JsonObject, reading: JsonReading): LegacyRecord[] {
  const items: LegacyRecord[] = [];
  const fields = readObject(exam, { path: '', outer: [] }, reading, items);
  const at = reading.placeOf(exam.at);
  return [{ kind: 'exam', fields, at, looseSiblings: true }, ...items];
}

function readObject(
  { entries }: JsonObject,
  visit: Visit,
  reading: JsonReading,
  items: LegacyRecord[],
): Field[] {
  const { path, scope, outer } = visit;
  const itemsBefore = items.length;
  const own = entries.flatMap(({ name, node }) =>
    isScalar(node) ? [fieldOf(node, join(path, escaped(name)), reading, scope)] : [],
  );
  const isExam = path === '';
  const around = outer && (isExam ? [] : [...outer, own]);
  const inside: Visit = { path, ...(scope && { scope }), ...(around && { outer: around }) };
  const below: Field[] = [];
  for (const { name, node } of entries) {
    if (!isScalar(node)) append(below, readBelow(node, escaped(name), inside, reading, items));
  }
  // Values around items go to the items, so that they are not told twice; those of the exam stay its own.
  const given = outer !== undefined && !isExam && items.length > itemsBefore;
  return given ? below : [...own, ...below];
}

/** An object or list under a name; each member of a list is a thing of its own. */
function readBelow(
  node: JsonNode,
  name: string,
  parent: Visit,
  reading: JsonReading,
  items: LegacyRecord[],
): Field[] {
  if (node.kind === 'array') {
    return node.nodes.flatMap((one) => readBelow(one, name, parent, reading, items));
  }
  const path = join(parent.path, name);
  const scope = scopeBelow(name, parent.scope);
  if (node.kind !== 'object') return [fieldOf(node, path, reading, scope)];
  if (parent.outer === undefined || !reading.items.has(path)) {
    return readObject(node, { ...parent, path, scope }, reading, items);
  }
  const fields = readObject(node, { path: name, scope }, reading, items);
  const at = reading.placeOf(node.at);
  items.push({ kind: name, fields: [...fields, ...given(parent.outer)], at, looseSiblings: true });
  return [];
}

/** Values of the objects around an item, nearest first: `../side`, `../../side`. */
function given(outer: readonly (readonly Field[])[]): Field[] {
  return [...outer].reverse().flatMap((fields, steps) =>
    fields.map((field) => ({
      ...field,
      name: `${'../'.repeat(steps + 1)}${field.name.slice(field.name.lastIndexOf('/') + 1)}`,
    })),
  );
}

function isScalar(node: JsonNode): boolean {
  return node.kind === 'text' || node.kind === 'null';
}

function fieldOf(
  node: JsonNode,
  name: string,
  reading: JsonReading,
  scope: Scope | undefined,
): Field {
  const at = reading.placeOf(node.at);
  const within = scope === undefined ? {} : { scope };
  if (node.kind === 'null') return { name, text: '', at, explicitNull: 'null', ...within };
  return { name, text: node.kind === 'text' ? node.text : '', at, ...within };
}

function scopeBelow(name: string, parent: Scope | undefined): Scope {
  return parent === undefined ? { name } : { name, parent };
}

function escaped(name: string): string {
  return name.replaceAll('~', '~0').replaceAll('/', '~1');
}

function join(path: string, step: string): string {
  return path === '' ? step : `${path}/${step}`;
}
