import { describe, expect, it } from 'vitest';
import { type Exam, type Finding, parseExam } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
import { createNegator } from '../../src/report/words/negatives.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { sampleExam } from '../../src/testing/index.ts';
import { sampled } from '../sampled.ts';
import { emptyExam } from './empty-exam.ts';
import { misreadIn, type Tongue, toldTexts, tongues } from './reading/told-once.ts';

const both = Object.keys(tongues) as Tongue[]; // the keys of it

describe.each(both)('negatives in %s', (tongue) => {
  const { words, language, denies } = tongues[tongue];
  const negated = createNegator(words.denials, words.notFound);

  it('deny each sign of the table, in words that differ from the sign', () => {
    for (const { code, display } of builtInCatalogue.findings.values()) {
      const name = language.displays.findings?.[code] ?? display;
      const text = negated(code, name);
      expect(text, code).toMatch(denies);
      expect(text, code).not.toBe(name);
    }
  });

  it('deny each complaint of the table by itself', () => {
    const denied = createNegator(words.deniedComplaints, words.answers.no);
    const { before, own } = words.deniedComplaints;
    const codes = [
      ...Object.values(before).flatMap((some) => some.trim().split(/\s+/)),
      ...Object.keys(own),
    ];
    expect(codes.sort()).toEqual([...builtInCatalogue.symptoms.keys()].sort());
    for (const { code, display } of builtInCatalogue.symptoms.values()) {
      const name = language.displays.symptoms?.[code] ?? display;
      expect(denied(code, name), code).toMatch(denies);
      expect(denied(code, name), code).not.toBe(name);
    }
    expect(denied('clinic.salt-thirst', 'Salt thirst')).toMatch(denies);
  });

  it('are not parted at the end of a line from what they deny', () => {
    const denied = createNegator(words.deniedComplaints, words.answers.no);
    for (const { code, display } of builtInCatalogue.findings.values()) {
      expect(negated(code, display), code).not.toMatch(/\b(no|not|kein|keine|keinen|nicht) /i);
    }
    for (const { code, display } of builtInCatalogue.symptoms.values()) {
      expect(denied(code, display), code).not.toMatch(/\b(no|not|kein|keine|keinen|nicht) /i);
    }
  });

  it('name only signs of the table', () => {
    const { before, own } = words.denials;
    const codes = [
      ...Object.values(before).flatMap((some) => some.trim().split(/\s+/)),
      ...Object.keys(own),
    ];
    expect(codes.filter((code) => !builtInCatalogue.findings.has(code))).toEqual([]);
    expect(new Set(codes).size).toBe(codes.length);
  });

  it('have words for signs that a clinic adds', () => {
    expect(negated('clinic.salt-crust', 'Salt crust').replace('\u00a0', ' ')).toBe(
      `${words.notFound}: Salt crust`,
    );
  });

  it('of seeded exams never read as if the sign were there; each statement is told once', () => {
    for (let seed = 1; seed <= sampled(4, 12); seed++) {
      expect(misreadIn(sampleExam(seed), tongue), `seed ${seed}`).toEqual([]);
    }
  });
});

const empty = emptyExam('neck-lump');

const paired = ['ib', 'iia', 'iib', 'iii', 'iv', 'va', 'vb', 'supraclav'];
const sides = ['right', 'left'] as const;

function noNode(region: string, side?: 'right' | 'left'): Finding {
  return {
    key: `${region}-${side ?? 'middle'}`,
    kind: 'finding',
    finding: 'node-palpable',
    presence: 'absent',
    region: `ln-${region}`,
    ...(side && { side }),
    methods: ['palpation'],
  };
}

function linesOf(statements: readonly Finding[], tongue: Tongue): readonly string[] {
  const exam: Exam = { ...empty, statements };
  expect(parseExam(exam).issues).toEqual([]);
  const { language, words } = tongues[tongue];
  return [...new Set([...toldTexts(toHtml(exam, { language, words })).values()].flat())];
}

describe('negatives of many places', () => {
  const all = [
    noNode('ia'),
    noNode('vi'),
    ...paired.flatMap((region) => sides.map((side) => noNode(region, side))),
  ];

  it('stand in one line that names each level, by side', () => {
    expect(linesOf(all, 'english')).toEqual([
      'No\u00a0palpable node: Node level IA; Node level VI – right and left: Node levels IB to VB; Supraclavicular nodes [Palpation]',
    ]);
    expect(linesOf(all, 'german')).toEqual([
      'Kein\u00a0tastbarer Lymphknoten: Lymphknoten-Level IA; Lymphknoten-Level VI – rechts und links: Lymphknoten-Level IB bis VB; Supraklavikuläre Lymphknoten [Palpation]',
    ]);
  });

  it('leave out of a run what is not said of', () => {
    const some = all.filter(({ key }) => key !== 'iia-right' && key !== 'iii-left');
    expect(linesOf(some, 'english')).toEqual([
      'No\u00a0palpable node: Node level IA; Node level VI – right and left: Node level IB; Node level IIB; Node levels IV to VB; Supraclavicular nodes – right: Node level III – left: Node level IIA [Palpation]',
    ]);
  });

  it('say their exceptions', () => {
    const skin: Finding = {
      key: 'skin',
      kind: 'finding',
      finding: 'vesicles',
      presence: 'absent',
      region: 'skin',
      except: [{ region: 'jaw-angle', side: 'left' }],
    };
    expect(linesOf([skin], 'english')).toEqual([
      'No\u00a0vesicles: Skin of face and neck (except Angle of the mandible, left)',
    ]);
    expect(linesOf([skin], 'german')[0]).toContain(german.texts.except);
  });

  it('of another day say so in the line itself', () => {
    const carried = {
      exam: 'quay-0',
      statement: 'x',
      at: '2024-05-06T09:00:00+02:00',
      confirmed: false,
    } as const;
    const [line] = linesOf([{ ...noNode('ia'), carried }], 'english');
    expect(line).toMatch(/^Not looked at today. Said then: No\u00a0palpable node: Node level IA /);
    expect(line).toContain('seen 6 May 2024, 09:00 (UTC+2)');
  });
});
