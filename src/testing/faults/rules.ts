type RuleText = readonly [key: string, url: string];

const r4 = 'https://hl7.org/fhir/R4';
const r5 = 'https://hl7.org/fhir/R5';

/** A rule of the JSON form: no nulls, no empty lists, each value of its own JSON type. */
export const jsonForm: RuleText = ['json', `${r4}/json.html`];

/** A text must be JSON before it can be FHIR. */
export const jsonText: RuleText = ['RFC 8259', 'https://www.rfc-editor.org/rfc/rfc8259'];

/** An element that must be there, or must not be there twice. */
export function cardinality(path: string): RuleText {
  const [type = ''] = path.split('.');
  return [path, `${r4}/${page(type)}-definitions.html#${path}`];
}

/** The form of a primitive type. */
export function primitive(type: string): RuleText {
  return [type, `${r4}/datatypes.html#${type}`];
}

/** A published invariant of R4, or of R5 where R4 has no such rule. */
export function invariant(key: string, type: string, version: 'R4' | 'R5' = 'R4'): RuleText {
  return [key, `${version === 'R4' ? r4 : r5}/${page(type)}.html`];
}

/** A required binding of an element. */
export function binding(path: string, valueSet: string): RuleText {
  return [path, `${r4}/valueset-${valueSet}.html`];
}

/** A code system that is complete, so that a code outside it is none. */
export function codeSystem(name: string): RuleText {
  return [name, `https://terminology.hl7.org/CodeSystem-${name}.html`];
}

/** A page of the specification, with the anchor of the rule. */
export function section(key: string, pageAndAnchor: string): RuleText {
  return [key, `${r4}/${pageAndAnchor}`];
}

const dataTypes = /^(Quantity|Coding|Identifier|Period|Range|Ratio|Attachment|ContactPoint|Money)$/;

function page(type: string): string {
  if (/^(Reference)$/.test(type)) return 'references';
  if (/^(Extension)$/.test(type)) return 'extensibility';
  return dataTypes.test(type) ? 'datatypes' : type.toLowerCase();
}
