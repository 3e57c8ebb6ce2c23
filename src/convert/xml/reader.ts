import { hasErrors, type Issue, issue as textIssue } from '../../issues/issue.ts';
import { readXml } from '../../xml/reader.ts';
import type { XmlElement } from '../../xml/tree.ts';
import { issue } from '../issue.ts';
import type { XmlSource } from '../mapping/source.ts';
import type { RawUnit, Reader, RecordGroup } from '../record/record.ts';
import { xmlLimits } from './limits.ts';
import { anyPrefix, namedByMapping, ownNames } from './names.ts';
import { type LinePlace, placesIn } from './place.ts';
import { readRecords } from './records.ts';
import { declarationsIn, elementSplitter } from './split.ts';

/**
 * Reads XML in which each element at `source.exam` is one exam. The path and the paths of the items
 * are names as written, with their prefix, from the root and from the exam, joined by `/`; where the
 * source names namespaces, these decide and prefixes say nothing.
 */
export function xmlReader(source: XmlSource): Reader {
  const path = steps(source.exam);
  const items = new Set((source.items ?? []).map((item) => steps(item).join('/')));
  const names = source.namespaces && ownNames(source.namespaces);
  return {
    splitter: () => elementSplitter(names === undefined ? path : path.map(anyPrefix)),
    read: (units) =>
      units.map((unit) => {
        const { exam: found, issues, placeOf } = readExam(unit);
        if (found === undefined) return { records: [], at: unit.at, issues };
        const exam = names === undefined ? found : namedByMapping(found, names);
        if (names !== undefined && exam.written !== path.at(-1)) {
          const facts = { reason: 'element', url: found.namespace } as const;
          const other = issue('unsupported-message', [], facts, { source: placeOf(found.start) });
          return { records: [], at: unit.at, issues: [...issues, other] };
        }
        const records = readRecords(exam, { items, placeOf });
        return { records, at: unit.at, issues };
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
