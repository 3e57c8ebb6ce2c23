import type { Issue } from '../../issue.ts';
import { contentOf, isBlank, printable } from '../exams/note.ts';
import { issue } from '../issue.ts';
import type { FieldName, Where } from '../mapping/mapping.ts';
import { fits, inContext } from '../record/context.ts';
import type { Field, LegacyRecord } from '../record/record.ts';

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
  readonly left: () => readonly Found[];
  /** All fields of a name that hold something, with their records; they count as taken. */
  readonly all: (name: FieldName | undefined) => readonly Found[];
  /** Fields of a name beside another, in its element, repetition or row; they count as taken. */
  readonly beside: (name: FieldName | undefined, other: Found) => readonly Field[];
}

export interface Found {
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
  /** Fields whose contradiction has been told. */
  const told = new Set<Field>();
  const fieldsOf = (name: string): readonly Field[] =>
    (found.get(name) ?? []).map(({ field }) => field);

  const matches = ({ field, record }: Found, where: Where): boolean => {
    if (!fits(field, where, record)) return false;
    for (const other of record.fields) {
      if (other.name === where.field && inContext(field, other)) taken.add(other);
    }
    return true;
  };
  const isContradicted = (field: Field): boolean => {
    if (field.contradicted && !told.has(field)) {
      const details = { severity: 'warning', source: field.at } as const;
      issues.push(issue('contradiction', [field.name], { reason: 'null-beside-field' }, details));
      told.add(field);
    }
    return field.contradicted === true;
  };
  return {
    text: (name, where) => {
      if (name === undefined) return undefined;
      const all = found.get(name) ?? [];
      const fitting = where === undefined ? all : all.filter((one) => matches(one, where));
      const chosen = fitting.filter(({ field }) => !isContradicted(field));
      const [first, ...more] = chosen.map(({ field }) => field);
      if (first === undefined) return undefined;
      const other = more.find((field) => textOf(field) !== textOf(first));
      const isNew = !taken.has(first);
      for (const { field } of chosen) taken.add(field);
      if (other !== undefined && isNew) {
        issues.push(issue('conflicting-fields', [name], { reason: 'head' }, { source: other.at }));
      }
      return textOf(first);
    },
    first: (name) => fieldsOf(name)[0],
    every: fieldsOf,
    taken: () => [...taken],
    left: () => [...found.values()].flat().filter(({ field }) => !taken.has(field)),
    all: (name) => {
      const all = (name === undefined ? [] : (found.get(name) ?? [])).filter(
        ({ field }) => !isContradicted(field),
      );
      for (const { field } of all) taken.add(field);
      return all;
    },
    beside: (name, other) => {
      const all = name === undefined ? [] : (found.get(name) ?? []);
      const near = all.filter(
        ({ field, record }) =>
          record === other.record && inContext(other.field, field) && !isContradicted(field),
      );
      for (const { field } of near) taken.add(field);
      return near.map(({ field }) => field);
    },
  };
}

export function textOf(field: Field): string {
  return printable(contentOf(field).trim());
}
