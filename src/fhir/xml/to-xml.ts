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
import {
  type ElementRow,
  isPrimitive,
  isResource,
  jsonForm,
  type TypeRows,
  typesOf,
} from './element-table.ts';
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
  const writing: Writing = { version, types, issues, parts: [] };
  const newline = pretty ? '\n' : '';
  writing.parts.push('<?xml version="1.0" encoding="UTF-8"?>', newline);
  writeResource(writing, resource, [], newline, ` xmlns="${FHIR_NAMESPACE}"`);
  writing.parts.push(newline);
  const found = told(issues, resource);
  return hasErrors(issues) ? failure(found) : success(writing.parts.join(''), found);
}

function told(issues: readonly Issue[], resource: unknown): readonly Issue[] {
  return withShownPaths(cutIssues(issues), resource);
}

interface Writing {
  readonly version: FhirVersion;
  readonly types: (type: string) => TypeRows | undefined;
  readonly issues: Issue[];
  readonly parts: string[];
}

function say<Code extends RecordCode>(
  { issues }: Writing,
  code: Code,
  path: Path,
  facts: RecordFacts<Code>,
): void {
  issues.push(issue(code, path, facts));
}

/** A plain object whose members can be read by name. */
function own(holder: Readonly<Record<string, unknown>>, name: string): unknown {
  return Object.hasOwn(holder, name) ? holder[name] : undefined;
}

/** `newline` is empty for compact text, else a line break with the indent of the current level. */
function writeResource(
  writing: Writing,
  value: unknown,
  path: Path,
  newline: string,
  declared = '',
): void {
  const type = isPlainObject(value) ? own(value, 'resourceType') : undefined;
  const rows = typeof type === 'string' ? writing.types(type) : undefined;
  if (!isPlainObject(value) || rows === undefined || !isResource(rows)) {
    say(writing, 'unchecked-resource', path, {
      reason: 'xml',
      version: writing.version,
    });
    return;
  }
  const inner = newline && `${newline}  `;
  writing.parts.push(`<${type}${declared}>`);
  writeMembers(writing, value, rows, path, inner);
  writing.parts.push(newline, `</${type}>`);
}

function writeMembers(
  writing: Writing,
  holder: Readonly<Record<string, unknown>>,
  rows: TypeRows,
  path: Path,
  newline: string,
): void {
  const names = new Set(Object.keys(holder).filter((name) => holder[name] !== undefined));
  if (isResource(rows)) names.delete('resourceType');
  for (const row of rows.values()) {
    const named = `_${row.name}`;
    const plain = names.delete(row.name);
    const beside = hasCompanion(row) && names.delete(named);
    if ((plain || beside) && !row.attribute) {
      writeProperty(writing, holder, row, [...path, row.name], newline);
    }
  }
  for (const name of names) {
    say(writing, 'unknown-property', [...path, name], { reason: 'fhir' });
  }
}

/** Ids and extensions of a primitive stand under its name with an underscore. */
function hasCompanion({ type, attribute }: ElementRow): boolean {
  return isPrimitive(type) && type !== 'xhtml' && !attribute;
}

function writeProperty(
  writing: Writing,
  holder: Readonly<Record<string, unknown>>,
  row: ElementRow,
  path: Path,
  newline: string,
): void {
  const value = own(holder, row.name);
  const companion = own(holder, `_${row.name}`);
  const beside = [...path.slice(0, -1), `_${row.name}`];
  if (!row.list) {
    const text = decimalText(holder, row.name);
    writeOne(writing, row, { value, companion, text, beside }, path, newline);
    return;
  }
  const length = Math.max(listLength(writing, value, path), listLength(writing, companion, path));
  for (let index = 0; index < length; index++) {
    const item = {
      value: itemOf(value, index),
      companion: itemOf(companion, index),
      text: undefined,
      beside: [...beside, index],
    };
    writeOne(writing, row, item, [...path, index], newline);
  }
}

function listLength(writing: Writing, list: unknown, path: Path): number {
  if (list === undefined) return 0;
  if (!Array.isArray(list)) say(writing, 'wrong-type', path, { reason: 'not-a-list' });
  else if (list.length === 0) say(writing, 'empty-value', path, { reason: 'xml-list' });
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
  /** Where the companion stands. */
  readonly beside: Path;
}

function writeOne(
  writing: Writing,
  row: ElementRow,
  written: Written,
  path: Path,
  newline: string,
): void {
  const { value } = written;
  writing.parts.push(newline);
  if (row.type === 'xhtml') {
    writeNarrative(writing, value, path);
    return;
  }
  if (isPrimitive(row.type)) {
    writePrimitive(writing, row, written, path, newline);
    return;
  }
  if (!isPlainObject(value)) {
    say(writing, 'wrong-type', path, { reason: 'not-an-object' });
    return;
  }
  if (row.type !== 'Resource') {
    writeElement(writing, row.name, row.type, value, '', path, newline);
    return;
  }
  const inner = newline && `${newline}  `;
  writing.parts.push(`<${row.name}>`, inner);
  writeResource(writing, value, path, inner);
  writing.parts.push(newline, `</${row.name}>`);
}

function writeElement(
  writing: Writing,
  name: string,
  type: string,
  value: Readonly<Record<string, unknown>>,
  attributes: string,
  path: Path,
  newline: string,
): void {
  const rows = writing.types(type) ?? new Map();
  const { parts } = writing;
  if (attributes === '' && Object.values(value).every((member) => member === undefined)) {
    say(writing, 'empty-value', path, { reason: 'xml-object' });
    return;
  }
  parts.push(`<${name}${ownAttributes(writing, value, rows, path)}${attributes}>`);
  const before = parts.length;
  writeMembers(writing, value, rows, path, newline && `${newline}  `);
  if (parts.length > before) parts.push(newline, `</${name}>`);
  else parts[before - 1] = `${parts[before - 1]?.slice(0, -1)}/>`;
}

function ownAttributes(
  writing: Writing,
  value: Readonly<Record<string, unknown>>,
  rows: TypeRows,
  path: Path,
): string {
  let text = '';
  for (const { name, attribute, type } of rows.values()) {
    const stated = attribute ? own(value, name) : undefined;
    if (stated === undefined) continue;
    const written = primitiveText(writing, stated, type, undefined, [...path, name]);
    text += ` ${name}="${escapeAttribute(written)}"`;
  }
  return text;
}

function writePrimitive(
  writing: Writing,
  row: ElementRow,
  { value, companion, text, beside }: Written,
  path: Path,
  newline: string,
): void {
  if (value === undefined && companion === undefined) {
    say(writing, 'empty-value', path, { reason: 'neither' });
    return;
  }
  const stated = value === undefined ? '' : primitiveText(writing, value, row.type, text, path);
  const attribute = value === undefined ? '' : ` value="${escapeAttribute(stated)}"`;
  if (companion !== undefined && !isPlainObject(companion)) {
    say(writing, 'wrong-type', beside, { reason: 'beside-value' });
    return;
  }
  writeElement(writing, row.name, 'Element', companion ?? {}, attribute, beside, newline);
}

function primitiveText(
  writing: Writing,
  value: unknown,
  type: string,
  stated: string | undefined,
  path: Path,
): string {
  const form = jsonForm(type);
  const given = typeof value;
  if (given !== form || (form === 'number' && !Number.isFinite(value))) {
    say(writing, 'wrong-type', path, {
      reason: 'xml-value',
      form: form === 'string' ? 'text' : form,
    });
  } else if (value === '') {
    say(writing, 'empty-value', path, { reason: 'xml-text' });
  }
  return stated ?? (typeof value === 'object' ? '' : String(value));
}

/** The XHTML as it stands, once it is known to be one `div` of its own namespace. */
function writeNarrative(writing: Writing, value: unknown, path: Path): void {
  const text = typeof value === 'string' ? value.trim() : '';
  const read = readXml(text);
  const div = 'root' in read ? read.root : undefined;
  const whole = div !== undefined && div.start === 0 && div.end === text.length;
  if (whole && div.name === 'div' && div.attributes.get('xmlns') === XHTML) {
    writing.parts.push(text);
    return;
  }
  say(writing, 'invalid-narrative', path, {
    reason: 'not-xhtml',
    url: XHTML,
  });
}
