import type { HumanName } from '../../model/people.ts';
import { dayText, periodText, time, yearsAt } from '../dates.ts';
import { type Content, element, joined, list, section, words } from '../html.ts';
import { type Page, separated } from '../page.ts';
import { wordOf } from '../words/report-words.ts';

/** Whose page this is and in what state, at the top of the screen and of every printed page. */
export function stripPart(page: Page): Content {
  const { exam, labels } = page;
  return element(
    'aside',
    { class: `strip strip-${exam.status}`, 'aria-label': labels.patient },
    element('strong', { class: 'strip-status' }, wordOf(labels.statusShort, exam.status)),
    element('span', {}, identityText(page)),
    element(
      'time',
      { datetime: exam.performed.start },
      `${labels.examined} ${dayText(exam.performed.start, labels.dates)}`,
    ),
  );
}

/** Who, when, by whom, where and why, and in what state the record is. */
export function headPart(page: Page): Content {
  const { exam, catalogue, labels, teller } = page;
  const { performed, examiners, indication } = exam;
  const protocol = catalogue.protocols.get(exam.protocol.id)?.display ?? exam.protocol.id;
  const rows: [string, Content][] = [
    [labels.patient, patientText(page)],
    [
      labels.why,
      indication && [
        words(indication.text),
        (indication.visit || indication.urgency) && [
          ' (',
          separated(
            [
              indication.visit && teller.answer('visit', indication.visit),
              indication.urgency && teller.answer('urgency', indication.urgency),
            ],
            ', ',
          ),
          ')',
        ],
      ],
    ],
    [labels.question, indication?.question && words(indication.question)],
    [labels.background, indication?.background && words(indication.background)],
    [
      labels.examined,
      element(
        'time',
        { datetime: performed.start },
        periodText(performed.start, performed.end, labels.dates),
      ),
    ],
    [
      labels.by,
      separated(
        examiners.map((examiner) =>
          separated(
            [nameText(examiner.name) ?? words(examiner.key), examiner.role && words(examiner.role)],
            ', ',
          ),
        ),
      ),
    ],
    [
      labels.clinic,
      exam.organization && (exam.organization.name ? words(exam.organization.name) : undefined),
    ],
    [labels.protocol, `${protocol}, ${labels.version} ${exam.protocol.version}`],
    [labels.recorded, time(exam.recorded, labels.dates)],
  ];
  return element(
    'header',
    {},
    element('h1', {}, labels.title),
    element(
      'p',
      { class: `status status-${exam.status}` },
      element('strong', {}, wordOf(labels.status, exam.status)),
    ),
    element(
      'dl',
      { class: 'facts' },
      rows
        .filter(([, value]) => value !== undefined && value !== false && value !== '')
        .map(([name, value]) =>
          element('div', {}, element('dt', {}, name), element('dd', {}, value)),
        ),
    ),
  );
}

/** Name, date of birth and numbers: enough to tell whose page it is. */
export function identityText({ exam: { subject }, labels }: Page): Content {
  return separated(
    [
      element('strong', {}, nameText(subject.name) ?? labels.noName),
      subject.birthDate && `${labels.born} ${dayText(subject.birthDate, labels.dates)}`,
      ...(subject.identifiers ?? []).map(({ value }) => words(value)),
      subject.identifiers === undefined && subject.reference && words(subject.reference),
    ],
    ' · ',
  );
}

/** Name, age on the day of the exam, sex, date of birth and numbers. */
export function patientText({ exam, labels }: Page): Content {
  const { subject, performed } = exam;
  const years = yearsAt(subject.birthDate, performed.start);
  return separated(
    [
      element('strong', {}, nameText(subject.name) ?? labels.noName),
      years && `${years} ${labels.years}`,
      subject.gender && wordOf(labels.sex, subject.gender),
      subject.birthDate && [`${labels.born} `, time(subject.birthDate, labels.dates)],
      ...(subject.identifiers ?? []).map(({ value }) => words(value)),
      subject.reference && words(subject.reference),
    ],
    ' · ',
  );
}

function nameText(name: HumanName | undefined): Content {
  const text = plainName(name);
  return text === undefined ? undefined : words(text);
}

export function plainName(name: HumanName | undefined): string | undefined {
  if (name === undefined) return undefined;
  const { text, prefix, given = [], family } = name;
  const parts = text === undefined ? [prefix, ...given, family] : [text];
  const there = parts.filter((part) => part !== undefined).join(' ');
  return there === '' ? undefined : there;
}

/** Every step of the record with its version. */
export function recordPart({ exam, labels, teller }: Page): Content {
  const steps = (exam.history ?? []).map((event) =>
    joined(
      `${labels.version} ${event.version}: ${teller.answer('event', event.action)}, `,
      time(event.at, labels.dates),
      ', ',
      words(examinerName(exam.examiners, event.by)),
      event.reason && joined('. ', words(event.reason)),
    ),
  );
  return section('record', labels.record, list(steps));
}

export function examinerName(examiners: Page['exam']['examiners'], key: string): string {
  return plainName(examiners.find((examiner) => examiner.key === key)?.name) ?? key;
}

/** The cautions that go with each page. */
export function cautionPart({ labels }: Page): Content {
  return element('footer', {}, element('h2', {}, labels.cautionHeading), list(labels.cautions));
}
