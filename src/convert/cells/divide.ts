import type { Issue } from '../../issues/issue.ts';
import { isBlank } from '../exams/note.ts';
import { issue } from '../issue.ts';
import type { CellOperation } from '../mapping/cells.ts';
import type { Field, LegacyRecord } from '../record/record.ts';
import { patternSteps, pick } from './pick.ts';
import { type Part, splitList, splitSides } from './split.ts';

/** An operation made ready for use. */
export interface PlannedOperation {
  readonly from: string;
  /** The fields that take the place of one, none where the operation does not fit its text. */
  readonly divide: (field: Field) => readonly Field[] | undefined;
}

export function planOperation(operation: CellOperation): PlannedOperation {
  const { from } = operation;
  switch (operation.do) {
    case 'split-sides':
      return { from, divide: byParts((text) => splitSides(text, operation), operation.do) };
    case 'split-list':
      return { from, divide: byParts((text) => splitList(text, operation), operation.do) };
    case 'pick': {
      const patterns = operation.patterns.flatMap((pattern) => {
        const steps = patternSteps(pattern);
        return steps === undefined ? [] : [steps];
      });
      const fitting = (text: string): readonly Part[] | undefined => {
        for (const steps of patterns) {
          const parts = pick(text, steps);
          if (parts !== undefined) return parts;
        }
        return undefined;
      };
      return { from, divide: byParts(fitting, operation.do) };
    }
    case 'look-up': {
      const table = new Map(Object.entries(operation.table));
      return {
        from,
        divide: (field) => {
          const text = table.get(field.text.trim());
          if (text === undefined) return undefined;
          return [{ ...field, name: operation.into, text, of: sourceOf(field), by: operation.do }];
        },
      };
    }
  }
}

function byParts(
  partsOf: (text: string) => readonly Part[] | undefined,
  by: CellOperation['do'],
): PlannedOperation['divide'] {
  return (field) =>
    partsOf(field.text)?.map(({ name, start, end }) => ({
      ...field,
      name,
      text: field.text.slice(start, end),
      of: sourceOf(field),
      by,
    }));
}

/** The field of the input that a part of a part is of. */
function sourceOf(field: Field): Field {
  return field.of ?? field;
}

/** Records with the parts of their fields in place of these, by the operations in order. */
export function divided(
  records: readonly LegacyRecord[],
  operations: readonly PlannedOperation[],
  issues: Issue[],
): readonly LegacyRecord[] {
  if (operations.length === 0) return records;
  return records.map((record) => {
    if (record.malformed !== undefined) return record;
    let { fields } = record;
    for (const operation of operations) {
      fields = fields.flatMap((field) => {
        if (field.name !== operation.from || isBlank(field)) return [field];
        const parts = operation.divide(field);
        if (parts !== undefined) return parts;
        const details = { severity: 'warning', source: field.at } as const;
        issues.push(issue('unknown-word', [field.name], { reason: 'cell' }, details));
        return [field];
      });
    }
    return { ...record, fields };
  });
}
