import { hasErrors, issue } from '../../issue.ts';
import type { RawUnit, Reader, RecordGroup } from '../record.ts';
import { readExam } from '../xml/reader.ts';
import { elementSplitter } from '../xml/split.ts';
import { withoutPrefixes } from './names.ts';
import { readDocument } from './records.ts';

/** Namespace of CDA. @see CDA R2, section 1.4 */
const CDA_NAMESPACE = 'urn:hl7-org:v3';

/** Reads CDA R2 and C-CDA: each ClinicalDocument with a physical exam section is one exam. */
export const cdaReader: Reader = {
  splitter: () => elementSplitter(['*:ClinicalDocument']),
  read: (units) => units.map(readUnit),
};

function readUnit(unit: RawUnit): RecordGroup {
  const { exam, issues, placeOf } = readExam(unit);
  if (exam === undefined || hasErrors(issues)) return { records: [], at: unit.at, issues };
  const namespaces = [...exam.attributes].filter(([name]) => /^xmlns(?::|$)/.test(name));
  if (!namespaces.some(([, uri]) => uri === CDA_NAMESPACE)) {
    const found = issue('unsupported-message', [], 'the document is not in the CDA namespace', {
      expected: CDA_NAMESPACE,
      source: placeOf(exam.offset),
    });
    return { records: [], at: unit.at, issues: [...issues, found] };
  }
  const read = readDocument(withoutPrefixes(exam), placeOf);
  return { records: read.records, at: unit.at, issues: [...issues, ...read.issues] };
}
