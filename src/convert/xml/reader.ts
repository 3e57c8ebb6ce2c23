import { hasErrors, type Issue, issue } from '../../issue.ts';
import type { RawUnit, Reader, RecordGroup } from '../record.ts';
import type { XmlSource } from '../source.ts';
import { type LinePlace, placesIn } from './place.ts';
import { readRecords } from './records.ts';
import { elementSplitter } from './split.ts';
import { readTree, type XmlElement } from './tree.ts';

/**
 * Reads XML in which each element at `source.exam` is one exam. The path and the paths of the items
 * are names as written, with their prefix, from the root and from the exam, joined by `/`.
 */
export function xmlReader(source: XmlSource): Reader {
  const path = steps(source.exam);
  const items = new Set((source.items ?? []).map((item) => steps(item).join('/')));
  return {
    splitter: () => elementSplitter(path),
    read: (units) =>
      units.map((unit) => {
        const read = readExam(unit);
        if (read.exam === undefined) return { records: [], at: unit.at, issues: read.issues };
        const records = readRecords(read.exam, { items, placeOf: read.placeOf });
        return { records, at: unit.at, issues: read.issues };
      }),
  };
}

export function steps(path: string): string[] {
  return path.split('/').filter((step) => step !== '');
}

interface ReadExam {
  readonly exam?: XmlElement;
  readonly issues: RecordGroup['issues'];
  readonly placeOf: (offset: number) => LinePlace;
}

/** The exam element of a unit, or the issue that says why there is none. */
export function readExam(unit: RawUnit): ReadExam {
  const placeOf = placesIn(unit.raw, unit.at);
  const issues: Issue[] = [...(unit.issues ?? [])];
  if (hasErrors(issues)) return { issues, placeOf };
  const tree = readTree(unit.raw);
  if (!('root' in tree)) {
    // Line and column of the parser count in the unit; the unit's own place is told instead.
    issues.push(
      issue('not-well-formed', [], tree.message, {
        expected: 'well-formed XML',
        source: placeOf(0),
      }),
    );
    return { issues, placeOf };
  }
  if (tree.unknownReferences > 0) {
    issues.push(
      issue('unknown-escape', [], 'references to entities that are not predefined were left', {
        severity: 'warning',
        expected: 'amp, lt, gt, quot, apos or a character number',
        source: placeOf(0),
      }),
    );
  }
  return { exam: tree.root, issues, placeOf };
}
