import { time } from '../dates.ts';
import { type Content, element, joined, list, section, words } from '../html.ts';
import { atPlace, inEnglish, type Page, separated } from '../page.ts';
import { examinerName } from './head.ts';

/** What was shown to the examiners while they worked, what they did with it, and what they judged. */
export function warningPart(page: Page): Content {
  const { exam, labels, teller } = page;
  const { prompts = [], judgements = [] } = exam;
  if (prompts.length === 0 && judgements.length === 0) return undefined;
  const shown = prompts.map(({ urgency, text, source, shown: at, answer }) =>
    joined(
      `${teller.answer('prompt', urgency)}, `,
      time(at, labels.dates),
      ': ',
      inEnglish(text),
      element('div', { class: 'note' }, `${labels.source}: `, inEnglish(source)),
      answer &&
        element(
          'div',
          {},
          `${teller.answer('prompt-answer', answer.answer)}: `,
          whoAndWhy(page, answer),
        ),
    ),
  );
  const statements = new Map(exam.statements.map((one) => [one.key, one]));
  const judged = judgements.map(({ statement, judgement, ...rest }) => {
    const about = statements.get(statement);
    return joined(
      about === undefined ? words(statement) : teller.subject(about),
      about && 'region' in about ? atPlace(page, about) : undefined,
      `: ${teller.answer('judgement', judgement)}, `,
      whoAndWhy(page, rest),
    );
  });
  return section('warnings', labels.warnings, list([...shown, ...judged]));
}

function whoAndWhy(
  { exam, labels }: Page,
  {
    by,
    at,
    reason,
  }: { readonly by: string; readonly at: string; readonly reason?: string | undefined },
): Content {
  return separated(
    [words(examinerName(exam.examiners, by)), time(at, labels.dates), reason && words(reason)],
    ', ',
  );
}
