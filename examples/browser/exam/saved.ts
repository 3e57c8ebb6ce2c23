import type { Dismissal, Exam, ExamStart, RuleSetId } from '../../../src/index.ts';

/** Answers by linkId: codes of options, or one text as it was typed. Nothing stands here unsaid. */
export type Answers = Readonly<Record<string, readonly string[]>>;

/** Who is examined by whom, as entered at the start. */
export interface Head {
  readonly id: string;
  readonly protocol: { readonly id: string; readonly version: string };
  readonly person: string;
  /** YYYY-MM-DD, or less where less is known. */
  readonly born: string;
  readonly number: string;
  readonly examiner: string;
  readonly role: string;
  /** With the offset from UTC. */
  readonly started: string;
}

/** The exam before, shown beside the questions and never taken over. */
export interface Before {
  readonly exam: Exam;
  /** The examiner said that it is the same person, since the records do not show it. */
  readonly isAssumed: boolean;
}

/** All that is kept of one examination until it is deleted. */
export interface Saved {
  readonly format: 'face-neck-capture/1';
  readonly head: Head;
  readonly answers: Answers;
  /** By linkId of a group that can be filled in several times: the numbers of its fillings. */
  readonly rounds: Readonly<Record<string, readonly number[]>>;
  readonly ruleSets: readonly RuleSetId[];
  readonly dismissals: readonly Dismissal[];
  readonly before?: Before;
  /** LinkId of the page that is open. */
  readonly page: string;
  readonly signed?: Exam;
}

/** Key of the one examiner of the exam. */
export const examinerKey = 'examiner';

/** System of the number of a person in this clinic. */
const numbers = 'https://clinic.example/people';

export function begin(head: Head, ruleSets: readonly RuleSetId[], before?: Before): Saved {
  return {
    format: 'face-neck-capture/1',
    head,
    answers: {},
    rounds: {},
    ruleSets,
    dismissals: [],
    ...(before && { before }),
    page: '',
  };
}

export function startOf({ head }: Saved): ExamStart {
  const { id, protocol, person, born, number, examiner, role, started } = head;
  return {
    id,
    subject: {
      name: { text: person },
      ...(number !== '' && { identifiers: [{ system: numbers, value: number }] }),
      ...(born !== '' && { birthDate: born }),
    },
    examiners: [{ key: examinerKey, name: { text: examiner }, ...(role !== '' && { role }) }],
    performed: { start: started },
    recorded: started,
    protocol,
  };
}

/** The moment to the second, with the offset of this machine from UTC. */
export function now(): string {
  const at = new Date();
  const offset = -at.getTimezoneOffset();
  const two = (figure: number): string => String(Math.trunc(Math.abs(figure))).padStart(2, '0');
  const local = new Date(at.getTime() + offset * 60_000).toISOString().slice(0, 19);
  return `${local}${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
}

export function answered(answers: Answers, linkId: string): readonly string[] {
  return (answers[linkId] ?? []).filter((one) => one.trim() !== '');
}

/** An answer put in place of the one before; none takes it away. */
export function withAnswer(saved: Saved, linkId: string, values: readonly string[]): Saved {
  const { [linkId]: _before, ...others } = saved.answers;
  return { ...saved, answers: values.length === 0 ? others : { ...others, [linkId]: values } };
}
