import type { SourcePosition } from '../../issues/issue.ts';
import type { Field, LegacyRecord } from '../record/record.ts';

/**
 * Half of a surrogate pair, a noncharacter, or a control character that a FHIR string may not hold.
 * @see https://hl7.org/fhir/R4/datatypes.html#string
 */
const forbidden = /[\p{Cs}\uFFFE\uFFFF]|(?![\t\n\r\u007F-\u009F])\p{Cc}/gu;

/** The text with forbidden characters written out, such as `\u0007`, so that none is lost. */
export function printable(text: string): string {
  // Most texts are plain, and this sees it at once.
  if (/^[\t\n\r -~]*$/.test(text)) return text;
  return text.replace(
    forbidden,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** Where something stood, in words: `row 12, column 3`. */
export function positionText(at: SourcePosition): string {
  if ('line' in at) {
    if (at.sheet !== undefined) return `sheet ${at.sheet}, ${at.cell ?? `row ${at.line}`}`;
    return at.column === undefined ? `line ${at.line}` : `line ${at.line}, column ${at.column}`;
  }
  const field = at.field === undefined ? '' : `-${at.field}`;
  const component = at.component === undefined ? '' : `.${at.component}`;
  return `segment ${at.segmentIndex} ${at.segment}${field}${component}`;
}

/** A field as text: its name, where it stood, and its content, verbatim. */
export function fieldText(field: Field): string {
  return printable(`${field.name} [${positionText(field.at)}]: ${contentOf(field)}`);
}

/** The fields of a record as one text, in their order, those without content left out. */
export function recordText(record: LegacyRecord, fields: readonly Field[]): string {
  const parts = fields.map((field) => `${field.name}: ${contentOf(field)}`);
  return printable(`[${positionText(record.at)}] ${parts.join('; ')}`);
}

export function contentOf(field: Field): string {
  return field.text.trim() === '' ? (field.explicitNull ?? '') : field.text;
}

export function isBlank(field: Field): boolean {
  return field.text.trim() === '' && (field.explicitNull ?? '').trim() === '';
}

/** A text as part of a key: other characters become hyphens. */
export function keyPart(text: string): string {
  return text.replace(/[^A-Za-z0-9._~:/-]+/g, '-').slice(0, 120);
}
