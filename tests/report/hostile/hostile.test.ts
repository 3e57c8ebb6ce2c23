import { describe, expect, it } from 'vitest';
import type { Exam, Note } from '../../../src/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import { sampled } from '../../sampled.ts';
import { places, texts, textsThatBreak, textsThatBreakLetters } from './hostile-texts.ts';

describe('a page with hostile text in every string that takes text', () => {
  it('has many such strings in the examples', () => {
    expect(places.map(({ paths }) => paths.length)).toMatchInlineSnapshot(`
      [
        40,
        37,
        39,
        51,
        49,
        75,
      ]
    `);
  });

  it('keeps its structure for a sample of them; all in the slow suite', () => {
    expect(texts).toHaveLength(1000);
    expect(textsThatBreak(texts.slice(0, 12))).toEqual([]);
  });
});

describe('letters with hostile text in every string that takes text', () => {
  it('keep their structure for a sample of them; all in the slow suite', () => {
    expect(textsThatBreakLetters(texts.slice(120, 123))).toEqual([]);
  });
});

/** The page of 125,000 notes threw once: they were passed as arguments of one call. */
const MANY = sampled(20_000, 125_000);

describe('a page of a person', () => {
  const [{ exam } = { exam: undefined }] = places;
  const withName = (subject: Exam['subject']): string => {
    if (exam === undefined) throw new Error('no example');
    return toHtml({ ...exam, subject });
  };

  it('without a name says so', () => {
    expect(withName({ birthDate: '1990' })).toContain('<strong>name not stated</strong>');
  });

  it('with a name from right to left, or of three scripts, keeps it apart from what follows', () => {
    for (const text of ['יעל בת־ים', 'فاطمة الزهراء', 'Ивана Ōki يوسف']) {
      expect(withName({ name: { text } })).toContain(`<strong><bdi>${text}</bdi></strong>`);
    }
  });

  it('with thousands of notes is made, with every one of them', () => {
    const notes = Array.from(
      { length: MANY },
      (_, at): Note => ({ key: `n${at}`, kind: 'note', text: `Note ${at}.` }),
    );
    if (exam === undefined) throw new Error('no example');
    const html = toHtml({ ...exam, statements: notes });
    expect(html.split('<li data-of="n').length - 1).toBe(MANY);
  });
});
