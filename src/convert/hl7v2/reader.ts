import type { Issue } from '../../issue.ts';
import type { RawUnit, Reader, RecordGroup } from '../record.ts';
import { bytesToText, declaredEncoding } from './charset.ts';
import { headerIssues } from './header.ts';
import { readRecords } from './records.ts';
import { readSegments } from './segments.ts';
import { messageSplitter } from './split.ts';

/** Reads HL7 v2.3 to 2.8: each message (ORU^R01 or MDM^T02) is one exam. */
export const hl7v2Reader: Reader = {
  splitter: () => messageSplitter(),
  read: (units) => units.map(readUnit),
};

function readUnit(unit: RawUnit): RecordGroup {
  const issues: Issue[] = [...(unit.issues ?? [])];
  const { message, issues: found } = readSegments(unit.raw);
  issues.push(...found);
  if (message === undefined) return { records: [], at: unit.at, issues };
  // A blank MSH-18 means ASCII (HL7 v2 chapter 2, MSH-18).
  const encoding = declaredEncoding(message.headerLine) ?? 'us-ascii';
  issues.push(...headerIssues(message));
  const records = readRecords(message, {
    delimiters: message.delimiters,
    toText: (bytes) => bytesToText(bytes, encoding),
    issues,
  });
  return { records, at: unit.at, issues };
}
