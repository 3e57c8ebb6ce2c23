import type { Extension } from 'fhir/r4.js';

const sdc = 'http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire';

/** A part of a resource as plain data, with what is to be filled in as extensions. */
export type Template = { [name: string]: unknown };

/**
 * The part is there where the expression gives something.
 * @see https://hl7.org/fhir/uv/sdc/StructureDefinition-sdc-questionnaire-templateExtractContext.html
 */
export function onlyWhere(expression: string): Template {
  return { extension: [{ url: `${sdc}-templateExtractContext`, valueString: expression }] };
}

/**
 * The part is what the expression gives. Of a primitive it stands beside its name: `_text`.
 * @see https://hl7.org/fhir/uv/sdc/StructureDefinition-sdc-questionnaire-templateExtractValue.html
 */
export function filledBy(expression: string): Template {
  return { extension: [{ url: `${sdc}-templateExtractValue`, valueString: expression }] };
}

/**
 * The Coding at a path, member by member: an element of a list that is one value as a whole moves the
 * places of its neighbours in some engines.
 */
export function codingAt(path: string): Template {
  const at = path === '' ? '' : `${path}.`;
  return {
    _system: filledBy(`${at}system`),
    _code: filledBy(`${at}code`),
    _display: filledBy(`${at}display`),
  };
}

/** @see https://hl7.org/fhir/uv/sdc/StructureDefinition-sdc-questionnaire-templateExtract.html */
export function extracting(template: string): Extension {
  return {
    url: `${sdc}-templateExtract`,
    extension: [{ url: 'template', valueReference: { reference: `#${template}` } }],
  };
}

/** @see https://hl7.org/fhirpath/#string */
export function quoted(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
}

/** A value as an expression. */
export function literal(value: unknown): string {
  return typeof value === 'string' ? quoted(value) : String(value);
}

/** Those of a list of codings that have one of these codes; without a path of the coding at hand. */
export function having(path: string, codes: readonly string[]): string {
  return `${path === '' ? '' : `${path}.`}where(${among(codes)})`;
}

/** Whether there is a coding with one of these codes. */
export function isAmong(path: string, codes: readonly string[]): string {
  return path === '' ? among(codes) : `${having(path, codes)}.exists()`;
}

function among(codes: readonly string[]): string {
  return codes.map((code) => `code=${quoted(code)}`).join(' or ');
}

/** Items of a response below another, by linkId. */
export function below(path: string, linkId: string): string {
  const items = path === '' ? 'item' : `${path}.item`;
  return `${items}.where(linkId=${quoted(linkId)})`;
}

/**
 * An element of a list that is there on a condition, as {@link onlyWhere}. Within it the part that is
 * cheapest to say so is given as values that never change: an element without any value is passed over
 * by engines that fill in values alone.
 */
export function elementWhere(expression: string, element: object): Template {
  const members = Object.entries(element);
  const primitive = members.find(([, member]) => typeof member !== 'object');
  const [name, member] = primitive ?? members.find(([, one]) => one !== null) ?? [];
  if (name === undefined) return onlyWhere(expression);
  return { ...onlyWhere(expression), ...without(element, name), ...constant(name, member) };
}

function without(element: object, name: string): Template {
  return Object.fromEntries(Object.entries(element).filter(([key]) => key !== name));
}

function constant(name: string, member: unknown): Template {
  if (typeof member !== 'object' || member === null) {
    return { [name]: member, [`_${name}`]: filledBy(literal(member)) };
  }
  const inner = (one: object): Template =>
    Object.fromEntries(
      Object.entries(one).flatMap(([key, value]) => Object.entries(constant(key, value))),
    );
  return { [name]: Array.isArray(member) ? member.map(inner) : inner(member) };
}
