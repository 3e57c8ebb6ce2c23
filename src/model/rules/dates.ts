import type { RecordFacts } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { isUnconfirmed } from '../../kinds/facets/base.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import type { Exam } from '../exam.ts';
import { isAfter, spanOf } from '../time.ts';
import type { ExamRule } from './rule.ts';

/** Every date and time must exist in the calendar. */
export const realDates: ExamRule = ({ exam, report }) => {
  for (const [path, text] of statedTimes(exam)) {
    if (spanOf(text) === undefined) {
      report(
        'impossible-date',
        path,
        { reason: 'calendar' },
        {
          value: text,
        },
      );
    }
  }
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
    inOrder(statement.carried?.at, start, [...path, 'carried', 'at'], 'carried');
    inOrder(statement.at, exam.recorded, [...path, 'at'], 'statement');
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
  exam.prompts?.forEach(({ shown, answer }, at) => {
    found.push([['prompts', at, 'shown'], shown], [['prompts', at, 'answer', 'at'], answer?.at]);
  });
  exam.judgements?.forEach((judgement, at) => {
    found.push([['judgements', at, 'at'], judgement.at]);
  });
  exam.history?.forEach((event, at) => {
    found.push([['history', at, 'at'], event.at]);
  });
  return found.filter((entry): entry is [Path, string] => entry[1] !== undefined);
}
