import { hasErrors, type Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { JsonSource } from '../mapping/source.ts';
import type { RawUnit, Reader, RecordGroup } from '../record/record.ts';
import { placesIn } from '../xml/place.ts';
import { lineSplitterOf } from './lines.ts';
import { isFault, MOST_LEVELS, parseJson } from './parse.ts';
import { jsonRecords } from './records.ts';
import { jsonSplitter } from './split.ts';

/** Reads JSON in which each object at `source.exam`, or on each line, is one exam. */
export function jsonReader(source: JsonSource): Reader {
  const items = new Set((source.items ?? []).map((item) => stepsOf(item).join('/')));
  const path = stepsOf(source.exam ?? '').map((step) =>
    step.replaceAll('~1', '/').replaceAll('~0', '~'),
  );
  return {
    splitter: () => (source.lines === true ? lineSplitterOf() : jsonSplitter(path)),
    read: (units) => units.map((unit) => readUnit(unit, items)),
  };
}

function stepsOf(path: string): string[] {
  return path.split('/').filter((step) => step !== '');
}

function readUnit(unit: RawUnit, items: ReadonlySet<string>): RecordGroup {
  const issues: Issue[] = [...(unit.issues ?? [])];
  if (hasErrors(issues)) return { records: [], at: unit.at, issues };
  const placeOf = placesIn(unit.raw, unit.at);
  const exam = parseJson(unit.raw);
  if (!isFault(exam) && exam.kind === 'object') {
    return { records: jsonRecords(exam, { items, placeOf }), at: unit.at, issues };
  }
  const source = placeOf(isFault(exam) ? exam.at : 0);
  if (!isFault(exam)) issues.push(issue('stray-text', [], { reason: 'json' }, { source }));
  else if (exam.fault === 'too-deep') {
    issues.push(issue('too-deep', [], { reason: 'exam', maximum: MOST_LEVELS }, { source }));
  } else {
    const reason = exam.fault === 'duplicate' ? 'json-name' : 'json';
    issues.push(issue('malformed-record', [], { reason }, { source }));
  }
  return { records: [], at: unit.at, issues };
}
