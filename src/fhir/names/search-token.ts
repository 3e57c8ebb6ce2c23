interface Token {
  readonly system?: string | undefined;
  readonly value?: string | undefined;
}

/**
 * An identifier as the value of a search parameter in a URL. What separates parts of such a value is
 * escaped, so that no identifier can ask for another one.
 * @see https://hl7.org/fhir/R4/search.html#escaping
 */
export function searchToken({ system = '', value = '' }: Token): string {
  return encodeURIComponent(`${escaped(system)}|${escaped(value)}`);
}

function escaped(text: string): string {
  return text.replace(/[\\,$|]/g, '\\$&');
}

/** The identifier of a reference such as `Patient?identifier=system|value`; undefined for any other. */
export function tokenIn(reference: string): { system: string; value: string } | undefined {
  const [, token] = /^[A-Za-z]+\?identifier=([^&]+)$/.exec(reference) ?? [];
  if (token === undefined) return undefined;
  const parts = /^((?:[^\\|]|\\.)*)\|((?:[^\\|]|\\.)*)$/s.exec(decoded(token));
  if (parts === null) return undefined;
  const [, system = '', value = ''] = parts.map((part) => part.replace(/\\(.)/gs, '$1'));
  return { system, value };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return ''; // not encoded as a URL
  }
}
