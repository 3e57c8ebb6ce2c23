import { hasErrors, type Issue } from '../../issue.ts';
import type { Exam } from '../../model/exam.ts';
import { looksDamaged } from '../damaged.ts';
import type { TextDraft } from '../draft.ts';
import { fieldText } from '../note.ts';
import type { Plan } from '../plan.ts';
import type { Field, LegacyRecord } from '../record.ts';
import { wordMap } from '../word-map.ts';
import { conclusionOf } from './conclusion.ts';
import { headFields } from './head-fields.ts';
import { examinerOf, subjectOf } from './subject.ts';
import { optionalTime, recordedOf, vitalTime } from './times.ts';
import { refuse, type Work } from './work.ts';

export type ExamHead = Omit<Exam, 'statements'>;

export interface HeadResult {
  /** None where something is missing or wrong without which there is no exam: see the issues. */
  readonly head?: ExamHead;
  readonly issues: readonly Issue[];
  /** Fields of the head that can not be read and are not vital. */
  readonly texts: readonly TextDraft[];
  /** The fields that the head holds. */
  readonly fields: readonly Field[];
}

/** Who was examined, by whom, when: what the records of one exam say about it as a whole. */
export function examHead(records: readonly LegacyRecord[], plan: Plan): HeadResult {
  const issues: Issue[] = [];
  const fields = headFields(records, plan.head, issues);
  const work: Work = { plan, fields, issues, texts: [] };
  const { exam } = plan.mapping;
  const id = examId(work);
  const status = statusOf(work);
  const subject = subjectOf(work);
  const examiner = examinerOf(work);
  const start = vitalTime(exam.performed.start, work);
  const end = optionalTime(exam.performed.end, work);
  const recorded = recordedOf(work);
  const conclusion = conclusionOf(work);
  const indication = fields.text(exam.indication);
  const texts = [...work.texts, ...fields.left().map(leftOver)];
  const all = fields.taken();
  if (hasErrors(issues) || !id || !status || !subject || !examiner || !start || !recorded) {
    return { issues, texts, fields: all };
  }
  const head: ExamHead = {
    format: 'face-neck-exam/1',
    id,
    status,
    subject,
    examiners: [examiner],
    ...(exam.organization !== undefined && { organization: exam.organization }),
    performed: { start, ...(end !== undefined && { end }) },
    recorded,
    ...(indication !== undefined && { indication: { text: indication } }),
    protocol: exam.protocol,
    ...(conclusion !== undefined && { conclusion }),
  };
  return { head, issues, texts, fields: all };
}

/** Injective: other characters than letters, digits, hyphen and underscore become `~` and hex digits. */
function examId(work: Work): string | undefined {
  const { prefix, from } = work.plan.mapping.exam.id;
  const parts = from.map((name) => work.fields.text(name));
  if (parts.some((part) => part === undefined)) {
    refuse(work, 'missing-field', from[0] ?? '', { reason: 'exam-id', codes: from });
    return undefined;
  }
  const damaged = from.find((name) => looksDamaged(work.fields.text(name) ?? ''));
  if (damaged !== undefined) {
    refuse(work, 'damaged-value', damaged, { reason: 'exam-id' });
    return undefined;
  }
  const escaped = parts.map((part = '') =>
    part.replace(/[^A-Za-z0-9_-]/gu, (mark) => `~${mark.codePointAt(0)?.toString(16)}~`),
  );
  const id = [prefix, ...escaped].join('.');
  if (id.length <= 200) return id;
  refuse(work, 'too-large', from[0] ?? '', { reason: 'exam-id' });
  return undefined;
}

function statusOf(work: Work): Exam['status'] | undefined {
  const { from, words, value } = work.plan.mapping.exam.status;
  const text = work.fields.text(from);
  if (from === undefined || text === undefined) {
    if (value === undefined && from !== undefined) {
      refuse(work, 'missing-field', from, { reason: 'exam-status' });
    }
    return value;
  }
  const status = wordMap(words, work.plan.mapping.ignoreCase ?? false).get(text);
  if (status === undefined) {
    refuse(work, 'unknown-word', from, { reason: 'exam-status' });
  }
  return status;
}

function leftOver(field: Field): TextDraft {
  return { text: fieldText(field), name: field.name, fields: [field] };
}
