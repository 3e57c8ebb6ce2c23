import { isPlainObject, plainDataIssues } from '../../data/plain-data.ts';
import { type BudgetOption, within } from '../../issues/budget.ts';
import {
  failure,
  hasErrors,
  type Issue,
  issue,
  type Outcome,
  type RecordCode,
  type RecordFacts,
  success,
} from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import { withShownPaths } from '../../issues/shown-path.ts';
import { escapeAttribute } from '../../xml/characters.ts';
import { readXml } from '../../xml/reader.ts';
import { decimalText } from '../json/decimal.ts';
import { XHTML } from '../names/systems.ts';
import type { FhirVersion } from '../version.ts';
import { type ElementRow, isResource, jsonForm, type TypeRows, typesOf } from './element-table.ts';
import type { XmlTypes } from './from-xml.ts';
import { FHIR_NAMESPACE } from './namespace.ts';

/** The version, and the layout of the text. */
export interface ToXmlOptions {
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /** Line breaks and two spaces of indent for each level. Default false. */
  readonly pretty?: boolean;
  /** What the call may take; default `budgets.xml`. */
  readonly budget?: BudgetOption;
}

/**
 * Writes a resource as FHIR XML, with the elements in the order of their definitions, decimals as
 * they were stated and the narrative as the XHTML that it is.
 *
 * @param resource A bundle or any other resource, as plain data.
 * @param options `fhirVersion` (default `R4`) and layout; see {@link ToXmlOptions}.
 * @returns The text. It fails where the resource cannot be written without loss: unknown types and
 *   properties, values of another type, empty ones, text that XML cannot hold.
 * @example
 * const xml = orThrow('write XML', toXml(bundle));
 * @see https://hl7.org/fhir/R4/xml.html
 */
export function toXml(
  resource: unknown,
  { fhirVersion: version = 'R4', ...options }: ToXmlOptions = {},
): Outcome<string> {
  return within(
    'xml',
    options.budget,
    () => writeResourceXml(resource, { version, types: typesOf(version) }, options),
    (why) => failure([endedIssue(why)]),
  );
}

/** As {@link toXml}, with the types given. */
export function writeResourceXml(
  resource: unknown,
  { version, types }: XmlTypes,
  { pretty = false }: ToXmlOptions = {},
): Outcome<string> {
  const issues = plainDataIssues(resource);
  if (hasErrors(issues)) return failure(told(issues, resource));
  const writing: Writing = { version, types, issues, parts: [], written: '', path: [] };
  const newline = pretty ? '\n' : '';
  write(writing, `<?xml version="1.0" encoding="UTF-8"?>${newline}`);
  writeResource(writing, resource, newline, ` xmlns="${FHIR_NAMESPACE}"`);
  write(writing, newline);
  const found = told(issues, resource);
  return hasErrors(issues)
    ? failure(found)
    : success(writing.written + writing.parts.join(''), found);
}

function told(issues: readonly Issue[], resource: unknown): readonly Issue[] {
  return withShownPaths(cutIssues(issues), resource);
}

interface Writing {
  readonly version: FhirVersion;
  readonly types: (type: string) => TypeRows | undefined;
  readonly issues: Issue[];
  /** Pieces that follow what is `written`. */
  readonly parts: string[];
  written: string;
  /** Of what is written now; one for the whole text, copied only for what is told. */
  readonly path: (string | number)[];
}

/** Pieces that are put together at once, so that few of them are held at a time. */
const MOST_PIECES = 1000;

function write(writing: Writing, piece: string): void {
  if (writing.parts.push(piece) < MOST_PIECES) return;
  writing.written += writing.parts.join('');
  writing.parts.length = 0;
}

function say<Code extends RecordCode>(
  { issues, path }: Writing,
  code: Code,
  facts: RecordFacts<Code>,
  at: Path = [...path],
): void {
  issues.push(issue(code, at, facts));
}

/** A plain object whose members can be read by name. */
function own(holder: Readonly<Record<string, unknown>>, name: string): unknown {
  return Object.hasOwn(holder, name) ? holder[name] : undefined;
}

/** `newline` is empty for compact text, else a line break with the indent of the current level. */
function writeResource(writing: Writing, value: unknown, newline: string, declared = ''): void {
  const type = isPlainObject(value) ? own(value, 'resourceType') : undefined;
  const rows = typeof type === 'string' ? writing.types(type) : undefined;
  if (!isPlainObject(value) || rows === undefined || !isResource(rows)) {
    say(writing, 'unchecked-resource', { reason: 'xml', version: writing.version });
    return;
  }
  const inner = newline && `${newline}  `;
  write(writing, `<${type}${declared}>`);
  writeMembers(writing, value, rowsIn(value, rows), inner);
  write(writing, `${newline}</${type}>`);
}

function writeMembers(
  writing: Writing,
  holder: Readonly<Record<string, unknown>>,
  { present, unknown }: Members,
  newline: string,
): void {
  const { path } = writing;
  for (const row of present) {
    if (row.attribute) continue;
    path.push(row.name);
    writeProperty(writing, holder, row, newline);
    path.pop();
  }
  for (const name of unknown) {
    say(writing, 'unknown-property', { reason: 'fhir' }, [...path, name]);
  }
}

/** The definitions of the members that an object has, in their order, and the names that have none. */
interface Members {
  readonly present: readonly ElementRow[];
  readonly unknown: readonly string[];
}

function rowsIn(holder: Readonly<Record<string, unknown>>, rows: TypeRows): Members {
  const present: ElementRow[] = [];
  const unknown: string[] = [];
  let isOrdered = true;
  for (const name of Object.keys(holder)) {
    if (holder[name] === undefined) continue;
    const row = rows.get(name) ?? companionRow(name, rows);
    if (row === undefined) {
      if (name !== 'resourceType' || !isResource(rows)) unknown.push(name);
      continue;
    }
    const last = present.at(-1);
    if (last !== undefined && last.place >= row.place) isOrdered = false;
    present.push(row);
  }
  if (isOrdered) return { present, unknown };
  // A primitive and what stands beside it are one element.
  const sorted = [...new Set(present)].sort((a, b) => a.place - b.place);
  return { present: sorted, unknown };
}

/** Of a name with an underscore. */
function companionRow(name: string, rows: TypeRows): ElementRow | undefined {
  if (!name.startsWith('_')) return undefined;
  const row = rows.get(name.slice(1));
  return row?.companion === undefined ? undefined : row;
}

function writeProperty(
  writing: Writing,
  holder: Readonly<Record<string, unknown>>,
  row: ElementRow,
  newline: string,
): void {
  const { path } = writing;
  const value = own(holder, row.name);
  const companion = row.companion === undefined ? undefined : own(holder, row.companion);
  if (!row.list) {
    const text = typeof value === 'number' ? decimalText(holder, row.name) : undefined;
    writeOne(writing, row, { value, companion, text }, newline);
    return;
  }
  const length = Math.max(listLength(writing, value), listLength(writing, companion));
  for (let index = 0; index < length; index++) {
    path.push(index);
    const item = { value: itemOf(value, index), companion: itemOf(companion, index) };
    writeOne(writing, row, { ...item, text: undefined }, newline);
    path.pop();
  }
}

function listLength(writing: Writing, list: unknown): number {
  if (list === undefined) return 0;
  if (!Array.isArray(list)) say(writing, 'wrong-type', { reason: 'not-a-list' });
  else if (list.length === 0) say(writing, 'empty-value', { reason: 'xml-list' });
  else return list.length;
  return 0;
}

/** Null stands for what the other of the two lists of a primitive has. */
function itemOf(list: unknown, index: number): unknown {
  return Array.isArray(list) ? (list[index] ?? undefined) : undefined;
}

interface Written {
  readonly value: unknown;
  readonly companion: unknown;
  /** A decimal as it was stated. */
  readonly text: string | undefined;
}

function writeOne(writing: Writing, row: ElementRow, written: Written, newline: string): void {
  const { value } = written;
  if (newline !== '') write(writing, newline);
  if (row.type === 'xhtml') {
    writeNarrative(writing, value);
    return;
  }
  if (row.primitive) {
    writePrimitive(writing, row, written, newline);
    return;
  }
  if (!isPlainObject(value)) {
    say(writing, 'wrong-type', { reason: 'not-an-object' });
    return;
  }
  if (row.type !== 'Resource') {
    writeElement(writing, row.name, row.type, value, '', newline);
    return;
  }
  const inner = newline && `${newline}  `;
  write(writing, `<${row.name}>${inner}`);
  writeResource(writing, value, inner);
  write(writing, `${newline}</${row.name}>`);
}

const noRows: TypeRows = new Map();

function writeElement(
  writing: Writing,
  name: string,
  type: string,
  value: Readonly<Record<string, unknown>>,
  attributes: string,
  newline: string,
): void {
  const rows = writing.types(type) ?? noRows;
  if (attributes === '' && Object.values(value).every((member) => member === undefined)) {
    say(writing, 'empty-value', { reason: 'xml-object' });
    return;
  }
  const members = rowsIn(value, rows);
  const start = `<${name}${ownAttributes(writing, value, members)}${attributes}`;
  const isEmpty = members.present.every(({ attribute }) => attribute);
  write(writing, isEmpty ? `${start}/>` : `${start}>`);
  writeMembers(writing, value, members, newline && `${newline}  `);
  if (!isEmpty) write(writing, `${newline}</${name}>`);
}

function ownAttributes(
  writing: Writing,
  value: Readonly<Record<string, unknown>>,
  { present }: Members,
): string {
  let text = '';
  for (const row of present) {
    if (!row.attribute) continue;
    writing.path.push(row.name);
    const written = primitiveText(writing, value[row.name], row.type, undefined);
    writing.path.pop();
    text += ` ${row.name}="${escapeAttribute(written)}"`;
  }
  return text;
}

function writePrimitive(
  writing: Writing,
  row: ElementRow,
  { value, companion, text }: Written,
  newline: string,
): void {
  if (value === undefined && companion === undefined) {
    say(writing, 'empty-value', { reason: 'neither' });
    return;
  }
  const stated = value === undefined ? '' : primitiveText(writing, value, row.type, text);
  const attribute = value === undefined ? '' : ` value="${escapeAttribute(stated)}"`;
  if (companion === undefined) {
    write(writing, `<${row.name}${attribute}/>`);
    return;
  }
  const { path } = writing;
  // What is told of it stands under its own name.
  const at = row.list ? path.length - 2 : path.length - 1;
  path[at] = `_${row.name}`;
  if (isPlainObject(companion)) {
    writeElement(writing, row.name, 'Element', companion, attribute, newline);
  } else {
    say(writing, 'wrong-type', { reason: 'beside-value' });
  }
  path[at] = row.name;
}

function primitiveText(
  writing: Writing,
  value: unknown,
  type: string,
  stated: string | undefined,
): string {
  const form = jsonForm(type);
  const given = typeof value;
  if (given !== form || (form === 'number' && !Number.isFinite(value))) {
    say(writing, 'wrong-type', { reason: 'xml-value', form: form === 'string' ? 'text' : form });
  } else if (value === '') {
    say(writing, 'empty-value', { reason: 'xml-text' });
  }
  return stated ?? (typeof value === 'object' ? '' : String(value));
}

/** The XHTML as it stands, once it is known to be one `div` of its own namespace. */
function writeNarrative(writing: Writing, value: unknown): void {
  const text = typeof value === 'string' ? value.trim() : '';
  const read = readXml(text);
  const div = 'root' in read ? read.root : undefined;
  const whole = div !== undefined && div.start === 0 && div.end === text.length;
  if (whole && div.name === 'div' && div.attributes.get('xmlns') === XHTML) {
    write(writing, text);
    return;
  }
  say(writing, 'invalid-narrative', { reason: 'not-xhtml', url: XHTML });
}
