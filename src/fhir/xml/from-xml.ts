import {
  hasErrors,
  type Issue,
  issue,
  type Outcome,
  type RecordCode,
  type RecordFacts,
} from '../../issue.ts';
import type { Path } from '../../path.ts';
import { positionsIn, type TextPosition } from '../../text-position.ts';
import { readXml, type XmlElement, type XmlReadOptions } from '../../xml/reader.ts';
import { decimalProperty } from '../decimal.ts';
import { XHTML } from '../systems.ts';
import type { FhirVersion } from '../version.ts';
import {
  type ElementRow,
  isPrimitive,
  isResource,
  jsonForm,
  type TypeRows,
  typesOf,
} from './element-table.ts';
import { FHIR_NAMESPACE } from './namespace.ts';

type Json = Record<string, unknown>;

/** Bounds on the text; the defaults stand beside each. */
export type XmlLimits = Pick<XmlReadOptions, 'characters' | 'depth' | 'elements'>;

/**
 * The resource of a FHIR XML text, in the form that `fromJson` gives of the same resource: decimals
 * keep their digits, a narrative stays as it was written. Elements must be those of the version, in
 * their order. Comments, processing instructions and schema locations are no part of a resource and
 * are not kept. No value where anything is an error.
 * @see https://hl7.org/fhir/R4/xml.html
 */
export function fromXml(text: string, version: FhirVersion, limits?: XmlLimits): Outcome<Json> {
  const { characters, depth, elements } = { ...defaults, ...limits };
  const read = readXml(text, { characters, depth, elements });
  const position = positionsIn(text);
  if ('fault' in read) {
    const { code, facts, at } = read.fault;
    return { issues: [issue(code, [], facts, { source: at === -1 ? undefined : position(at) })] };
  }
  const reading: Reading = { text, version, position, types: typesOf(version), issues: [] };
  const value = readResource(reading, read.root, []);
  if (value === undefined || hasErrors(reading.issues)) return { issues: reading.issues };
  return { value, issues: reading.issues };
}

const defaults = { characters: 100_000_000, depth: 200, elements: 5_000_000 };

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
function grouped(reading: Reading, parent: XmlElement, rows: TypeRows, path: Path): Group[] {
  const groups: Group[] = [];
  for (const element of parent.children) {
    const row = rows.get(element.name);
    const namespace = row?.type === 'xhtml' ? XHTML : FHIR_NAMESPACE;
    if (row === undefined || row.attribute || element.namespace !== namespace) {
      say(reading, 'unknown-property', path, { reason: 'xml-element' }, element.start);
      continue;
    }
    const last = groups.at(-1);
    if (last?.row === row) {
      last.elements.push(element);
    } else if (last !== undefined && last.row.order >= row.order) {
      const at = [...path, row.name];
      say(reading, 'wrong-order', at, { reason: 'xml' }, element.start);
    } else {
      groups.push({ row, elements: [element] });
    }
  }
  return groups;
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

/** The XHTML as it was written. It must name its namespace itself, as its JSON form does. */
function narrative(reading: Reading, element: XmlElement, path: Path): string {
  if (element.attributes.get('xmlns') !== XHTML) {
    say(reading, 'invalid-narrative', path, { reason: 'namespace', url: XHTML }, element.start);
  }
  return reading.text.slice(element.start, element.end);
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
  if (one?.text !== undefined && row.type === 'decimal' && one.value !== undefined) {
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
function setDecimal(holder: Json, name: string, text: string): void {
  Object.assign(holder, decimalProperty(name, text));
}

function orNull(list: readonly unknown[]): unknown[] {
  return list.map((one) => one ?? null);
}

const decimalForm = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?$/;
const integerForm = /^-?(?:0|[1-9]\d*)$/;

function primitive(
  reading: Reading,
  text: string,
  type: string,
  { start }: XmlElement,
  path: Path,
): unknown {
  if (text === '') {
    say(reading, 'empty-value', path, { reason: 'xml-value' }, start);
    return undefined;
  }
  switch (jsonForm(type)) {
    case 'boolean':
      if (text === 'true' || text === 'false') return text === 'true';
      break;
    case 'number': {
      const form = type === 'decimal' ? decimalForm : integerForm;
      if (form.test(text) && Number.isFinite(Number(text))) return Number(text);
      break;
    }
    case 'string':
      return text;
  }
  say(reading, 'invalid-value', path, { reason: 'fhir-form', type }, start);
  return undefined;
}
