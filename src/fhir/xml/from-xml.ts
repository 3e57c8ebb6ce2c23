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
import {
  type ElementRow,
  isPrimitive,
  isResource,
  type TypeRows,
  typesOf,
} from './element-table.ts';
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
  const reading: Reading = { text, version, position, types, issues: [] };
  const value = readResource(reading, root, []);
  return { ...(value !== undefined && { value }), root, instructions, issues: reading.issues };
}

interface Reading {
  readonly text: string;
  readonly position: (at: number) => TextPosition;
  readonly version: FhirVersion;
  readonly types: (type: string) => TypeRows | undefined;
  readonly issues: Issue[];
}

function say<Code extends RecordCode>(
  { issues, position }: Reading,
  code: Code,
  path: Path,
  facts: RecordFacts<Code>,
  at: number,
): void {
  issues.push(issue(code, path, facts, { source: position(at) }));
}

function readResource(reading: Reading, element: XmlElement, path: Path): Json | undefined {
  const rows = reading.types(element.name);
  if (rows === undefined || !isResource(rows) || element.namespace !== FHIR_NAMESPACE) {
    say(
      reading,
      'unchecked-resource',
      path,
      {
        reason: 'xml',
        version: reading.version,
      },
      element.start,
    );
    return undefined;
  }
  return readMembers(reading, element, rows, path, { resourceType: element.name });
}

function readMembers(
  reading: Reading,
  element: XmlElement,
  rows: TypeRows,
  path: Path,
  holder: Json,
): Json {
  for (const [name, value] of element.attributes) {
    if (isNotation(name, path)) continue;
    if (rows.get(name)?.attribute !== true) {
      say(reading, 'unknown-property', path, { reason: 'xml-attribute' }, element.start);
    } else if (value === '') {
      say(reading, 'empty-value', [...path, name], { reason: 'xml-attribute' }, element.start);
    } else {
      holder[name] = value;
    }
  }
  if (element.textAt !== -1) {
    say(reading, 'invalid-value', path, { reason: 'text-between' }, element.textAt);
  }
  for (const { row, elements } of grouped(reading, element, rows, path)) {
    readProperty(reading, holder, row, elements, path);
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
function grouped(
  reading: Reading,
  parent: XmlElement,
  rows: TypeRows,
  path: Path,
): Iterable<Group> {
  const groups = new Map<ElementRow, Group>();
  let last: ElementRow | undefined;
  for (const element of parent.children) {
    const row = rows.get(element.name);
    // Which namespace a narrative has is told with the narrative.
    const known = row?.type === 'xhtml' || element.namespace === FHIR_NAMESPACE;
    if (row === undefined || row.attribute || !known) {
      say(reading, 'unknown-property', path, { reason: 'xml-element' }, element.start);
      continue;
    }
    if (last !== undefined && last !== row && last.order >= row.order) {
      const at = [...path, row.name];
      say(reading, 'wrong-order', at, { reason: 'xml' }, element.start);
    }
    last = row;
    const group = groups.get(row);
    if (group === undefined) groups.set(row, { row, elements: [element] });
    else group.elements.push(element);
  }
  return groups.values();
}

function readProperty(
  reading: Reading,
  holder: Json,
  row: ElementRow,
  elements: readonly XmlElement[],
  path: Path,
): void {
  const at = [...path, row.name];
  const [first, second] = elements;
  if (first === undefined) return;
  if (second !== undefined && !row.list) {
    say(reading, 'too-many', at, { reason: 'xml' }, second.start);
  }
  if (row.type === 'xhtml') {
    holder[row.name] = narrative(reading, first, at);
  } else if (isPrimitive(row.type)) {
    readPrimitives(reading, holder, row, elements, at);
  } else if (row.list) {
    holder[row.name] = elements.map((one, index) =>
      readComplex(reading, one, row.type, [...at, index]),
    );
  } else {
    holder[row.name] = readComplex(reading, first, row.type, at);
  }
}

function readComplex(reading: Reading, element: XmlElement, type: string, path: Path): unknown {
  if (type !== 'Resource') {
    const rows = reading.types(type) ?? new Map();
    const holder = readMembers(reading, element, rows, path, {});
    if (Object.keys(holder).length === 0) sayEmpty(reading, element, path);
    return holder;
  }
  const [inner, ...others] = element.children;
  if (inner === undefined || others.length > 0 || element.textAt !== -1) {
    say(reading, 'invalid-value', path, { reason: 'one-resource' }, element.start);
    return undefined;
  }
  return readResource(reading, inner, path);
}

function sayEmpty(reading: Reading, element: XmlElement, path: Path): void {
  say(reading, 'empty-value', path, { reason: 'xml-element' }, element.start);
}

/**
 * The XHTML as it was written, with its namespace on the div, as the JSON form has it: in XML an
 * element around it may declare it. A prefix would have to be taken off each tag, and is refused.
 */
function narrative(reading: Reading, element: XmlElement, path: Path): string {
  const written = reading.text.slice(element.start, element.end);
  if (element.attributes.get('xmlns') === XHTML) return written;
  if (element.namespace !== XHTML || element.written !== element.name) {
    say(reading, 'invalid-narrative', path, { reason: 'namespace', url: XHTML }, element.start);
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
  path: Path,
): void {
  const read = elements.map((element, index) => {
    const at = row.list ? [...path, index] : path;
    const text = element.attributes.get('value');
    const companion = besideValue(reading, element, at);
    const has = companion !== undefined;
    if (text === undefined && !has) sayEmpty(reading, element, at);
    return {
      text,
      value: text === undefined ? undefined : primitive(reading, text, row.type, element, at),
      companion,
    };
  });
  const named = `_${row.name}`;
  if (row.list) {
    const [values, companions] = [read.map((one) => one.value), read.map((one) => one.companion)];
    if (values.some((one) => one !== undefined)) holder[row.name] = orNull(values);
    if (companions.some((one) => one !== undefined)) holder[named] = orNull(companions);
    return;
  }
  const [one] = read;
  if (one?.text !== undefined && typeof one.value === 'number' && row.type === 'decimal') {
    setDecimal(holder, row.name, one.text);
  } else if (one?.value !== undefined) {
    holder[row.name] = one.value;
  }
  if (one?.companion !== undefined) holder[named] = one.companion;
}

/** Id and extensions of a primitive, where it has any. */
function besideValue(reading: Reading, element: XmlElement, path: Path): Json | undefined {
  const { attributes, children, textAt } = element;
  const valueAlone = attributes.size === 1 && attributes.has('value');
  if (valueAlone && children.length === 0 && textAt === -1) return undefined;
  const rows = reading.types('Element') ?? new Map();
  const others = new Map([...attributes].filter(([name]) => name !== 'value'));
  const companion = readMembers(reading, { ...element, attributes: others }, rows, path, {});
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

function primitive(
  reading: Reading,
  text: string,
  type: string,
  { start }: XmlElement,
  path: Path,
): unknown {
  if (text === '') {
    say(reading, 'empty-value', path, { reason: 'xml-value' }, start);
    return text;
  }
  const value = primitiveValue(text, type);
  if (value !== undefined) return value;
  say(reading, 'invalid-value', path, { reason: 'fhir-form', type }, start);
  return text;
}
