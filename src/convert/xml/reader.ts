import { hasErrors, type Issue, issue as textIssue } from '../../issues/issue.ts';
import { readXml, type XmlElement } from '../../xml/reader.ts';
import { issue } from '../issue.ts';
import type { XmlSource } from '../mapping/source.ts';
import type { RawUnit, Reader, RecordGroup } from '../record/record.ts';
import { xmlLimits } from './limits.ts';
import { type LinePlace, placesIn } from './place.ts';
import { readRecords } from './records.ts';
import { declarationsIn, elementSplitter } from './split.ts';

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
  const read = readXml(unit.raw, {
    characters: Number.POSITIVE_INFINITY, // the splitter has bounded it
    depth: xmlLimits.depth,
    elements: xmlLimits.elements,
    content: true,
    lenient: true,
    around: declarationsIn(unit.header),
  });
  if ('fault' in read) {
    const { code, facts, at } = read.fault;
    issues.push(textIssue(code, [], facts, { source: placeOf(Math.max(at, 0)) }));
    return { issues, placeOf };
  }
  if (read.unknownReferences > 0) {
    issues.push(
      issue(
        'unknown-escape',
        [],
        { reason: 'entity' },
        {
          severity: 'warning',
          source: placeOf(0),
        },
      ),
    );
  }
  return { exam: read.root, issues, placeOf };
}
