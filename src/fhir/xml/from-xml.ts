import { positionsIn, type TextPosition } from '../../data/text-position.ts';
import { type BudgetOption, bounds, within } from '../../issues/budget.ts';
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
import { endedIssue } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import { readXml } from '../../xml/reader.ts';
import type { XmlElement } from '../../xml/tree.ts';
import { DECIMAL_TEXT, type DecimalCarrier, decimalProperty } from '../json/decimal.ts';
import { XHTML } from '../names/systems.ts';
import type { FhirVersion } from '../version.ts';
import { type ElementRow, isResource, type TypeRows, typesOf } from './element-table.ts';
import { FHIR_NAMESPACE } from './namespace.ts';
import { primitiveValue } from './primitive-value.ts';

type Json = Record<string, unknown>;

/** The version, and the budget of the call. */
export interface FromXmlOptions {
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /** What the call may take; default `budgets.xml`. */
  readonly budget?: BudgetOption;
}

/**
 * Reads a resource from FHIR XML, in the form that `fromJson` gives of the same resource: decimals
 * keep their digits, and a narrative stays as it was written. Elements must be those of the
 * version, in their order. Comments, processing instructions and schema locations are not part of a
 * resource and are not kept. External entities are never read, and a DOCTYPE is refused.
 *
 * @param text The XML, decoded.
 * @param options `fhirVersion` (default `R4`), and the budget of the call; see
 *   {@link FromXmlOptions}.
 * @returns The resource as plain data. It fails where anything is an error; issues hold the line
 *   and column.
 * @example
 * const { value, issues } = fromXml(text, { fhirVersion: 'R5' });
 * @see https://hl7.org/fhir/R4/xml.html
 */
export function fromXml(
  text: string,
  { fhirVersion: version = 'R4', budget }: FromXmlOptions = {},
): Outcome<Json> {
  const types = { version, types: typesOf(version) };
  const { value, issues } = readResourceXml(text, types, budget);
  return value === undefined || hasErrors(issues) ? failure(issues) : success(value, issues);
}

/** The elements of the types of one FHIR version. */
export interface XmlTypes {
  readonly version: FhirVersion;
  readonly types: (type: string) => TypeRows | undefined;
}

/** What could be read of a text in spite of errors. */
export interface XmlResource {
  readonly value?: Json;
  readonly root?: XmlElement;
  /** Where processing instructions begin. */
  readonly instructions?: readonly number[];
  readonly issues: readonly Issue[];
}

/**
 * As {@link fromXml}, with a value where something is an error too, for a validation that tells more.
 * What has not the form of its type stays text there, and elements out of order stand in their place.
 */
export function readResourceXml(text: string, types: XmlTypes, budget?: BudgetOption): XmlResource {
  return within(
    'xml',
    budget,
    () => readWithin(text, types),
    (why) => ({ issues: [endedIssue(why)] }),
  );
}

function readWithin(text: string, { version, types }: XmlTypes): XmlResource {
  const { characters, depth, values } = bounds();
  const read = readXml(text, { characters, depth, elements: values });
  const position = positionsIn(text);
  if ('fault' in read) {
    const { code, facts, at } = read.fault;
    return { issues: [issue(code, [], facts, { source: at === -1 ? undefined : position(at) })] };
  }
  const { root, instructions } = read;
  const reading: Reading = { text, version, position, types, issues: [], path: [] };
  const value = readResource(reading, root);
  return { ...(value !== undefined && { value }), root, instructions, issues: reading.issues };
}

interface Reading {
  readonly text: string;
  readonly position: (at: number) => TextPosition;
  readonly version: FhirVersion;
  readonly types: (type: string) => TypeRows | undefined;
  readonly issues: Issue[];
  /** Of what is read now; one for the whole text, copied only for what is told. */
  readonly path: (string | number)[];
}

function say<Code extends RecordCode>(
  { issues, position, path }: Reading,
  code: Code,
  facts: RecordFacts<Code>,
  at: number,
  ...below: Path
): void {
  issues.push(issue(code, [...path, ...below], facts, { source: position(at) }));
}

function readResource(reading: Reading, element: XmlElement): Json | undefined {
  const rows = reading.types(element.name);
  if (rows === undefined || !isResource(rows) || element.namespace !== FHIR_NAMESPACE) {
    const { version } = reading;
    say(reading, 'unchecked-resource', { reason: 'xml', version }, element.start);
    return undefined;
  }
  return readMembers(reading, element, rows, { resourceType: element.name });
}

function readMembers(
  reading: Reading,
  element: XmlElement,
  rows: TypeRows,
  holder: Json,
  except?: string,
): Json {
  for (const [name, value] of element.attributes) {
    if (name === except || isNotation(name, reading.path)) continue;
    if (rows.get(name)?.attribute !== true) {
      say(reading, 'unknown-property', { reason: 'xml-attribute' }, element.start);
    } else if (value === '') {
      say(reading, 'empty-value', { reason: 'xml-attribute' }, element.start, name);
    } else {
      holder[name] = value;
    }
  }
  if (element.textAt !== -1) {
    say(reading, 'invalid-value', { reason: 'text-between' }, element.textAt);
  }
  for (const { row, elements } of grouped(reading, element, rows)) {
    reading.path.push(row.name);
    readProperty(reading, holder, row, elements);
    reading.path.pop();
  }
  return holder;
}

/** Declarations of namespaces, and at the root where a schema may be found. */
function isNotation(name: string, path: Path): boolean {
  if (name === 'xmlns' || name.startsWith('xmlns:')) return true;
  return path.length === 0 && /^[^:]+:(?:noNamespaceS|s)chemaLocation$/.test(name);
}

interface Group {
  readonly row: ElementRow;
  readonly elements: XmlElement[];
}

/** The children under their definitions, in order; those that cannot stand here are told. */
function grouped(reading: Reading, parent: XmlElement, rows: TypeRows): readonly Group[] {
  const groups: Group[] = [];
  // Of elements out of order, where those of the same name stand.
  let byRow: Map<ElementRow, Group> | undefined;
  let last: Group | undefined;
  for (const element of parent.children) {
    const row = rows.get(element.name);
    // Which namespace a narrative has is told with the narrative.
    const known = row?.type === 'xhtml' || element.namespace === FHIR_NAMESPACE;
    if (row === undefined || row.attribute || !known) {
      say(reading, 'unknown-property', { reason: 'xml-element' }, element.start);
      continue;
    }
    if (last?.row === row) {
      last.elements.push(element);
      continue;
    }
    if (last !== undefined && last.row.order >= row.order) {
      say(reading, 'wrong-order', { reason: 'xml' }, element.start, row.name);
      byRow ??= new Map(groups.map((group) => [group.row, group]));
    }
    last = byRow?.get(row);
    if (last !== undefined) {
      last.elements.push(element);
      continue;
    }
    last = { row, elements: [element] };
    groups.push(last);
    byRow?.set(row, last);
  }
  return groups;
}

function readProperty(
  reading: Reading,
  holder: Json,
  row: ElementRow,
  elements: readonly XmlElement[],
): void {
  const [first, second] = elements;
  if (first === undefined) return;
  if (second !== undefined && !row.list) {
    say(reading, 'too-many', { reason: 'xml' }, second.start);
  }
  if (row.type === 'xhtml') {
    holder[row.name] = narrative(reading, first);
  } else if (row.primitive) {
    readPrimitives(reading, holder, row, elements);
  } else if (row.list) {
    holder[row.name] = elements.map((one, index) => {
      reading.path.push(index);
      const value = readComplex(reading, one, row.type);
      reading.path.pop();
      return value;
    });
  } else {
    holder[row.name] = readComplex(reading, first, row.type);
  }
}

const noRows: TypeRows = new Map();

function readComplex(reading: Reading, element: XmlElement, type: string): unknown {
  if (type !== 'Resource') {
    const rows = reading.types(type) ?? noRows;
    const holder = readMembers(reading, element, rows, {});
    if (Object.keys(holder).length === 0) sayEmpty(reading, element);
    return holder;
  }
  const [inner, ...others] = element.children;
  if (inner === undefined || others.length > 0 || element.textAt !== -1) {
    say(reading, 'invalid-value', { reason: 'one-resource' }, element.start);
    return undefined;
  }
  return readResource(reading, inner);
}

function sayEmpty(reading: Reading, element: XmlElement): void {
  say(reading, 'empty-value', { reason: 'xml-element' }, element.start);
}

/**
 * The XHTML as it was written, with its namespace on the div, as the JSON form has it: in XML an
 * element around it may declare it. A prefix would have to be taken off each tag, and is refused.
 */
function narrative(reading: Reading, element: XmlElement): string {
  const written = reading.text.slice(element.start, element.end);
  if (element.attributes.get('xmlns') === XHTML) return written;
  if (element.namespace !== XHTML || element.written !== element.name) {
    say(reading, 'invalid-narrative', { reason: 'namespace', url: XHTML }, element.start);
    return written;
  }
  return `<div xmlns="${XHTML}"${written.slice('<div'.length)}`;
}

/** Values under the name, ids and extensions under the name with an underscore. */
function readPrimitives(
  reading: Reading,
  holder: Json,
  row: ElementRow,
  elements: readonly XmlElement[],
): void {
  const named = `_${row.name}`;
  if (row.list) {
    const values: unknown[] = [];
    const companions: unknown[] = [];
    elements.forEach((element, index) => {
      reading.path.push(index);
      const { value, companion } = readPrimitive(reading, row, element);
      reading.path.pop();
      values.push(value);
      companions.push(companion);
    });
    if (values.some((one) => one !== undefined)) holder[row.name] = orNull(values);
    if (companions.some((one) => one !== undefined)) holder[named] = orNull(companions);
    return;
  }
  // Each is read, so that what is wrong with one too many is told too; the first counts.
  const read = elements.map((element) => readPrimitive(reading, row, element));
  const [one] = read;
  if (one?.text !== undefined && typeof one.value === 'number' && row.type === 'decimal') {
    setDecimal(holder, row.name, one.text);
  } else if (one?.value !== undefined) {
    holder[row.name] = one.value;
  }
  if (one?.companion !== undefined) holder[named] = one.companion;
}

interface ReadPrimitive {
  readonly text: string | undefined;
  readonly value: unknown;
  readonly companion: Json | undefined;
}

function readPrimitive(reading: Reading, row: ElementRow, element: XmlElement): ReadPrimitive {
  const text = element.attributes.get('value');
  const companion = besideValue(reading, element);
  if (text === undefined && companion === undefined) sayEmpty(reading, element);
  const value = text === undefined ? undefined : primitive(reading, text, row.type, element);
  return { text, value, companion };
}

/** Id and extensions of a primitive, where it has any. */
function besideValue(reading: Reading, element: XmlElement): Json | undefined {
  const { attributes, children, textAt } = element;
  const valueAlone = attributes.size === 1 && attributes.has('value');
  if (valueAlone && children.length === 0 && textAt === -1) return undefined;
  const rows = reading.types('Element') ?? noRows;
  const companion = readMembers(reading, element, rows, {}, 'value');
  return Object.keys(companion).length > 0 ? companion : undefined;
}

/** The number with its text under the symbol of decimals, where the number alone would lose it. */
function setDecimal(holder: Json & DecimalCarrier, name: string, text: string): void {
  const before = holder[DECIMAL_TEXT];
  Object.assign(holder, decimalProperty(name, text));
  if (before !== undefined) holder[DECIMAL_TEXT] = { ...before, ...holder[DECIMAL_TEXT] };
}

function orNull(list: readonly unknown[]): unknown[] {
  return list.map((one) => one ?? null);
}

function primitive(reading: Reading, text: string, type: string, { start }: XmlElement): unknown {
  if (text === '') {
    say(reading, 'empty-value', { reason: 'xml-value' }, start);
    return text;
  }
  const value = primitiveValue(text, type);
  if (value !== undefined) return value;
  say(reading, 'invalid-value', { reason: 'fhir-form', type }, start);
  return text;
}
