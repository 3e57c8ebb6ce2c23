/**
 * A JavaScript number does not know that it was written 4.0. FHIR does: the precision of a decimal
 * is part of its value (https://hl7.org/fhir/R4/datatypes.html#decimal). Objects that hold such a
 * number carry the text beside it under this symbol, one entry for each property concerned. It is
 * invisible to JSON.stringify and key loops, survives spread, and is ignored once the number differs.
 */
export const DECIMAL_TEXT: unique symbol = Symbol.for('face-neck-fhir.decimal-text');

/** An object that carries the texts of its decimals. */
export type DecimalCarrier = { [DECIMAL_TEXT]?: Record<string, string> };

/** `{ [property]: number }` for a decimal text; carries the text where the number alone would lose it. */
export function decimalProperty<P extends string>(property: P, text: string): Record<P, number> {
  const value = Number(text);
  const holder: Record<string, number> & DecimalCarrier = { [property]: value };
  if (String(value) !== text) holder[DECIMAL_TEXT] = { [property]: text };
  // The computed key is P; TypeScript widens a computed property to string.
  return holder as Record<P, number>;
}

/**
 * Tells a decimal as it was written: `4.0` and not `4`.
 *
 * @param holder The object that has the number.
 * @param property Name of the property.
 * @returns The text that `fromJson`, `fromXml` or an export made the number from, or else its
 *   shortest text without exponent. Undefined where the property is not a finite number.
 * @example
 * const reading = orThrow('read', fromJson('{ "value": 4.0 }')) as object;
 * decimalText(reading, 'value'); // 4.0
 * @see https://hl7.org/fhir/R4/datatypes.html#decimal
 */
export function decimalText(holder: object, property: string): string | undefined {
  // A property of an arbitrary object: unknown until looked at.
  const value: unknown = (holder as Record<string, unknown>)[property];
  if (typeof value !== 'number' || !Number.isFinite(value)) return undefined;
  return carriedText(holder, property, value) ?? plainText(value);
}

/** @see https://www.rfc-editor.org/rfc/rfc8259 section 6 */
const jsonNumber = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?$/;

/** The carried text, as long as it is a JSON number that still means `value`. */
export function carriedText(holder: object, property: string, value: number): string | undefined {
  const carried = (holder as DecimalCarrier)[DECIMAL_TEXT];
  if (carried === undefined || !Object.hasOwn(carried, property)) return undefined;
  const text = carried[property];
  if (text === undefined || !jsonNumber.test(text)) return undefined;
  return Number(text) === value ? text : undefined;
}

/** A number without exponent, as our decimals are written. */
function plainText(value: number): string {
  const [, sign = '', whole = '', fraction = '', power] =
    /^(-?)(\d+)(?:\.(\d+))?e([+-]\d+)$/.exec(String(value)) ?? [];
  if (power === undefined) return String(value);
  const digits = whole + fraction;
  const point = whole.length + Number(power);
  return point > 0 ? sign + digits.padEnd(point, '0') : `${sign}0.${'0'.repeat(-point)}${digits}`;
}
