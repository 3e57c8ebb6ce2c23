import type { Issue } from '../../issues/issue.ts';
import { fieldText } from '../exams/note.ts';
import { type ConversionCode, type ConversionFacts, issue } from '../issue.ts';
import type { FieldName, TextSource } from '../mapping/mapping.ts';
import type { Plan } from '../mapping/plan.ts';
import { namesOfText } from '../record/context.ts';
import type { TextDraft } from '../record/draft.ts';
import type { HeadFields } from './head-fields.ts';

/** Collects what is wrong while the head is put together. */
export interface Work {
  readonly plan: Plan;
  readonly fields: HeadFields;
  readonly issues: Issue[];
  readonly texts: TextDraft[];
}

/** Something without which there is no exam: the records go to quarantine. */
export function refuse<Code extends ConversionCode>(
  work: Work,
  code: Code,
  name: FieldName,
  facts: ConversionFacts<Code>,
): void {
  const source = work.fields.first(name)?.at;
  work.issues.push(issue(code, [name], facts, { source }));
}

/** A field that is not vital and cannot be read: text, with a warning. */
export function keepAsText<Code extends ConversionCode>(
  work: Work,
  code: Code,
  name: FieldName,
  facts: ConversionFacts<Code>,
): void {
  const fields = work.fields.every(name);
  const [first] = fields;
  if (first !== undefined) work.texts.push({ text: fieldText(first), name, fields });
  const source = work.fields.first(name)?.at;
  work.issues.push(issue(code, [name], facts, { severity: 'warning', source }));
}

/** Name of the field that holds a text of the head, or of the first that could. */
export function holder(source: TextSource | undefined, { fields }: Work): FieldName {
  return fields.texts(source)[0]?.field.name ?? namesOfText(source)[0] ?? '';
}
