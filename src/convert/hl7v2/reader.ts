import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Hl7v2Source } from '../mapping/source.ts';
import type { RawUnit, Reader, RecordGroup } from '../record/record.ts';
import { bytesToText, declaredEncoding } from './charset.ts';
import { headerIssues } from './header.ts';
import { cutOrders } from './orders.ts';
import { readRecords } from './records.ts';
import { readSegments } from './segments.ts';
import { messageSplitter } from './split.ts';

/** Reads HL7 v2.3 to 2.8: each message (ORU^R01 or MDM^T02) is one exam. */
export const hl7v2Reader: Reader = {
  splitter: () => messageSplitter(),
  read: (units) => units.map(readUnit),
};

/** The same with an exam in each order of a message. */
const orderReader: Reader = {
  splitter: (decode = (text) => text) => {
    const messages = messageSplitter();
    const cut = (units: Iterable<RawUnit>): RawUnit[] =>
      [...units].flatMap((unit) => cutOrders(unit, decode));
    return { push: (text) => cut(messages.push(text)), end: () => cut(messages.end()) };
  },
  read: (units) => units.map(readUnit),
};

export function hl7v2ReaderOf(source: Hl7v2Source): Reader {
  return source.orders === 'exams' ? orderReader : hl7v2Reader;
}

function readUnit(unit: RawUnit): RecordGroup {
  const issues: Issue[] = [...(unit.issues ?? [])];
  const { message, issues: found } = readSegments([...(unit.header ?? []), unit.raw].join('\r'));
  append(issues, found);
  if (message === undefined) return { records: [], at: unit.at, issues };
  // A blank MSH-18 means ASCII (HL7 v2 chapter 2, MSH-18).
  const encoding = declaredEncoding(message.headerLine) ?? 'us-ascii';
  append(issues, headerIssues(message));
  const records = readRecords(message, {
    delimiters: message.delimiters,
    toText: (bytes) => bytesToText(bytes, encoding),
    issues,
  });
  return { records, at: unit.at, issues };
}
