import type { DetectedIssue } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  checkExam,
  type Exam,
  finishExamOrThrow,
  fromBundle,
  recordPrompts,
  startExam,
  state,
  toBundle,
} from '../../src/index.ts';
import { parseExam } from '../../src/model/parse-exam.ts';
import { toHtml } from '../../src/report/index.ts';
import { germanWords } from '../../src/report/words/german.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { sampleExam } from '../../src/testing/index.ts';
import * as r4 from '../../src/validate/versions/r4.ts';
import * as r4b from '../../src/validate/versions/r4b.ts';
import * as r5 from '../../src/validate/versions/r5.ts';
import { clinic } from '../clinic.ts';

const versions = [
  ['R4', r4.validateBundle],
  ['R4B', r4b.validateBundle],
  ['R5', r5.validateBundle],
] as const;
const types = ['collection', 'document', 'transaction'] as const;

let draft = startExam({
  id: 'E-1',
  subject: {
    identifiers: [{ system: 'https://clinic.example/patients', value: 'P-1' }],
    birthDate: '1960-01-01',
  },
  examiners: [{ key: 'nurse' }, { key: 'doctor', role: 'consultant' }],
  performed: { start: '2025-05-05T09:00:00+02:00' },
  recorded: '2025-05-05T10:00:00+02:00',
  protocol: { id: 'neck-lump', version: '1.0.0' },
});
draft = state(draft, {
  kind: 'symptom',
  key: 'hoarse',
  symptom: 'sym-throat.hoarseness',
  answer: 'yes',
  duration: { value: '8', unit: 'wk' },
});
const plain = finishExamOrThrow(draft, 'final');
const rules = { ruleSets: ['ng12-england'] } as const;

function shownIn(exam: Exam): Exam {
  return recordPrompts(exam, checkExam(exam, rules).prompts, '2025-05-05T09:30:00+02:00');
}

const exam: Exam = {
  ...plain,
  prompts: [
    {
      prompt: 'R15:larynx',
      version: '1',
      ruleSet: 'nice-ng12',
      urgency: 'urgent',
      text: 'Consider a suspected cancer pathway referral',
      source: 'NG12',
      shown: '2025-05-05T09:30:00+02:00',
      about: ['hoarse'],
      answer: {
        answer: 'dismissed',
        by: 'doctor',
        at: '2025-05-05T09:40:00+02:00',
        reason: 'Seen by the clinic last week',
      },
    },
    {
      prompt: 'R15:larynx#2',
      version: '1',
      ruleSet: 'nice-ng12',
      urgency: 'prompt',
      text: 'Consider an X-ray',
      source: 'NG12',
      shown: '2025-05-05T09:30:00+02:00',
      answer: { answer: 'followed', by: 'nurse', at: '2025-05-05T09:41:00+02:00' },
    },
    {
      prompt: 'R9',
      version: '2',
      ruleSet: 'other',
      urgency: 'prompt',
      text: 'Shown and left',
      source: 'common practice, no source',
      shown: '2025-05-05T09:31:00+02:00',
    },
  ],
  judgements: [
    {
      statement: 'hoarse',
      judgement: 'unexplained',
      by: 'doctor',
      at: '2025-05-05T09:35:00+02:00',
      reason: 'No cold, no shouting',
    },
    { statement: 'hoarse', judgement: 'persistent', by: 'nurse', at: '2025-05-05T09:36:00+02:00' },
  ],
};

describe('prompts and judgements in the record', () => {
  it('leave as DetectedIssue with mitigation, and as observations', () => {
    const entries = toBundle(exam).value?.entry ?? [];
    const issues = entries.flatMap(({ resource }) =>
      resource?.resourceType === 'DetectedIssue' ? [resource as DetectedIssue] : [],
    );
    const [first, second, third] = issues;
    const observation = entries.find(({ resource }) => {
      const text = JSON.stringify(resource);
      return text.startsWith('{"resourceType":"Observation"') && text.includes('"E-1|hoarse"');
    });
    expect(first).toMatchObject({
      status: 'final',
      severity: 'high',
      code: { text: 'R15:larynx' },
      detail: 'Consider a suspected cancer pathway referral',
      identifiedDateTime: '2025-05-05T09:30:00+02:00',
      implicated: [{ reference: observation?.fullUrl }],
      mitigation: [
        { date: '2025-05-05T09:40:00+02:00', action: { text: 'Seen by the clinic last week' } },
      ],
    });
    expect(second?.mitigation?.[0]?.action.text).toBe('Followed');
    expect(third?.mitigation).toBeUndefined();
  });

  it.each(versions)('are valid and come back equal in %s, of every type', (version, check) => {
    for (const bundleType of types) {
      const sent = toBundle(exam, { ...clinic, fhirVersion: version, bundleType });
      const { valid, issues } = check(sent.value);
      expect(valid, JSON.stringify(issues.filter(({ severity }) => severity === 'error'))).toBe(
        true,
      );
      const read = fromBundle(sent.value, clinic);
      expect(read.issues).toEqual([]);
      expect(read.remainder).toEqual([]);
      expect(read.value).toEqual(exam);
    }
  });

  it.each(versions)('of a withdrawn record are in error too, in %s', (version) => {
    const at = '2025-05-05T11:00:00+02:00';
    const retracted: Exam = {
      ...exam,
      status: 'entered-in-error',
      recorded: at,
      history: [{ action: 'retract', by: 'doctor', at, reason: 'Other patient', version: 1 }],
    };
    const sent = toBundle(retracted, { fhirVersion: version });
    expect(JSON.stringify(sent.value)).toMatch(/"DetectedIssue".{0,900}"entered-in-error"/s);
    expect(fromBundle(sent.value).value).toEqual(retracted);
  });

  it('stand on the page, in both languages', () => {
    const page = toHtml(exam);
    for (const words of [
      'Seen by the clinic last week',
      'Shown and left',
      'Unexplained',
      'Set aside',
    ])
      expect(page).toContain(words);
    const other = toHtml(exam, { language: german, words: germanWords });
    for (const words of ['Zurückgestellt', 'Ungeklärt', 'Anhaltend'])
      expect(other).toContain(words);
  });

  it('come from a check, are added once, and are known to the next', () => {
    const once = shownIn(plain);
    expect(once.prompts?.length).toBeGreaterThan(0);
    expect(parseExam(once).issues).toEqual([]);
    expect(shownIn(once)).toEqual(once);
    const prompts = (once.prompts ?? []).map((prompt) => ({
      ...prompt,
      answer: {
        answer: 'dismissed' as const,
        by: 'doctor',
        at: '2025-05-05T09:40:00+02:00',
        reason: 'Known',
      },
    }));
    const [again] = checkExam({ ...once, prompts }, rules).prompts;
    expect(again?.dismissed).toMatchObject({ by: 'doctor', reason: 'Known' });
  });

  it('name examiners and statements of the exam, and a reason where set aside', () => {
    const [first, second] = exam.prompts ?? [];
    const [judged] = exam.judgements ?? [];
    if (first?.answer === undefined || second === undefined || judged === undefined) return;
    const { reason: _, ...bare } = first.answer;
    const broken = {
      ...exam,
      prompts: [{ ...first, about: ['gone'], answer: { ...bare, by: 'nobody' } }, second],
      judgements: [{ ...judged, statement: 'gone', by: 'nobody' }],
    };
    expect(parseExam(broken).issues.map(({ code, path }) => [code, path.join('.')])).toEqual([
      ['unresolved-key', 'prompts.0.answer.by'],
      ['unresolved-key', 'prompts.0.about.0'],
      ['unresolved-key', 'judgements.0.statement'],
      ['unresolved-key', 'judgements.0.by'],
      ['missing-reason', 'prompts.0.answer.reason'],
    ]);
  });

  it('are drawn in sample exams', () => {
    const exams = Array.from({ length: 40 }, (_, seed) => sampleExam(seed, { size: 'small' }));
    expect(exams.filter(({ prompts }) => prompts !== undefined).length).toBeGreaterThan(5);
    expect(exams.filter(({ judgements }) => judgements !== undefined).length).toBeGreaterThan(3);
  });
});
