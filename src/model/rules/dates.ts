import { formOf } from '../../kinds/forms.ts';
import type { Path } from '../../path.ts';
import type { Exam } from '../exam.ts';
import { isAfter, spanOf } from '../time.ts';
import type { ExamRule } from './rule.ts';

/** Every date and time must exist in the calendar. */
export const realDates: ExamRule = ({ exam, report }) => {
  for (const [path, text] of statedTimes(exam)) {
    if (spanOf(text) === undefined) {
      report('impossible-date', path, 'this date or time does not exist', {
        expected: 'a date of the Gregorian calendar, a time up to 23:59:59, a zone up to 14:00',
        value: text,
      });
    }
  }
};

/** Birth, start, end, record and each later step follow one another, as far as their precision tells. */
export const orderedDates: ExamRule = ({ exam, report }) => {
  const inOrder = (
    earlier: string | undefined,
    later: string | undefined,
    path: Path,
    what: string,
  ): void => {
    if (earlier !== undefined && later !== undefined && isAfter(earlier, later)) {
      report('reversed-dates', path, what);
    }
  };
  const { start, end } = exam.performed;
  inOrder(
    exam.subject.birthDate,
    start,
    ['performed', 'start'],
    'the exam lies before the birth date',
  );
  inOrder(start, end, ['performed', 'end'], 'the exam ends before it starts');
  inOrder(start, exam.recorded, ['recorded'], 'the record was written before the exam');
  exam.statements.forEach((statement, at) => {
    const path = ['statements', at];
    inOrder(
      statement.carried?.at,
      start,
      [...path, 'carried', 'at'],
      'carried over from after the exam',
    );
    inOrder(statement.at, exam.recorded, [...path, 'at'], 'the statement lies after the record');
    for (const own of formOf(statement).times?.(statement) ?? []) {
      inOrder(own.time, exam.recorded, [...path, ...own.path], own.after);
    }
  });
  let before: string | undefined = start;
  exam.history?.forEach((event, at) => {
    inOrder(before, event.at, ['history', at, 'at'], 'this step lies before the one it follows');
    before = event.at;
  });
  exam.history?.forEach((event, at) => {
    if (event.version !== at + 1) {
      report('invalid-value', ['history', at, 'version'], 'versions count 1, 2, 3 in order', {
        expected: String(at + 1),
      });
    }
  });
};

function statedTimes(exam: Exam): [Path, string][] {
  const found: [Path, string | undefined][] = [
    [['subject', 'birthDate'], exam.subject.birthDate],
    [['performed', 'start'], exam.performed.start],
    [['performed', 'end'], exam.performed.end],
    [['recorded'], exam.recorded],
    [['conclusion', 'safetyNet', 'reviewBy'], exam.conclusion?.safetyNet?.reviewBy],
  ];
  exam.consents?.forEach((consent, at) => {
    found.push([['consents', at, 'at'], consent.at]);
  });
  exam.statements.forEach((statement, at) => {
    found.push([['statements', at, 'at'], statement.at]);
    found.push([['statements', at, 'carried', 'at'], statement.carried?.at]);
    for (const { time, path } of formOf(statement).times?.(statement) ?? []) {
      found.push([['statements', at, ...path], time]);
    }
  });
  exam.conclusion?.plan?.forEach((item, at) => {
    found.push([['conclusion', 'plan', at, 'due'], item.due]);
  });
  exam.conclusion?.told?.forEach((told, at) => {
    found.push([['conclusion', 'told', at, 'at'], told.at]);
  });
  exam.history?.forEach((event, at) => {
    found.push([['history', at, 'at'], event.at]);
  });
  return found.filter((entry): entry is [Path, string] => entry[1] !== undefined);
}
