import { isUnconfirmed } from '../kinds/facets/base.ts';
import { sectionOf, statesSomething } from '../kinds/registries/meanings.ts';
import { tell } from '../kinds/registries/pages.ts';
import type { PlanItem } from '../model/conclusion.ts';
import type { Statement } from '../model/statement.ts';
import type { AbnormalPart } from '../report/abnormal.ts';
import { dateText, periodText } from '../report/dates.ts';
import { plainText } from '../report/html.ts';
import { type Line, linesOf } from '../report/lines.ts';
import type { Page } from '../report/page.ts';
import { signLines } from '../report/parts/abnormal.ts';
import { patientText, plainName } from '../report/parts/head.ts';
import { takenOverLines } from '../report/parts/statements.ts';
import { wordOf } from '../report/words/report-words.ts';
import { figureSentences } from './figures.ts';
import type { LetterSection, LetterSentence } from './letter.ts';
import type { LetterWords } from './letter-words.ts';

/** What a letter is made from. */
export interface Writing {
  readonly page: Page;
  readonly parts: readonly AbnormalPart[];
  readonly words: LetterWords;
}

/** To whom, from whom, about whom, and when it was. */
export function head({ page, words }: Writing, to: string | undefined): LetterSection {
  const { exam, labels } = page;
  const examiner = exam.examiners[0];
  const from = [plainName(examiner.name), examiner.role, exam.organization?.name];
  const sentences: (LetterSentence | undefined)[] = [
    to === undefined ? undefined : { text: `${words.to}: ${to}`, of: [] },
    {
      text: `${words.from}: ${from.filter((part) => part !== undefined).join(', ')}`,
      of: [{ path: ['examiners', 0] }],
    },
    { text: `${words.about}: ${plainText(patientText(page))}`, of: [{ path: ['subject'] }] },
    {
      text: `${labels.examined}: ${periodText(exam.performed.start, exam.performed.end, labels.dates)}`,
      of: [{ path: ['performed'] }],
    },
  ];
  return { sentences: sentences.filter((one) => one !== undefined) };
}

/** To a specialist: why first, then what is known, found and asked for. */
export function toSpecialist(writing: Writing): LetterSection[] {
  const { page } = writing;
  const to = page.exam.conclusion?.plan?.find(({ kind }) => kind === 'referral')?.to;
  return [
    head(writing, to),
    reason(writing),
    history(writing),
    findings(writing, figureSentences(writing)),
    negatives(writing),
    notExamined(writing),
    takenOver(writing),
    summary(writing),
    plan(writing),
    told(writing),
    writer(writing),
  ];
}

/** To the general practitioner: the summary and what is asked of the practice first. */
export function toPractitioner(writing: Writing): LetterSection[] {
  return [
    head(writing, undefined),
    summary(writing),
    plan(writing),
    told(writing),
    history(writing),
    findings(writing),
    notExamined(writing),
    takenOver(writing),
    writer(writing),
  ];
}

function planSentence({ page: { teller, labels, exam } }: Writing, item: PlanItem): LetterSentence {
  const at = exam.conclusion?.plan?.indexOf(item) ?? 0;
  const details = [
    item.to ?? (item.service && teller.display('services', item.service)),
    item.urgency && teller.answer('urgency', item.urgency),
    item.due && `${labels.due} ${dateText(item.due, labels.dates)}`,
    item.guideline,
  ].filter((part) => part !== undefined && part !== '');
  return {
    text: `${teller.answer('plan', item.kind)}: ${item.text}${details.length > 0 ? ` (${details.join('; ')})` : ''}`,
    of: [{ path: ['conclusion', 'plan', at] }],
  };
}

function reason(writing: Writing): LetterSection {
  const { exam } = writing.page;
  const referrals = (exam.conclusion?.plan ?? []).filter(({ kind }) => kind === 'referral');
  return {
    heading: writing.words.headings.reason,
    sentences: [
      ...referrals.map((item) => planSentence(writing, item)),
      ...stated(exam.indication?.question, ['indication', 'question']),
    ],
  };
}

function history({ page, words }: Writing): LetterSection {
  const { exam } = page;
  const asked = knownToday(page).filter((one) => isOf(one, page, 'symptoms'));
  const has = (one: Statement): boolean => statesSomething(one, page.catalogue);
  const complaints = [...asked.filter(has), ...asked.filter((one) => !has(one))];
  return {
    heading: words.headings.history,
    sentences: [
      ...stated(exam.indication?.text, ['indication', 'text']),
      ...stated(exam.indication?.background, ['indication', 'background']),
      ...linesOf(complaints, page).map(lineSentence),
    ],
  };
}

/** Without what was taken over from an earlier exam and not looked at again. */
function knownToday({ exam }: Page): Statement[] {
  return exam.statements.filter((one) => !isUnconfirmed(one));
}

function isOf(statement: Statement, page: Page, section: string): boolean {
  const one = tell(statement, page);
  return 'section' in one && one.section === section;
}

function findings(
  { page, parts, words }: Writing,
  more: readonly LetterSentence[] = [],
): LetterSection {
  const signs = signLines(
    page,
    parts.flatMap((part) => part.signs),
  );
  return { heading: words.headings.findings, sentences: [...signs.map(lineSentence), ...more] };
}

/** Of the parts of the body in which something is abnormal, and of those that the conclusion rests on. */
function negatives({ page, parts, words }: Writing): LetterSection {
  const near = new Set(parts.map(({ section }) => section));
  const absent = knownToday(page).filter(
    (one) => isOf(one, page, 'negatives') && near.has(sectionOf(one, page.catalogue)),
  );
  return {
    heading: words.headings.negatives,
    sentences: linesOf(absent, page).map(lineSentence),
  };
}

function notExamined({ page, words }: Writing): LetterSection {
  const left = knownToday(page).filter((one) => isOf(one, page, 'notExamined'));
  return { heading: words.headings.notExamined, sentences: linesOf(left, page).map(lineSentence) };
}

/** Apart from what was found today, whatever it said when it was seen. */
function takenOver({ page }: Writing): LetterSection {
  const lines = takenOverLines(page.exam.statements.filter(isUnconfirmed), page);
  return { heading: page.labels.takenOver, sentences: lines.map(lineSentence) };
}

function summary({ page, words }: Writing): LetterSection {
  const { conclusion } = page.exam;
  const { labels, teller } = page;
  return {
    heading: words.headings.summary,
    sentences:
      conclusion === undefined
        ? [{ text: labels.noConclusion, of: [] }]
        : [
            ...stated(conclusion.text, ['conclusion', 'text']),
            {
              text: `${labels.concern}: ${teller.answer('concern', conclusion.concern)}`,
              of: [{ path: ['conclusion', 'concern'] }],
            },
            ...(conclusion.worries ?? []).map((text, at) => ({
              text: `${labels.worries}: ${text}`,
              of: [{ path: ['conclusion', 'worries', at] }],
            })),
          ],
  };
}

function plan(writing: Writing): LetterSection {
  const items = writing.page.exam.conclusion?.plan ?? [];
  return {
    heading: writing.words.headings.plan,
    sentences: items.map((item) => planSentence(writing, item)),
  };
}

function told({ page, words }: Writing): LetterSection {
  const { conclusion } = page.exam;
  const { labels } = page;
  const net = conclusion?.safetyNet;
  return {
    heading: words.headings.told,
    sentences: [
      ...(conclusion?.told ?? []).map(({ who, what }, at) => ({
        text: `${who}: ${what}`,
        of: [{ path: ['conclusion', 'told', at] }],
      })),
      ...stated(net?.text, ['conclusion', 'safetyNet', 'text']),
      ...(net?.returnIf ?? []).map((text, at) => ({
        text: `${labels.returnIf}: ${text}`,
        of: [{ path: ['conclusion', 'safetyNet', 'returnIf', at] }],
      })),
      ...stated(net?.reviewBy && `${labels.reviewBy}: ${dateText(net.reviewBy, labels.dates)}`, [
        'conclusion',
        'safetyNet',
        'reviewBy',
      ]),
      ...stated(net?.owner && `${labels.owner}: ${net.owner}`, [
        'conclusion',
        'safetyNet',
        'owner',
      ]),
    ],
  };
}

/** The first examiner, a place to sign, and what the record is. */
export function writer({ page, words }: Writing): LetterSection {
  const { exam, labels } = page;
  const [first] = exam.examiners;
  const name = [plainName(first.name) ?? first.key, first.role].filter(
    (part) => part !== undefined,
  );
  return {
    heading: words.headings.writer,
    sentences: [
      { text: name.join(', '), of: [{ path: ['examiners', 0] }] },
      { text: wordOf(labels.status, exam.status), of: [{ path: ['status'] }] },
      { text: `${words.signature}: ____________________`, of: [] },
    ],
  };
}

function stated(text: string | undefined, path: readonly (string | number)[]): LetterSentence[] {
  return text === undefined || text === '' ? [] : [{ text, of: [{ path }] }];
}

function lineSentence({ of, content }: Line): LetterSentence {
  return { text: plainText(content), of: of.map((statement) => ({ statement })) };
}
