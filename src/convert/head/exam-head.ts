import { hasErrors, type Issue } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { fieldText } from '../exams/note.ts';
import type { Plan } from '../mapping/plan.ts';
import { isTable } from '../mapping/source.ts';
import { wordMap } from '../mapping/word-map.ts';
import { dateNames } from '../prepare/names.ts';
import { namesOfText } from '../record/context.ts';
import type { TextDraft } from '../record/draft.ts';
import type { Field, LegacyRecord } from '../record/record.ts';
import { looksDamaged } from '../values/damaged.ts';
import { conclusionOf } from './conclusion.ts';
import { headFields } from './head-fields.ts';
import { examinersOf, subjectOf } from './subject.ts';
import { optionalTime, recordedOf, vitalTime } from './times.ts';
import { holder, refuse, type Work } from './work.ts';

export type ExamHead = Omit<Exam, 'statements'>;

export interface HeadResult {
  /** None where something is missing or wrong without which there is no exam: see the issues. */
  readonly head?: ExamHead;
  readonly issues: readonly Issue[];
  /** Fields of the head that cannot be read and are not vital. */
  readonly texts: readonly TextDraft[];
  /** Fields that the exam has no place for, about the person, the visit or the document. */
  readonly administrative: readonly Field[];
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
  const examiners = examinersOf(work);
  const recorded = recordedOf(work);
  const start = vitalTime(exam.performed.start, work, recorded);
  const end = optionalTime(exam.performed.end, work);
  const conclusion = conclusionOf(work);
  const indication = fields.text(exam.indication);
  const left = fields.left();
  const administrative = left
    .filter(({ record }) => record.administrative)
    .map(({ field }) => field);
  const texts = [
    ...work.texts,
    ...left.filter(({ record }) => !record.administrative).map(({ field }) => leftOver(field)),
  ];
  const all = fields.taken();
  if (hasErrors(issues) || !id || !status || !subject || !examiners || !start || !recorded) {
    return { issues, texts, administrative, fields: all };
  }
  const head: ExamHead = {
    format: 'face-neck-exam/1',
    id,
    status,
    subject,
    examiners,
    ...(exam.organization !== undefined && { organization: exam.organization }),
    performed: { start, ...(end !== undefined && { end }) },
    recorded,
    ...(indication !== undefined && { indication: { text: indication } }),
    protocol: exam.protocol,
    ...(conclusion !== undefined && { conclusion }),
  };
  return { head, issues, texts, administrative, fields: all };
}

/** Injective: other characters than letters, digits, hyphen and underscore become `~` and hex digits. */
function examId(work: Work): string | undefined {
  const { prefix, from: vital, also = [] } = work.plan.mapping.exam.id;
  const from = [...vital, ...also.filter((source) => work.fields.text(source) !== undefined)];
  const parts = from.map((source) => work.fields.text(source));
  const first = (): string => holder(from[0], work);
  if (parts.some((part) => part === undefined)) {
    refuse(work, 'missing-field', first(), { reason: 'exam-id', codes: from.flatMap(namesOfText) });
    return undefined;
  }
  // Only a table can have gone through a spreadsheet.
  const inTable = isTable(work.plan.mapping.source);
  const damaged = from.find((source, at) => {
    if (!inTable || !looksDamaged(parts[at] ?? '')) return false;
    // A date is one by its meaning: it stands in the id in the form of ISO 8601.
    const date = dateOfExam(holder(source, work), work);
    if (date !== undefined) parts[at] = date;
    return date === undefined;
  });
  if (damaged !== undefined) {
    refuse(work, 'damaged-value', holder(damaged, work), { reason: 'exam-id' });
    return undefined;
  }
  const escaped = parts.map((part = '') =>
    part.replace(/[^A-Za-z0-9_-]/gu, (mark) => `~${mark.codePointAt(0)?.toString(16)}~`),
  );
  const id = [prefix, ...escaped].join('.');
  if (id.length <= 200) return id;
  refuse(work, 'too-large', first(), { reason: 'exam-id' });
  return undefined;
}

/** A field that the mapping takes a date of the exam from, read in the forms that it states. */
function dateOfExam(name: string, work: Work): string | undefined {
  const { performed, recorded, subject } = work.plan.mapping.exam;
  const field = [performed.start, performed.end, recorded.from, subject.birthDate].find(
    (one) => one !== undefined && dateNames(one).includes(name),
  );
  if (field === undefined) return undefined;
  const { value, problem } = work.plan.dates(field)(work.fields.text(name) ?? '');
  return problem === undefined || problem === 'missing-zone' ? value : undefined;
}

function statusOf(work: Work): Exam['status'] | undefined {
  const { from, words, value } = work.plan.mapping.exam.status;
  const text = work.fields.text(from);
  if (from === undefined || text === undefined) {
    if (value === undefined && from !== undefined) {
      refuse(work, 'missing-field', holder(from, work), { reason: 'exam-status' });
    }
    return value;
  }
  const status = wordMap(words, work.plan.mapping.ignoreCase ?? false).get(text);
  if (status === undefined) {
    refuse(work, 'unknown-word', holder(from, work), { reason: 'exam-status' });
  }
  return status;
}

function leftOver(field: Field): TextDraft {
  return { text: fieldText(field), name: field.name, fields: [field] };
}
