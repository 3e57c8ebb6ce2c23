import { describe, expect, it } from 'vitest';
import type { Exam } from '../../src/index.ts';
import { concerns } from '../../src/model/conclusion.ts';
import { toHtml } from '../../src/report/index.ts';
import { emptyExam } from './empty-exam.ts';
import { pageText } from './reading/parsed-page.ts';

/** All that a head, a conclusion and a plan can hold, each in words that stand nowhere else. */
const whole = {
  ...emptyExam('full'),
  subject: {
    reference: 'Patient/quay-17',
    identifiers: [{ system: 'https://harbour.example/people', value: 'H-4711' }],
    name: { prefix: 'Dr', given: ['Vita', 'Anna'], family: 'Rope' },
    birthDate: '1971-06-05',
    gender: 'female',
  },
  examiners: [{ key: 'nurse', name: { text: 'Olle Sand' }, role: 'Harbour nurse' }],
  organization: { name: 'Clinic at the mole' },
  performed: { start: '2025-05-05T09:00:00+02:00', end: '2025-05-05T09:35:00+02:00' },
  indication: {
    text: 'Rubbing helmet',
    visit: 'surveillance',
    urgency: 'urgent',
    question: 'Is the sore healing?',
    background: 'Works at the crane',
  },
  conclusion: {
    text: 'Sore of the brow',
    concern: 'watch',
    worries: ['Grows since spring', 'Bleeds at work'],
    plan: [
      {
        key: 'p1',
        kind: 'referral',
        text: 'Look with a dermatoscope',
        urgency: 'asap',
        due: '2025-07-01',
        to: 'Skin clinic inland',
        guideline: 'House rule 9',
      },
    ],
    safetyNet: {
      text: 'Keep the strap off it',
      returnIf: ['It opens again', 'It swells'],
      reviewBy: '2025-08-02',
      owner: 'The harbour nurse in charge',
    },
    told: [{ who: 'The worker', what: 'What was found', at: '2025-05-05T09:33:00+02:00' }],
  },
} as const satisfies Exam;

/** Where a part stands, and all words of the page that come from it alone. */
const parts: readonly [path: string, words: readonly string[]][] = [
  ['subject.identifiers', ['H-4711']],
  ['subject.name', ['Dr Vita Anna Rope']],
  ['subject.birthDate', ['born 5 June 1971', '53 years']],
  ['subject.gender', ['female']],
  ['examiners.0.name', ['Olle Sand']],
  ['examiners.0.role', ['Harbour nurse']],
  ['organization', ['ClinicClinic at the mole']],
  ['performed.end', ['09:35']],
  ['indication', ['WhyRubbing helmet']],
  ['indication.visit', ['Surveillance']],
  ['indication.urgency', ['Urgent']],
  ['indication.question', ['QuestionIs the sore healing?']],
  ['indication.background', ['BackgroundWorks at the crane']],
  ['conclusion.worries', ['What worries: Grows since spring; Bleeds at work']],
  ['conclusion.plan.0.urgency', ['As soon as possible']],
  ['conclusion.plan.0.due', ['due 1 July 2025']],
  ['conclusion.plan.0.to', ['Skin clinic inland']],
  ['conclusion.plan.0.guideline', ['(House rule 9)']],
  ['conclusion.plan', ['Referral: Look with a dermatoscope']],
  ['conclusion.safetyNet', ['Safety net: Keep the strap off it']],
  ['conclusion.safetyNet.returnIf', ['Come back if: It opens again; It swells']],
  ['conclusion.safetyNet.reviewBy', ['Review by: 2 August 2025']],
  ['conclusion.safetyNet.owner', ['Who follows it up: The harbour nurse in charge']],
  ['conclusion.told', ['Told: The worker']],
  ['conclusion.told.0.at', ['(5 May 2025, 09:33']],
];

function without(path: string): Exam {
  const exam = structuredClone(whole) as object;
  const steps = path.split('.');
  const last = steps.pop() ?? '';
  // Paths of the table above lead through objects and lists of the exam.
  const holder = steps.reduce((at, step) => (at as Record<string, object>)[step] ?? {}, exam);
  delete (holder as Record<string, unknown>)[last];
  return exam as Exam;
}

const textOf = (exam: Exam): string => pageText(toHtml(exam));

describe('head, conclusion and plan', () => {
  it.each(parts)(
    '%s is told where it is stated, and leaves no word where it is not',
    (path, words) => {
      const [there, gone] = [textOf(whole), textOf(without(path))];
      for (const one of words) {
        expect(there).toContain(one);
        expect(gone).not.toContain(one);
      }
    },
  );

  it('tells all else as before when one part is not stated', () => {
    for (const [path] of parts) {
      const gone = textOf(without(path));
      for (const [other, words] of parts) {
        const isTouched = other.startsWith(path) || path.startsWith(other);
        // The role and the service stand in for what is not named; the age needs the date of birth.
        if (isTouched) continue;
        for (const one of words) expect(gone, `${one} without ${path}`).toContain(one);
      }
    }
  });

  it('says that there is no conclusion or plan, and shows neither in a record entered in error', () => {
    expect(textOf(without('conclusion'))).toContain('No conclusion is stated.');
    expect(textOf(without('conclusion.plan'))).toContain('No plan is stated.');
    const wrong = textOf({ ...whole, status: 'entered-in-error' });
    for (const word of ['Sore of the brow', 'dermatoscope', 'No plan', 'No conclusion']) {
      expect(wrong).not.toContain(word);
    }
  });

  it.each(concerns.map((concern, at) => [concern, at + 1] as const))(
    'the level of concern %s is step %i by words and by what is filled',
    (concern, step) => {
      const html = toHtml({ ...whole, conclusion: { ...whole.conclusion, concern } });
      expect(pageText(html)).toContain(`${step} of ${concerns.length}`);
      const [, shown = ''] = html.split(`class="concern concern-${concern}"`);
      const [line = ''] = shown.split('</p>');
      expect(line.match(/class="step on"/g)).toHaveLength(step);
      expect(line.match(/class="step(?: on)?"/g)).toHaveLength(concerns.length);
    },
  );

  it('lists what is most urgent first, what has no urgency last, and presses all but routine', () => {
    const urgencies = ['routine', undefined, 'asap', 'stat', 'urgent'] as const;
    const plan = urgencies.map((urgency, at) => ({
      key: `p${at}`,
      kind: 'advice' as const,
      text: `Item ${urgency ?? 'unsaid'}.`,
      ...(urgency && { urgency }),
    }));
    const [first, ...more] = plan;
    const html = toHtml({
      ...whole,
      conclusion: { ...whole.conclusion, plan: first ? [first, ...more] : [] },
    } as Exam);
    const [, section = ''] = html.split('id="plan"');
    const order = [...section.matchAll(/Item ([a-z]+)\./g)].map(([, urgency]) => urgency);
    expect(order).toEqual(['stat', 'urgent', 'asap', 'routine', 'unsaid']);
    const pressing = [...section.matchAll(/class="pressing">([^<]*)</g)].map(([, word]) => word);
    expect(pressing).toEqual(['Immediately', 'Urgent', 'As soon as possible']);
  });
});
