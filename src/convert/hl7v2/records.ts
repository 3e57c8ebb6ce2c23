import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import { type ConversionCode, type ConversionFacts, issue } from '../issue.ts';
import type { Field, LegacyRecord } from '../record/record.ts';
import { type FieldForm, type FieldReading, readField, unescaped } from './fields.ts';
import type { Message, Segment } from './segments.ts';
import { unverifiedResult } from './tables.ts';
import { valueForm } from './value-types.ts';

/** Segments that say more about the segment above: a comment, or who took part (v2.7). */
const attached: ReadonlySet<string> = new Set(['NTE', 'PRT']);

/**
 * One record for each segment, with the comments below it as further fields of it: an NTE belongs
 * to the OBX, OBR or PID that it follows (HL7 v2 chapter 7, ORU structure).
 */
export function readRecords(message: Message, reading: FieldReading): LegacyRecord[] {
  const records: LegacyRecord[] = [];
  let reportStatus = '';
  for (const segment of message.segments) {
    if (segment.name === 'OBR') reportStatus = segment.fields[25] ?? '';
    const record = readRecord(segment, reading, reportStatus);
    const above = records.at(-1);
    if (attached.has(segment.name) && above !== undefined && above.kind !== 'MSH') {
      records[records.length - 1] = joined(above, record);
    } else records.push(record);
  }
  return records;
}

/** The comments of one segment are one text, a line for each NTE. */
function joined(owner: LegacyRecord, comment: LegacyRecord): LegacyRecord {
  const fields = [...owner.fields];
  for (const field of comment.fields) {
    const at = field.name === 'NTE-3' ? fields.findIndex((seen) => seen.name === 'NTE-3') : -1;
    const seen = fields[at];
    if (seen === undefined) fields.push(field);
    else fields[at] = { ...seen, text: `${seen.text}\n${field.text}` };
  }
  const malformed = [...(owner.malformed ?? []), ...(comment.malformed ?? [])];
  return { ...owner, fields, ...(malformed.length > 0 && { malformed }) };
}

function readRecord(segment: Segment, reading: FieldReading, reportStatus: string): LegacyRecord {
  const at = { segment: segment.name, segmentIndex: segment.index };
  if (!/^[A-Z][A-Z0-9]{2}$/.test(segment.name)) {
    const text = segment.fields.join(reading.delimiters.field);
    const problem = malformed('malformed-record', segment, { reason: 'no-segment' });
    const position = { ...at, segment: 'line' };
    return {
      kind: 'line',
      at: position,
      malformed: [problem],
      fields: [{ name: 'line', text, at }],
    };
  }
  if (segment.overlong !== undefined) {
    const problem = malformed('malformed-record', segment, {
      reason: 'many-fields',
      maximum: 1000,
    });
    const fields = [{ name: segment.name, text: segment.overlong, at }];
    return { kind: segment.name, at, malformed: [problem], fields };
  }
  const problems =
    segment.name === 'OBX' ? observationProblems(segment, reading, reportStatus) : [];
  const fields: Field[] = [];
  // Position 0 is the name; MSH-1 and MSH-2 are the delimiters.
  for (let number = segment.name === 'MSH' ? 3 : 1; number < segment.fields.length; number++) {
    append(fields, readOne(segment, number, problems.length > 0, reading));
  }
  return {
    kind: segment.name,
    fields,
    at,
    ...(administrative.has(segment.name) && { administrative: true }),
    ...(problems.length > 0 && { malformed: problems }),
  };
}

/**
 * Segments about the message, the patient, the visit, the order or the document, and none of what was
 * found. HL7's v2-to-FHIR segment maps take them to MessageHeader, Patient, RelatedPerson, Encounter,
 * Coverage, ServiceRequest and DocumentReference.
 */
const administrative: ReadonlySet<string> = new Set(
  'MSH SFT UAC EVN PID PD1 NK1 PV1 PV2 ROL GT1 IN1 IN2 IN3 MRG ORC OBR TXA CON CTD TQ1 FHS BHS BTS FTS DSC'.split(
    ' ',
  ),
);

/** Fields that are always text, whatever the segment's version. */
const textFields: ReadonlyMap<string, FieldForm> = new Map([['NTE-3', 'lines']]);

function readOne(
  segment: Segment,
  number: number,
  unreadable: boolean,
  reading: FieldReading,
): Field[] {
  const name = `${segment.name}-${number}`;
  if (name !== 'OBX-5') return readField(segment, number, textFields.get(name) ?? 'parts', reading);
  const form = unreadable ? 'text' : valueForm(valueType(segment));
  if (form === 'number') return readStructuredNumber(segment, reading);
  return readField(segment, number, form === 'lines' || form === 'parts' ? form : 'text', reading);
}

/** SN: comparator, number, separator and second number are one text: `>5`, `1-2`, `1:128`, `2+`. */
function readStructuredNumber(segment: Segment, reading: FieldReading): Field[] {
  const raw = segment.fields[5] ?? '';
  if (raw === '' || raw === '""') return readField(segment, 5, 'text', reading);
  const at = { segment: segment.name, segmentIndex: segment.index, field: 5 };
  const { component, repetition } = reading.delimiters;
  return raw.split(repetition).map((text, index) => {
    const [comparator = '', ...others] = text.split(component);
    // No comparator means `=` (HL7 v2 chapter 2A, SN.1).
    const parts = [comparator === '=' ? '' : comparator, ...others];
    const place = index === 0 ? at : { ...at, repetition: index + 1 };
    return { name: 'OBX-5', text: unescaped(parts.join(''), place, reading), at: place };
  });
}

function valueType(segment: Segment): string {
  return segment.fields[2] ?? '';
}

/** Why the value of an OBX cannot be told. Its fields are then kept as text and nothing is coded. */
function observationProblems(
  segment: Segment,
  reading: FieldReading,
  reportStatus: string,
): Issue[] {
  const value = segment.fields[5] ?? '';
  const form = valueForm(valueType(segment));
  const problems: Issue[] = [];
  if (segment.fields.length < 6) {
    problems.push(malformed('malformed-record', segment, { reason: 'obx-ends' }));
  } else if (value !== '' && form === undefined) {
    problems.push(malformed('unknown-value-type', segment, { reason: 'obx-2' }));
  } else if (form === 'file' && value !== '') {
    problems.push(malformed('unsupported-value', segment, { reason: 'file' }));
  } else if ((segment.fields[11] ?? '') === '') {
    problems.push(malformed('missing-field', segment, { reason: 'obx-11' }));
  } else if (unverifiedResult.has(segment.fields[11] ?? '') && /^[FC]$/.test(reportStatus)) {
    problems.push(malformed('conflicting-fields', segment, { reason: 'obr-final' }));
  } else if (form !== 'text' && form !== 'lines' && hasEmptyRepetition(value, reading)) {
    problems.push(malformed('malformed-record', segment, { reason: 'empty-repetition' }));
  }
  return problems;
}

/** `~5` is an empty value and 5, or "about 5" by someone who did not escape. */
function hasEmptyRepetition(value: string, reading: FieldReading): boolean {
  return value !== '' && value.split(reading.delimiters.repetition).includes('');
}

function malformed<Code extends ConversionCode>(
  code: Code,
  segment: Segment,
  facts: ConversionFacts<Code>,
): Issue {
  return issue(code, [], facts, {
    severity: 'warning',
    source: { segment: segment.name, segmentIndex: segment.index },
  });
}
