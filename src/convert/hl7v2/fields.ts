import type { Issue, SourcePosition } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { Field, Scope } from '../record/record.ts';
import type { Delimiters } from './delimiters.ts';
import { type BytesToText, unescapeText } from './escape.ts';
import type { Segment } from './segments.ts';

/** What reading the fields of one message needs, and where it reports. */
export interface FieldReading {
  readonly delimiters: Delimiters;
  readonly toText: BytesToText;
  readonly issues: Issue[];
}

/** A position inside a v2 message; {@link SourcePosition} without the line form. */
export type SegmentPosition = Extract<SourcePosition, { readonly segment: string }>;

/**
 * How a field is written: `parts` has repetitions and components; `text` is one string, so that an
 * unescaped `^`, `&` or `~` (as in "~5 mm") stays in it; the repetitions of `lines` are its lines.
 */
export type FieldForm = 'parts' | 'text' | 'lines';

/**
 * The parts of one field that hold anything. Component 1 has the name of the field (`OBX-3`), the
 * others their number behind it (`OBX-3.2`), subcomponents after the first a further one
 * (`PID-5.1.2`): a value without separators is its own first component (HL7 v2 chapter 2). A
 * repetition has the same name again.
 */
export function readField(
  segment: Segment,
  number: number,
  form: FieldForm,
  reading: FieldReading,
): Field[] {
  const raw = segment.fields[number] ?? '';
  if (raw === '') return [];
  const at: SegmentPosition = {
    segment: segment.name,
    segmentIndex: segment.index,
    field: number,
  };
  const name = `${segment.name}-${number}`;
  reportTruncation(raw, at, reading);
  const around: Scope = { name, parent: segment };
  if (form === 'text' || raw === '""') {
    return [{ ...valueField(name, raw, at, reading), scope: around }];
  }
  const repetitions = raw.split(reading.delimiters.repetition);
  if (form === 'lines') {
    const lines = repetitions.map((line) => unescaped(line, at, reading));
    return [{ name, text: lines.join('\n'), at, scope: around }];
  }
  return repetitions.flatMap((text, index) => {
    const place = repetitions.length === 1 ? at : { ...at, repetition: index + 1 };
    const scope: Scope = { name: 'repetition', parent: around };
    return readComponents(name, text, place, reading).map((field) => ({
      ...field,
      scope,
      ...(isWording(field.name, segment) && { wording: true }),
    }));
  });
}

/** Fields of an observation that hold codes, with the sender's words in components 2, 5 and 9 (CWE). */
const codedFields: ReadonlySet<string> = new Set(['OBX-3', 'OBX-20']);

function isWording(name: string, segment: Segment): boolean {
  const [field = '', part] = name.split('.', 2);
  if (part !== '2' && part !== '5' && part !== '9') return false;
  if (codedFields.has(field)) return true;
  return field === 'OBX-5' && /^(?:CE|CF|CNE|CWE)$/.test(segment.fields[2] ?? '');
}

function readComponents(
  name: string,
  text: string,
  at: SegmentPosition,
  reading: FieldReading,
): Field[] {
  const { component, subcomponent } = reading.delimiters;
  return text.split(component).flatMap((part, index) => {
    const place = { ...at, component: index + 1 };
    const pieces = subcomponent === undefined ? [part] : part.split(subcomponent);
    return pieces.flatMap((piece, sub) => {
      if (piece === '') return [];
      return [valueField(partName(name, index + 1, sub + 1), piece, place, reading)];
    });
  });
}

function partName(name: string, component: number, subcomponent: number): string {
  if (subcomponent > 1) return `${name}.${component}.${subcomponent}`;
  return component > 1 ? `${name}.${component}` : name;
}

/** `""` says that the value is to be deleted (HL7 v2 chapter 2); it is neither text nor a blank. */
function valueField(name: string, raw: string, at: SegmentPosition, reading: FieldReading): Field {
  return raw === '""'
    ? { name, text: '', at, explicitNull: '""' }
    : { name, text: unescaped(raw, at, reading), at };
}

/** Text of a raw piece, with an issue for each kind of sequence that could not be carried over. */
export function unescaped(raw: string, at: SegmentPosition, reading: FieldReading): string {
  const { text, kept, layout } = unescapeText(raw, reading.delimiters, reading.toText);
  if (kept.length > 0) {
    reading.issues.push(
      issue(
        'unknown-escape',
        [],
        { reason: 'hl7v2' },
        {
          severity: 'warning',
          source: at,
        },
      ),
    );
  }
  if (layout.length > 0) {
    reading.issues.push(
      issue(
        'layout-dropped',
        [],
        { reason: 'layout' },
        {
          severity: 'information',
          source: at,
        },
      ),
    );
  }
  return text;
}

function reportTruncation(raw: string, at: SegmentPosition, reading: FieldReading): void {
  const mark = reading.delimiters.truncation;
  if (mark === undefined || !raw.endsWith(mark) || at.segment === 'MSH') return;
  reading.issues.push(
    issue(
      'truncated-value',
      [],
      { reason: 'cut' },
      {
        severity: 'warning',
        source: at,
      },
    ),
  );
}
