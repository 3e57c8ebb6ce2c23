import type { RecordFacts } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { isUnconfirmed } from '../../kinds/facets/base.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import type { Exam } from '../exam.ts';
import { isAfter, spanOf } from '../time.ts';
import type { ExamRule } from './rule.ts';

/** Every date and time must exist in the calendar. */
export const realDates: ExamRule = ({ exam, report }) => {
  eachTime(exam, (text, ...path) => {
    if (text === undefined || spanOf(text) !== undefined) return;
    report('impossible-date', path, { reason: 'calendar' }, { value: text });
  });
};

/** Birth, start, end, record and each later step follow one another, as far as their precision tells. */
export const orderedDates: ExamRule = ({ exam, report }) => {
  const inOrder = (
    earlier: string | undefined,
    later: string | undefined,
    path: Path,
    reason: Exclude<RecordFacts<'reversed-dates'>['reason'], 'rule'>,
  ): void => {
    if (earlier !== undefined && later !== undefined && isAfter(earlier, later)) {
      report('reversed-dates', path, { reason });
    }
  };
  const { start, end } = exam.performed;
  inOrder(exam.subject.birthDate, start, ['performed', 'start'], 'birth');
  inOrder(start, end, ['performed', 'end'], 'end');
  inOrder(start, exam.recorded, ['recorded'], 'recorded');
  exam.statements.forEach((statement, at) => {
    const path = ['statements', at];
    if (statement.carried !== undefined) {
      inOrder(statement.carried.at, start, [...path, 'carried', 'at'], 'carried');
    }
    if (statement.at !== undefined) {
      inOrder(statement.at, exam.recorded, [...path, 'at'], 'statement');
    }
    // What was not looked at again was seen then and not since.
    if (isUnconfirmed(statement)) {
      inOrder(statement.at, statement.carried?.at, [...path, 'at'], 'unconfirmed');
    }
    for (const own of formOf(statement).times?.(statement) ?? []) {
      inOrder(own.time, exam.recorded, [...path, ...own.path], own.after);
    }
  });
  exam.prompts?.forEach(({ shown, answer }, at) => {
    inOrder(shown, answer?.at, ['prompts', at, 'answer', 'at'], 'step');
  });
  let before: string | undefined = start;
  exam.history?.forEach((event, at) => {
    inOrder(before, event.at, ['history', at, 'at'], 'step');
    before = event.at;
  });
  exam.history?.forEach((event, at) => {
    if (event.version !== at + 1) {
      report('invalid-value', ['history', at, 'version'], {
        reason: 'version-order',
        count: at + 1,
      });
    }
  });
};

/** Tells every date and time of an exam, also those that are not stated, with its path. */
function eachTime(exam: Exam, tell: (text: string | undefined, ...path: Path) => void): void {
  tell(exam.subject.birthDate, 'subject', 'birthDate');
  tell(exam.performed.start, 'performed', 'start');
  tell(exam.performed.end, 'performed', 'end');
  tell(exam.recorded, 'recorded');
  tell(exam.conclusion?.safetyNet?.reviewBy, 'conclusion', 'safetyNet', 'reviewBy');
  exam.consents?.forEach((consent, at) => {
    tell(consent.at, 'consents', at, 'at');
  });
  exam.statements.forEach((statement, at) => {
    tell(statement.at, 'statements', at, 'at');
    tell(statement.carried?.at, 'statements', at, 'carried', 'at');
    for (const { time, path } of formOf(statement).times?.(statement) ?? []) {
      tell(time, 'statements', at, ...path);
    }
  });
  exam.conclusion?.plan?.forEach((item, at) => {
    tell(item.due, 'conclusion', 'plan', at, 'due');
  });
  exam.conclusion?.told?.forEach((told, at) => {
    tell(told.at, 'conclusion', 'told', at, 'at');
  });
  exam.prompts?.forEach(({ shown, answer }, at) => {
    tell(shown, 'prompts', at, 'shown');
    tell(answer?.at, 'prompts', at, 'answer', 'at');
  });
  exam.judgements?.forEach((judgement, at) => {
    tell(judgement.at, 'judgements', at, 'at');
  });
  exam.history?.forEach((event, at) => {
    tell(event.at, 'history', at, 'at');
  });
}
