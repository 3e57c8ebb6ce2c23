import { append } from '../../data/append.ts';
import { hasErrors, type Issue } from '../../issues/issue.ts';
import type { XmlElement } from '../../xml/tree.ts';
import { issue } from '../issue.ts';
import type { CdaSource } from '../mapping/source.ts';
import type { Field, LegacyRecord } from '../record/record.ts';
import { type EntryReading, readEntry } from './entry.ts';
import { type PlaceOf, readFields } from './fields.ts';
import {
  childElement,
  childElements,
  LOINC_OID,
  PHYSICAL_EXAM_TEMPLATE,
  PHYSICAL_FINDINGS,
} from './names.ts';
import { narrativeIndex, narrativeText } from './narrative.ts';
import { unstructuredBody } from './unstructured.ts';

export interface DocumentRecords {
  readonly records: readonly LegacyRecord[];
  readonly issues: readonly Issue[];
}

/**
 * A CDA document as records: `ClinicalDocument` for its header; for each section of the exam and its
 * subsections one `section` with the narrative as the field `section/text`, and one record for
 * each entry, named by its element. Names of fields are paths that begin with that element:
 * `ClinicalDocument/id/@extension`, `observation/code/@code`. Other sections are set aside, or their
 * narrative is kept, as the source says.
 */
export function readDocument(
  document: XmlElement,
  placeOf: PlaceOf,
  source: CdaSource = { syntax: 'cda' },
): DocumentRecords {
  const issues: Issue[] = [];
  if (childElements(document, 'recordTarget').length !== 1) {
    issues.push(
      issue(
        'several-patients',
        [],
        { reason: 'record-target' },
        {
          source: placeOf(document.start),
        },
      ),
    );
  }
  const header: LegacyRecord = {
    kind: 'ClinicalDocument',
    fields: readFields(document, placeOf, new Set(['component']), 'ClinicalDocument'),
    at: placeOf(document.start),
    administrative: true,
  };
  const records = [header];
  const examCodes = new Set([PHYSICAL_FINDINGS, ...(source.sections ?? [])]);
  const keepsOthers = source.otherSections === 'narrative';
  for (const section of bodiesOf(document, 'structuredBody').flatMap(sectionsOf)) {
    readSection(section, { placeOf, issues, records, inside: false, examCodes, keepsOthers });
  }
  for (const body of bodiesOf(document, 'nonXMLBody')) {
    const read = unstructuredBody(body, placeOf, keepsOthers);
    records.push(read.record);
    append(issues, read.issues);
  }
  if (hasErrors(issues)) return { records, issues };
  if (records.every(({ kind, aside }) => kind === header.kind || aside !== undefined)) {
    const facts = { reason: 'no-exam-section', code: PHYSICAL_EXAM_TEMPLATE } as const;
    const source = placeOf(document.start);
    issues.push(issue('unsupported-message', [], facts, { source }));
  }
  return { records, issues };
}

function bodiesOf(document: XmlElement, name: string): readonly XmlElement[] {
  return childElements(document, 'component').flatMap((component) =>
    childElements(component, name),
  );
}

function sectionsOf(parent: XmlElement): readonly XmlElement[] {
  return childElements(parent, 'component').flatMap((component) =>
    childElements(component, 'section'),
  );
}

interface SectionReading {
  readonly placeOf: PlaceOf;
  readonly issues: Issue[];
  readonly records: LegacyRecord[];
  /** Below a section of the exam. */
  readonly inside: boolean;
  readonly examCodes: ReadonlySet<string>;
  readonly keepsOthers: boolean;
  /** A section around it is about someone else. */
  readonly ofOther?: boolean;
}

const ownRecords: ReadonlySet<string> = new Set(['component', 'entry', 'text']);

function readSection(section: XmlElement, reading: SectionReading): void {
  const { placeOf, records } = reading;
  const inside = reading.inside || isPartOfExam(section, reading.examCodes);
  const ofOther = reading.ofOther || childElement(section, 'subject') !== undefined;
  const at = placeOf(section.start);
  const text = childElement(section, 'text');
  const fields: Field[] = readFields(section, placeOf, ownRecords, 'section');
  if (text !== undefined) {
    fields.push({ name: 'section/text', text: narrativeText(text), at: placeOf(text.start) });
  }
  if (inside) {
    records.push({ kind: 'section', fields, at });
    const entries: EntryReading = {
      ...reading,
      ofOther,
      narrative: text === undefined ? () => undefined : narrativeIndex(text),
    };
    for (const entry of childElements(section, 'entry')) {
      for (const act of entry.children) readEntry(act, undefined, entries);
    }
  } else if (reading.keepsOthers) {
    records.push({ kind: 'other-section', fields, at });
    const rest = entryFields(section, placeOf);
    if (rest.length > 0) records.push(setAside(rest, at));
  } else {
    records.push(setAside([...fields, ...entryFields(section, placeOf)], at));
  }
  for (const below of sectionsOf(section)) {
    readSection(below, { ...reading, inside, ofOther });
  }
}

function isPartOfExam(section: XmlElement, codes: ReadonlySet<string>): boolean {
  const templates = childElements(section, 'templateId');
  if (templates.some((part) => part.attributes.get('root') === PHYSICAL_EXAM_TEMPLATE)) return true;
  const code = childElement(section, 'code')?.attributes;
  return code?.get('codeSystem') === LOINC_OID && codes.has(code.get('code')?.trim() ?? '');
}

function entryFields(section: XmlElement, placeOf: PlaceOf): Field[] {
  return childElements(section, 'entry').flatMap((entry) =>
    readFields(entry, placeOf, new Set(), 'section/entry'),
  );
}

/** What is not part of the exam, whatever a mapping says of its fields. */
function setAside(fields: readonly Field[], at: LegacyRecord['at']): LegacyRecord {
  const problem = issue(
    'other-section',
    [],
    { reason: 'set-aside', code: PHYSICAL_EXAM_TEMPLATE, system: PHYSICAL_FINDINGS },
    { severity: 'information', source: at },
  );
  return { kind: 'other-section', fields, at, aside: [problem] };
}
