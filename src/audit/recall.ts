import type { PlanItem } from '../model/conclusion.ts';
import type { Exam } from '../model/exam.ts';
import { spanOf } from '../model/time.ts';

/** One thing that is to be done after an exam, with who is to do it and by when. */
export interface Recall {
  readonly exam: string;
  /** Key of the item of the plan; none for the review of the safety net. */
  readonly item?: string;
  readonly kind: 'review' | 'referral' | 'investigation' | 'treatment' | 'advice' | 'safety-net';
  readonly text: string;
  /** The date as it was stated; left out where a referral, test or review has none. */
  readonly due?: string;
  /** Left out where no date is stated, so that it cannot be told. */
  readonly overdue?: boolean;
  readonly urgency?: string;
  readonly owner?: string;
  readonly subject: Exam['subject'];
}

/** What a person has to see to whether or not a date is stated: without one, an urgent referral would be lost. */
const arranged: readonly PlanItem['kind'][] = ['referral', 'investigation', 'review'];

/**
 * Lists what an exam leaves to be done: items of its plan that have a date, referrals, tests and reviews
 * without one too, and the review of its safety net. Whether it has been done is not known here.
 *
 * @param exam The exam. A withdrawn record asks for nothing.
 * @param today The present day, as YYYY-MM-DD; overdue is what lies wholly before it.
 * @returns What is to be done.
 * @example
 * const overdue = recallsOf(exam, '2025-06-01').filter((recall) => recall.overdue);
 */
export function recallsOf(exam: Exam, today: string): readonly Recall[] {
  const { conclusion, status, subject } = exam;
  if (status === 'entered-in-error' || conclusion === undefined) return [];
  const recall = (one: Omit<Recall, 'exam' | 'overdue' | 'subject'>): Recall => ({
    exam: exam.id,
    ...one,
    ...(one.due !== undefined && { overdue: isBefore(one.due, today) }),
    subject,
  });
  const { plan = [], safetyNet } = conclusion;
  const items = plan.flatMap((item): Recall[] => {
    const { kind, due, text, urgency, to, key } = item;
    if (kind === 'nothing-further') return [];
    if (due === undefined && !arranged.includes(kind)) return [];
    const owner = to ?? safetyNet?.owner;
    return [
      recall({
        item: key,
        kind,
        text,
        ...(due !== undefined && { due }),
        ...(urgency && { urgency }),
        ...(owner !== undefined && { owner }),
      }),
    ];
  });
  if (safetyNet?.reviewBy === undefined) return items;
  const { text, reviewBy, owner } = safetyNet;
  const net = recall({ kind: 'safety-net', text, due: reviewBy, ...(owner && { owner }) });
  return [...items, net];
}

/** Whether all that a date can mean lies before a day. */
function isBefore(due: string, today: string): boolean {
  return lastDay(due) < today.slice(0, 10);
}

/** The last day that a date stated to the year, month or day can mean. */
export function lastDay(due: string): string {
  if (spanOf(due) === undefined) return due;
  const [year = '', month = '12', day] = due.slice(0, 10).split('-');
  if (day !== undefined) return due.slice(0, 10);
  const days = new Date(Date.UTC(Number(year), Number(month), 0)).getUTCDate();
  return `${year}-${month}-${String(days).padStart(2, '0')}`;
}

/**
 * Whether a recall belongs on a list of what is late: its date is past, or it presses and nobody stated
 * a date.
 */
export function isLate({ overdue, due, urgency }: Recall): boolean {
  return overdue === true || (due === undefined && urgency !== undefined && urgency !== 'routine');
}
