import { hasErrors } from '../../issue.ts';
import { issue } from '../issue.ts';
import type { RawUnit, Reader, RecordGroup } from '../record/record.ts';
import { readExam } from '../xml/reader.ts';
import { elementSplitter } from '../xml/split.ts';
import { CDA_NAMESPACE, namedByCda } from './names.ts';
import { readDocument } from './records.ts';

/** Reads CDA R2 and C-CDA: each ClinicalDocument with a physical exam section is one exam. */
export const cdaReader: Reader = {
  splitter: () => elementSplitter(['*:ClinicalDocument']),
  read: (units) => units.map(readUnit),
};

function readUnit(unit: RawUnit): RecordGroup {
  const { exam, issues, placeOf } = readExam(unit);
  if (exam === undefined || hasErrors(issues)) return { records: [], at: unit.at, issues };
  if (exam.namespace !== CDA_NAMESPACE) {
    const facts = { reason: 'namespace', url: CDA_NAMESPACE } as const;
    const found = issue('unsupported-message', [], facts, { source: placeOf(exam.start) });
    return { records: [], at: unit.at, issues: [...issues, found] };
  }
  const read = readDocument(namedByCda(exam), placeOf);
  return { records: read.records, at: unit.at, issues: [...issues, ...read.issues] };
}
