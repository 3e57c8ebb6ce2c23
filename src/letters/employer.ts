import { type Issue, issue } from '../issues/issue.ts';
import { dayText } from '../report/dates.ts';
import { plainName } from '../report/parts/head.ts';
import { type Writing, writer } from './clinical.ts';
import type { LetterOptions, LetterSection, LetterSentence } from './letter.ts';
import { filled } from './patient.ts';

/**
 * To the employer: that the person was here, and nothing that was found. Plan items are told only where
 * they are named by key and the patient has agreed to share the record.
 */
export function toEmployer(
  writing: Writing,
  { share = [] }: LetterOptions,
): { readonly sections: LetterSection[]; readonly issues: readonly Issue[] } {
  const { page, words } = writing;
  const { exam, labels } = page;
  const agreed = exam.consents?.filter(({ to }) => to === 'share') ?? [];
  const allowed = agreed.length > 0 && agreed.every(({ answer }) => answer === 'given');
  if (share.length > 0 && !allowed) {
    return {
      sections: [],
      issues: [issue('missing-property', ['consents'], { reason: 'consent' })],
    };
  }
  const plan = exam.conclusion?.plan ?? [];
  const issues = share.flatMap((key, at) =>
    plan.some((item) => item.key === key)
      ? []
      : [issue('unresolved-key', ['options', 'share', at], { reason: 'plan-item' })],
  );
  const shared = plan.flatMap((item, at): LetterSentence[] =>
    share.includes(item.key)
      ? [
          {
            text: filled(words.employer.statement, 'text', item.text.replace(/[.\s]+$/, '')),
            of: [{ path: ['conclusion', 'plan', at] }],
          },
        ]
      : [],
  );
  const attended = filled(
    filled(words.employer.attended, 'date', dayText(exam.performed.start, labels.dates)),
    'name',
    plainName(exam.subject.name) ?? labels.noName,
  );
  const sections: LetterSection[] = [
    {
      sentences: [
        { text: attended, of: [{ path: ['subject'] }, { path: ['performed', 'start'] }] },
        ...shared,
        { text: words.employer.noMore, of: [] },
      ],
    },
    writer(writing),
  ];
  return { sections, issues };
}
