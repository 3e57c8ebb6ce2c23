import type { Path } from '../issues/path.ts';
import { isUnconfirmed } from '../kinds/facets/base.ts';
import { sayingsOf } from '../kinds/registries/meanings.ts';
import { tell } from '../kinds/registries/pages.ts';
import type { PlanItem } from '../model/conclusion.ts';
import type { Key } from '../model/primitive.ts';
import type { Statement } from '../model/statement.ts';
import { dateText, dayText } from '../report/dates.ts';
import type { Page } from '../report/page.ts';
import { plainName } from '../report/parts/head.ts';
import { placesText } from '../report/places.ts';
import { type Writing, writer } from './clinical.ts';
import type { LetterSection, LetterSentence } from './letter.ts';
import type { LetterWords } from './letter-words.ts';
import { spokenSigns } from './spoken-signs.ts';

/**
 * To the patient in plain words. Findings are named by the sign and its place alone; a sign that could
 * alarm, a suspicion and a name of a disease are left for a person to tell, and nothing is added.
 */
export function toPatient(writing: Writing): {
  readonly sections: LetterSection[];
  readonly leftOut: readonly Key[];
} {
  const { page, parts, words } = writing;
  const { exam, labels } = page;
  const signs = parts.flatMap((part) => part.signs);
  const said = signs.filter((sign) => isSpoken(sign, page));
  const leftOut = signs.filter((sign) => !isSpoken(sign, page)).map(({ key }) => key);
  const name = plainName(exam.subject.name);
  // What was not looked at again is neither a finding nor the want of one.
  const takenOver = exam.statements.filter(isUnconfirmed);
  const start = [
    ...(name === undefined
      ? []
      : [sentence(filled(words.patient.greeting, 'name', name), ['subject', 'name'])]),
    sentence(filled(words.patient.examined, 'date', dayText(exam.performed.start, labels.dates)), [
      'performed',
      'start',
    ]),
    ...(exam.indication === undefined
      ? []
      : [
          sentence(filled(words.patient.came, 'text', ended(exam.indication.text)), [
            'indication',
            'text',
          ]),
        ]),
  ];
  const seen: LetterSentence[] = [
    ...said.map((sign) => ({
      text: filled(words.patient.sign, 'sign', signInPlain(sign, page)),
      of: [{ statement: sign.key }],
    })),
    ...(said.length + leftOut.length + takenOver.length === 0
      ? [{ text: words.patient.nothing, of: [] }]
      : []),
    ...(leftOut.length > 0 || takenOver.length > 0 ? [{ text: words.patient.more, of: [] }] : []),
    ...notSeen(writing),
  ];
  const sections = [
    { sentences: start },
    { heading: words.headings.seen, sentences: seen },
    { heading: words.headings.next, sentences: next(writing) },
    { heading: words.headings.return, sentences: comeBack(writing) },
    writer(writing),
  ];
  return { sections, leftOut };
}

/** Named in a letter to the patient: a sign of the table of what alarms nobody, asserted and no disease. */
function isSpoken(sign: Statement, { catalogue }: Page): boolean {
  return sayingsOf(sign, catalogue).every(({ of, polarity }) => {
    if (of.table !== 'findings') return false;
    const row = catalogue.findings.get(of.code);
    return polarity === 'states' && row?.disorder !== true && spokenSigns.has(of.code);
  });
}

function signInPlain(sign: Statement, page: Page): string {
  const { region, side } = 'region' in sign ? sign : {};
  const name = page.teller.subject(sign);
  return region === undefined ? name : `${name}: ${page.teller.place(region, side)}`;
}

function notSeen({ page, words }: Writing): LetterSentence[] {
  return page.exam.statements.flatMap((statement): LetterSentence[] => {
    if (isUnconfirmed(statement)) return [];
    const told = tell(statement, page);
    if (!('section' in told) || told.section !== 'notExamined' || !('region' in statement))
      return [];
    const { region, side } = statement;
    if (region === undefined) return [];
    const place = placesText([{ region, side }], page).replace(/^: /, '');
    return [
      { text: filled(words.patient.notSeen, 'place', place), of: [{ statement: statement.key }] },
    ];
  });
}

/**
 * What is planned. Treatment, advice and review stand in the examiner's words; those of a referral or a
 * test are written for a colleague, so the patient is told the service and how soon.
 */
function next({ page, words }: Writing): LetterSentence[] {
  const { exam, labels } = page;
  return (exam.conclusion?.plan ?? []).flatMap((item, at): LetterSentence[] => {
    const path = ['conclusion', 'plan', at];
    const { urgency, due } = item;
    const soon = urgency !== undefined && urgency !== 'routine';
    return [
      sentence(planned(item, page, words), path),
      ...(soon ? [sentence(words.patient.urgency[urgency], path)] : []),
      ...(due === undefined
        ? []
        : [sentence(filled(words.patient.due, 'date', dateText(due, labels.dates)), path)]),
    ];
  });
}

function planned({ kind, text, service }: PlanItem, { teller }: Page, words: LetterWords): string {
  if (kind === 'investigation') return words.patient.investigation;
  if (kind !== 'referral') return `${ended(text)}.`;
  if (service === undefined || service === 'other') return words.patient.referralUnnamed;
  return filled(words.patient.referral, 'to', teller.display('services', service));
}

function comeBack({ page, words }: Writing): LetterSentence[] {
  const { labels, exam } = page;
  const net = exam.conclusion?.safetyNet;
  const path = ['conclusion', 'safetyNet'];
  return [
    net && sentence(`${ended(net.text)}.`, [...path, 'text']),
    ...(net?.returnIf ?? []).map((text, at) =>
      sentence(`${labels.returnIf}: ${ended(text)}.`, [...path, 'returnIf', at]),
    ),
    net?.reviewBy &&
      sentence(filled(words.patient.reviewBy, 'date', dateText(net.reviewBy, labels.dates)), [
        ...path,
        'reviewBy',
      ]),
    net?.owner &&
      sentence(filled(words.patient.owner, 'text', ended(net.owner)), [...path, 'owner']),
    { text: words.patient.ask, of: [] },
  ].filter((one) => typeof one === 'object');
}

function sentence(text: string, path: Path): LetterSentence {
  return { text, of: [{ path }] };
}

/** Words of the exam without the stop that the sentence around them brings. */
function ended(text: string): string {
  return text.replace(/[.\s]+$/, '');
}

/** The text is put in as it is: `$` has no meaning of its own. */
export function filled(pattern: string, name: string, text: string): string {
  return pattern.replace(`{${name}}`, () => text);
}
