/** @see https://hl7.org/fhir/R4/datatypes.html#oid and https://hl7.org/fhir/R4/datatypes.html#uuid */
const urnForms: readonly (readonly [scheme: string, form: RegExp])[] = [
  ['urn:oid:', /^urn:oid:[0-2](?:\.(?:0|[1-9][0-9]*))+$/],
  ['urn:uuid:', /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/],
];

/** Whether a URN has the form that its scheme asks for; whatever else a URI is, it has it. */
export function isWellFormed(uri: string): boolean {
  return urnForms.every(([scheme, form]) => !uri.startsWith(scheme) || form.test(uri));
}
