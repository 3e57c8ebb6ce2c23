import { hasErrors } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { CdaSource } from '../mapping/source.ts';
import type { RawUnit, Reader, RecordGroup } from '../record/record.ts';
import { readExam } from '../xml/reader.ts';
import { elementSplitter } from '../xml/split.ts';
import { CDA_NAMESPACE, namedByCda } from './names.ts';
import { readDocument } from './records.ts';

/** Reads CDA R2 and C-CDA: each ClinicalDocument with a physical exam section is one exam. */
export const cdaReader: Reader = cdaReaderOf({ syntax: 'cda' });

/** The same with the sections that a mapping counts as part of the exam. */
export function cdaReaderOf(source: CdaSource): Reader {
  return {
    splitter: () => elementSplitter(['*:ClinicalDocument']),
    read: (units) => units.map((unit) => readUnit(unit, source)),
  };
}

function readUnit(unit: RawUnit, source: CdaSource): RecordGroup {
  const { exam, issues: found, placeOf } = readExam(unit);
  const issues = [...found];
  if (exam === undefined || hasErrors(issues)) return { records: [], at: unit.at, issues };
  // A document that declares no namespace at all is taken for CDA by the name of its root, and told.
  if (exam.namespace === '') {
    const facts = { reason: 'no-namespace', url: CDA_NAMESPACE } as const;
    const details = { severity: 'warning', source: placeOf(exam.start) } as const;
    issues.push(issue('unsupported-message', [], facts, details));
  } else if (exam.namespace !== CDA_NAMESPACE) {
    const facts = { reason: 'namespace', url: CDA_NAMESPACE } as const;
    const found = issue('unsupported-message', [], facts, { source: placeOf(exam.start) });
    return { records: [], at: unit.at, issues: [...issues, found] };
  }
  const read = readDocument(namedByCda(exam), placeOf, source);
  return { records: read.records, at: unit.at, issues: [...issues, ...read.issues] };
}
