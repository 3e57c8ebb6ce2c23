import { type Issue, type IssueCode, issue } from '../../issue.ts';
import type { TextDraft } from '../draft.ts';
import type { FieldName } from '../mapping.ts';
import { fieldText } from '../note.ts';
import type { Plan } from '../plan.ts';
import type { HeadFields } from './head-fields.ts';

/** Collects what is wrong while the head is put together. */
export interface Work {
  readonly plan: Plan;
  readonly fields: HeadFields;
  readonly issues: Issue[];
  readonly texts: TextDraft[];
}

/** Something without which there is no exam: the records go to quarantine. */
export function refuse(
  work: Work,
  code: IssueCode,
  name: FieldName,
  message: string,
  expected?: string,
): void {
  const source = work.fields.first(name)?.at;
  work.issues.push(issue(code, [name], message, { expected, source }));
}

/** A field that is not vital and can not be read: text, with a warning. */
export function keepAsText(
  work: Work,
  code: IssueCode,
  name: FieldName,
  message: string,
  expected?: string,
): void {
  const fields = work.fields.every(name);
  const [first] = fields;
  if (first !== undefined) work.texts.push({ text: fieldText(first), name, fields });
  const source = work.fields.first(name)?.at;
  work.issues.push(issue(code, [name], message, { severity: 'warning', expected, source }));
}
