/**
 * The JSON of a value of unknown origin, which may be none: a bigint, symbol or function in it, which
 * JSON does not have, stands as its kind. The value has been found to have no circle.
 */
export function jsonText(value: unknown): string {
  const text: string | undefined = JSON.stringify(value, (_, member: unknown) =>
    typeof member === 'bigint' ? 'bigint' : member,
  );
  return text ?? typeof value;
}
