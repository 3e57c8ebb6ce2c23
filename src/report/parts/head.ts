import type { HumanName } from '../../model/people.ts';
import { type Content, element, joined, list, section, words } from '../html.ts';
import { type Page, separated } from '../page.ts';

/** Who, when, by whom, and in what state the record is. */
export function headPart({ exam, catalogue, labels }: Page): Content {
  const { subject, performed, examiners } = exam;
  const identifiers = (subject.identifiers ?? []).map(({ value }) => words(value));
  const protocol = catalogue.protocols.get(exam.protocol.id)?.display ?? exam.protocol.id;
  const rows: [string, Content][] = [
    [
      labels.patient,
      separated([
        nameText(subject.name),
        subject.birthDate && `${labels.born} ${subject.birthDate}`,
        ...identifiers,
        subject.reference && words(subject.reference),
      ]),
    ],
    [labels.examined, separated([performed.start, performed.end], ' – ')],
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
    [labels.recorded, exam.recorded],
    [labels.protocol, `${protocol}, ${labels.version} ${exam.protocol.version}`],
  ];
  return element(
    'header',
    {},
    element('h1', {}, labels.title),
    element(
      'p',
      { class: `status status-${exam.status}` },
      element('strong', {}, labels.status[exam.status] ?? exam.status),
    ),
    element(
      'dl',
      {},
      rows.map(([name, value]) => joined(element('dt', {}, name), element('dd', {}, value ?? '–'))),
    ),
  );
}

function nameText(name: HumanName | undefined): Content {
  if (name === undefined) return undefined;
  const { text, prefix, given = [], family } = name;
  const parts = text === undefined ? [prefix, ...given, family] : [text];
  return words(parts.filter((part) => part !== undefined).join(' '));
}

/** Every step of the record with its version, and the cautions that go with each page. */
export function recordPart({ exam, labels, teller }: Page): Content {
  const steps = (exam.history ?? []).map((event) =>
    joined(
      `${labels.version} ${event.version}: ${teller.answer('event', event.action)}, ${event.at}, `,
      words(examinerName(exam.examiners, event.by)),
      event.reason && joined('. ', words(event.reason)),
    ),
  );
  return section('record', labels.record, list(steps));
}

function examinerName(examiners: Page['exam']['examiners'], key: string): string {
  const name = examiners.find((examiner) => examiner.key === key)?.name;
  return name?.text ?? [...(name?.given ?? []), name?.family ?? key].join(' ');
}

export function cautionPart({ labels }: Page): Content {
  return element('footer', {}, element('h2', {}, labels.cautionHeading), list(labels.cautions));
}
