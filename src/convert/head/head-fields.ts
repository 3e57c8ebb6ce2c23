import { type Issue, issue, type SourcePosition } from '../../issue.ts';
import type { FieldName, Where } from '../mapping.ts';
import { contentOf, isBlank, printable } from '../note.ts';
import type { Field, LegacyRecord } from '../record.ts';

/** Fields of the exam head, over all records of one exam. */
export interface HeadFields {
  /**
   * The one text of a field, trimmed; undefined where it is blank or not there. Where records of one
   * exam differ in it, an issue is raised: they may be of two patients.
   */
  readonly text: (name: FieldName | undefined, where?: Where) => string | undefined;
  readonly first: (name: FieldName) => Field | undefined;
  /** All that are not blank. */
  readonly every: (name: FieldName) => readonly Field[];
  /** Fields that were asked for. */
  readonly taken: () => readonly Field[];
  /** Fields of the head that nobody asked for, such as other repetitions of an identifier. */
  readonly left: () => readonly Field[];
}

interface Found {
  readonly field: Field;
  readonly record: LegacyRecord;
}

export function headFields(
  records: readonly LegacyRecord[],
  names: ReadonlySet<string>,
  issues: Issue[],
): HeadFields {
  const found = new Map<string, Found[]>();
  for (const record of records) {
    if (record.malformed !== undefined) continue;
    for (const field of record.fields) {
      if (!names.has(field.name) || isBlank(field)) continue;
      const same = found.get(field.name);
      if (same === undefined) found.set(field.name, [{ field, record }]);
      else same.push({ field, record });
    }
  }
  const taken = new Set<Field>();
  const fieldsOf = (name: string): readonly Field[] =>
    (found.get(name) ?? []).map(({ field }) => field);

  const matches = ({ field, record }: Found, { field: name, is }: Where): boolean => {
    const beside = record.fields.find(
      (other) => other.name === name && repetition(other.at) === repetition(field.at),
    );
    const fits = beside?.text.trim() === is;
    if (fits && beside !== undefined) taken.add(beside);
    return fits;
  };
  return {
    text: (name, where) => {
      if (name === undefined) return undefined;
      const all = found.get(name) ?? [];
      const chosen = where === undefined ? all : all.filter((one) => matches(one, where));
      const [first, ...more] = chosen.map(({ field }) => field);
      if (first === undefined) return undefined;
      const other = more.find((field) => textOf(field) !== textOf(first));
      const isNew = !taken.has(first);
      for (const { field } of chosen) taken.add(field);
      if (other !== undefined && isNew) {
        const message = 'the records of one exam differ in a field that must be the same in all';
        issues.push(issue('conflicting-fields', [name], message, { source: other.at }));
      }
      return textOf(first);
    },
    first: (name) => fieldsOf(name)[0],
    every: fieldsOf,
    taken: () => [...taken],
    left: () =>
      [...found.values()]
        .flatMap((all) => all.map(({ field }) => field))
        .filter((field) => !taken.has(field)),
  };
}

function textOf(field: Field): string {
  return printable(contentOf(field).trim());
}

function repetition(at: SourcePosition): number {
  return 'segment' in at ? (at.repetition ?? 1) : 1;
}
