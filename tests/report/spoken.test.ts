import { describe, expect, it } from 'vitest';
import { type Exam, parseExam } from '../../src/index.ts';
import { germanIssues } from '../../src/issues/german/index.ts';
import { germanWords, toHtml } from '../../src/report/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { sampleExam } from '../../src/testing/index.ts';
import { emptyExam } from './empty-exam.ts';
import { savedExamples } from './saved-examples.ts';

const at = '2025-05-05T09:30:00+02:00';
const warned: Exam = {
  ...emptyExam('neck-lump'),
  statements: [{ key: 'hoarse', kind: 'symptom', symptom: 'sym-throat.hoarseness', answer: 'yes' }],
  prompts: [
    {
      prompt: 'R1',
      version: '1',
      ruleSet: 'own',
      urgency: 'urgent',
      text: 'Consider a referral',
      source: 'common practice, no source',
      shown: at,
      answer: { answer: 'followed', by: 'nurse', at },
    },
  ],
  judgements: [{ statement: 'hoarse', judgement: 'unexplained', by: 'nurse', at }],
};

/** What a reader sees: without marks of HTML and what they hold for programs. */
function seen(html: string): string {
  return html.replace(/<style>[\s\S]*?<\/style>/, '').replaceAll(/<[^>]*>/g, ' ');
}

const stamp = /\d{4}-\d{2}-\d{2}T\d{2}/;

describe('dates on a page', () => {
  it('are written as people write them, those of prompts and judgements too', () => {
    expect(parseExam(warned).issues).toEqual([]);
    const text = seen(toHtml(warned));
    expect(text).not.toMatch(stamp);
    expect(text.match(/5 May 2025, 09:30 \(UTC\+2\)/g)).toHaveLength(3);
  });

  it('of examples and seeded exams with an exam before them are no stamps', () => {
    const seeded = Array.from({ length: 6 }, (_, seed) => sampleExam(seed + 1));
    for (const exam of [...savedExamples.map(([, one]) => one), ...seeded]) {
      const prior: Exam = { ...exam, id: 'before' };
      expect(seen(toHtml(exam, { checks: { prior, samePatient: 'assumed' } }))).not.toMatch(stamp);
    }
  });
});

describe('a judgement', () => {
  it('names what it is of in words, and no key', () => {
    const [, part = ''] = toHtml(warned).split('id="warnings"');
    const [section = ''] = part.split('</section>');
    expect(seen(section)).toContain('Hoarseness');
    expect(seen(section)).not.toContain('hoarse:');
  });
});

describe('what does not agree', () => {
  it('is told in the language of the page where its sentences are given', () => {
    const exam: Exam = {
      ...emptyExam('skin-lesion'),
      statements: [
        {
          key: 'a',
          kind: 'finding',
          finding: 'vesicles',
          presence: 'present',
          region: 'temple',
          side: 'left',
        },
        {
          key: 'b',
          kind: 'finding',
          finding: 'vesicles',
          presence: 'absent',
          region: 'skin',
          side: 'both',
        },
      ],
    };
    const part = (html: string): string =>
      html.split('id="disagree"')[1]?.split('</section>')[0] ?? '';
    const options = { language: german, words: germanWords };
    const english = part(toHtml(exam, options));
    const spoken = part(toHtml(exam, { ...options, issues: germanIssues }));
    expect(english).toContain('<span lang="en">');
    expect(spoken).not.toContain('<span lang="en">');
    expect(spoken.length).toBeGreaterThan(20);
  });
});
