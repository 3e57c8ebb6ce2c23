import type { Issue } from '../../issues/issue.ts';
import { contentOf, isBlank, printable } from '../exams/note.ts';
import { issue } from '../issue.ts';
import type { FieldName, JoinedFields, TextSource, Where } from '../mapping/mapping.ts';
import { fits, inContext, partsOfText } from '../record/context.ts';
import type { Field, LegacyRecord } from '../record/record.ts';

/** Fields of the exam head, over all records of one exam. */
export interface HeadFields {
  /**
   * The one text of a field, trimmed; undefined where it is blank or not there. Where records of one
   * exam differ in it, an issue is raised: they may be of two patients.
   */
  readonly text: (source: TextSource | undefined, where?: Where) => string | undefined;
  /** Every text of the first of several sources that holds anything; their fields count as taken. */
  readonly texts: (source: TextSource | undefined) => readonly FoundText[];
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

/** A text of the head, with the first of its fields. */
export interface FoundText extends Found {
  readonly text: string;
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
  /** Fields that were told to differ from others of their name. */
  const compared = new Set<Field>();
  /** Fields of which it has been told that they are not taken. */
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
  const isNotTaken = (field: Field): boolean => {
    const { contradicted, refused } = field;
    if (contradicted === undefined && refused === undefined) return false;
    if (!told.has(field)) {
      const details = { severity: 'warning', source: field.at } as const;
      issues.push(
        refused === undefined
          ? issue('contradiction', [field.name], { reason: 'null-beside-field' }, details)
          : issue('damaged-value', [field.name], { reason: refused }, details),
      );
      told.add(field);
    }
    return true;
  };
  const chosen = (name: FieldName, where?: Where): readonly Found[] => {
    const named = found.get(name) ?? none;
    if (where === undefined && !named.some(({ field }) => isNotTaken(field))) return named;
    return named
      .filter((one) => where === undefined || matches(one, where))
      .filter(({ field }) => !isNotTaken(field));
  };
  const near = (name: FieldName, other: Found): Found[] =>
    (found.get(name) ?? []).filter(
      ({ field, record }) =>
        record === other.record && inContext(other.field, field) && !isNotTaken(field),
    );
  const ofField = (name: FieldName, where?: Where): FoundText[] =>
    chosen(name, where).map(({ field, record }) => {
      taken.add(field);
      return { field, record, text: textOf(field) };
    });
  const ofJoined = (part: JoinedFields): FoundText[] => {
    const anchor = part.join.find((name) => chosen(name).length > 0);
    return (anchor === undefined ? [] : chosen(anchor)).flatMap((one) => {
      const fields = part.join.flatMap((name) => (name === anchor ? [one] : near(name, one)));
      for (const { field } of fields) taken.add(field);
      const text = fields.map(({ field }) => textOf(field)).join(part.with ?? ' ');
      return fields.slice(0, 1).map((first) => ({ ...first, text }));
    });
  };
  const taking = (source: TextSource | undefined, where?: Where): readonly FoundText[] => {
    for (const part of partsOfText(source)) {
      const all = typeof part === 'string' ? ofField(part, where) : ofJoined(part);
      if (all.length > 0) return all;
    }
    return [];
  };
  return {
    text: (source, where) => {
      if (source === undefined) return undefined;
      const [first, ...more] = taking(source, where);
      if (first === undefined) return undefined;
      const other = more.find(({ text }) => text !== first.text);
      if (other !== undefined && !compared.has(other.field)) {
        compared.add(other.field);
        const details = { source: other.field.at };
        issues.push(issue('conflicting-fields', [first.field.name], { reason: 'head' }, details));
      }
      return first.text;
    },
    texts: (source) => taking(source),
    first: (name) => fieldsOf(name)[0],
    every: fieldsOf,
    taken: () => [...taken],
    left: () => [...found.values()].flat().filter(({ field }) => !taken.has(field)),
    all: (name) => {
      const all = (name === undefined ? [] : (found.get(name) ?? [])).filter(
        ({ field }) => !isNotTaken(field),
      );
      for (const { field } of all) taken.add(field);
      return all;
    },
    beside: (name, other) => {
      const all = name === undefined ? [] : near(name, other);
      for (const { field } of all) taken.add(field);
      return all.map(({ field }) => field);
    },
  };
}

const none: readonly Found[] = [];

export function textOf(field: Field): string {
  return printable(contentOf(field).trim());
}
