import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { digitPreference } from '../../src/audit/digits.ts';
import {
  auditCsv,
  auditHtml,
  createAuditor,
  kappa,
  limitsOfAgreement,
  recallHead,
  recallRow,
  recallsOf,
  recallTask,
  recallTodo,
} from '../../src/audit/index.ts';
import { isLate } from '../../src/audit/recall.ts';
import { limitsOfSums, noDifferences, withDifference } from '../../src/audit/sums/differences.ts';
import type { Exam, Statement } from '../../src/index.ts';
import { sampleExam } from '../../src/testing/index.ts';
import { validateBundle } from '../../src/validate/versions/all-r4.ts';
import { structure } from '../report/reading/structure.ts';

const folder = join(import.meta.dirname, '../../examples/exams');
const exams: readonly Exam[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => JSON.parse(readFileSync(join(folder, file), 'utf8')));

/** Bland JM, Altman DG, 1986, Lancet 327:307-310, table: first readings of two meters of peak flow. */
const large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

describe('agreement', () => {
  it('has the limits that Bland and Altman give for their readings', () => {
    const differences = large.reduce(
      (sum, value, at) => withDifference(sum, String(value), String(mini[at])),
      noDifferences,
    );
    const limits = limitsOfSums(differences);
    expect(limits?.count).toBe(17);
    expect(limits?.mean).toBeCloseTo(-2.1, 1);
    expect(limits?.deviation).toBeCloseTo(38.8, 1);
    // They take two standard deviations: -79.7 and 75.5; 1.96 gives some 1.5 less.
    expect(limits?.lower).toBeCloseTo(-78.1, 0);
    expect(limits?.upper).toBeCloseTo(73.9, 0);
  });

  it('has the kappa of published tables', () => {
    // Wikipedia, Cohen's kappa, worked examples: 0.4; and two tables of the same agreement, 0.1304 and 0.2593.
    expect(kappa({ both: 20, first: 5, second: 10, neither: 15 })).toBeCloseTo(0.4, 10);
    expect(kappa({ both: 45, first: 15, second: 25, neither: 15 })).toBeCloseTo(0.1304, 4);
    expect(kappa({ both: 25, first: 35, second: 5, neither: 35 })).toBeCloseTo(0.2593, 4);
  });

  it('is not told where chance alone gives it', () => {
    expect(kappa({ both: 9, first: 0, second: 0, neither: 0 })).toBeUndefined();
    expect(kappa({ both: 0, first: 0, second: 0, neither: 0 })).toBeUndefined();
    expect(limitsOfSums(withDifference(noDifferences, '1', '0'))).toBeUndefined();
    expect(limitsOfAgreement({ count: 1, mean: 1, squares: 0 })).toBeUndefined();
  });

  it('is taken of two exams of one person and day by two examiners', () => {
    const person = { identifiers: [{ system: 'https://quay.example/p', value: '7' }] };
    const one = (key: string, statements: readonly Statement[]): Exam => ({
      format: 'face-neck-exam/1',
      id: `quay-${key}`,
      status: 'final',
      subject: person,
      examiners: [{ key }],
      performed: { start: '2025-05-05T09:00:00+02:00' },
      recorded: '2025-05-05T09:40:00+02:00',
      protocol: { id: 'droopy-lid', version: '1.0.0' },
      statements,
    });
    const sign = (presence: 'present' | 'absent', side: 'right' | 'left'): Statement => ({
      key: `ptosis-${side}`,
      kind: 'finding',
      finding: 'lid-position.ptosis',
      presence,
      region: 'lid-upper',
      side,
    });
    const auditor = createAuditor();
    auditor.add(one('nurse', [sign('present', 'right'), sign('absent', 'left')]));
    auditor.add(one('physician', [sign('present', 'right'), sign('present', 'left')]));
    const { agreement } = auditor.result();
    expect(agreement.pairs).toBe(1);
    expect(agreement.signs).toEqual([
      { code: 'lid-position.ptosis', both: 1, first: 0, second: 1, neither: 0, kappa: 0 },
    ]);
  });
});

describe('digit preference', () => {
  it('is nothing where all digits are used alike', () => {
    const { chiSquare, zeroOrFive } = digitPreference(Array.from({ length: 10 }, () => 12));
    expect([chiSquare, zeroOrFive]).toEqual([0, 0.2]);
  });

  it('is all where only 0 and 5 are written: 400 for a hundred figures, by hand', () => {
    const { chiSquare, zeroOrFive } = digitPreference([50, 0, 0, 0, 0, 50, 0, 0, 0, 0]);
    expect([chiSquare, zeroOrFive]).toEqual([400, 1]);
  });
});

describe('an audit of the examples', () => {
  const auditor = createAuditor({ checks: { ruleSets: ['horner-signs'] } });
  for (const exam of exams) auditor.add(exam);
  const audit = auditor.result();

  it('counts what the exams say', () => {
    expect(audit.exams).toBe(6);
    const region = audit.regions['jaw-angle'];
    expect(region?.documented).toBeGreaterThan(0);
    const parts = (one: NonNullable<typeof region>): number =>
      one.complete + one.partial + one.carried + one.documented + one.gaps;
    for (const one of [...Object.values(audit.regions), ...Object.values(audit.protocols)]) {
      expect(parts(one)).toBe(one.required);
    }
    expect(audit.reasons['unable-dressing']).toBeGreaterThan(0);
    expect(audit.corrections.exams).toBeGreaterThan(0);
    expect(audit.prompts['R18']?.fired).toBeGreaterThan(0);
  });

  it('names nobody, and is the same whatever the order but for the pairs', () => {
    const names = exams.flatMap(({ subject }) => [
      subject.name?.family,
      ...(subject.identifiers ?? []).map(({ value }) => value),
    ]);
    for (const text of [auditHtml(audit), auditCsv(audit), JSON.stringify(audit)]) {
      for (const name of names) if (name !== undefined) expect(text).not.toContain(name);
    }
    const back = createAuditor({ checks: { ruleSets: ['horner-signs'] } });
    for (const exam of [...exams].reverse()) back.add(exam);
    expect(back.result().regions).toEqual(audit.regions);
  });

  it('is a page whose structure holds, and a table of four columns', () => {
    expect(structure(auditHtml(audit)).filter((tag) => tag.startsWith('not a tag'))).toEqual([]);
    const rows = auditCsv(audit).trimEnd().split('\r\n');
    expect(rows.length).toBeGreaterThan(100);
    expect(rows.filter((row) => row.split(',').length !== 4)).toEqual([]);
  });
});

describe('recall', () => {
  const yearly = exams.find(({ id }) => id.includes('2025-0311')) ?? exams.at(-1);
  if (yearly === undefined) throw new Error('no example');
  const recalls = recallsOf(yearly, '2026-04-02T08:00:00Z');

  it('lists what is due, by whom, and what is overdue', () => {
    expect(recalls.map(({ kind, due, overdue }) => [kind, due, overdue])).toEqual([
      ['review', '2025-04-08', true],
      ['review', '2026-03', true],
      ['safety-net', '2026-03', true],
    ]);
    expect(recallsOf(yearly, '2026-03-31T08:00:00Z').map(({ overdue }) => overdue)).toEqual([
      true,
      false,
      false,
    ]);
    expect(recallsOf({ ...yearly, status: 'entered-in-error' }, '2026-04-02')).toEqual([]);
  });

  it('holds urgent referrals and tests that have no date, and never calls them not overdue', () => {
    const undated = exams.flatMap((exam) =>
      recallsOf(exam, '2026-04-02').filter(({ due }) => due === undefined),
    );
    const pressing = exams.flatMap(({ conclusion }) =>
      (conclusion?.plan ?? []).filter(({ urgency, due }) => urgency === 'urgent' && !due),
    );
    expect(pressing.length).toBeGreaterThan(3);
    for (const { text } of pressing) {
      const recall = undated.find((one) => one.text === text);
      if (recall === undefined) throw new Error('an urgent item is lost');
      expect(isLate(recall)).toBe(true);
      expect(recallRow(recall)).toContain(',,not known,urgent,');
      expect(recallTodo(recall, '2026-04-02T08:00:00Z')).not.toContain('DUE');
      expect(recallTask(recall).restriction).toBeUndefined();
    }
    expect(undated.filter(({ kind }) => kind === 'advice')).toEqual([]);
  });

  it('is a table in which no text becomes a formula or another cell', () => {
    const [first] = recalls;
    if (first === undefined) throw new Error('nothing due');
    const row = recallRow({ ...first, text: '=cmd|"x",y', owner: 'a,b' });
    expect(row).toContain(`"'=cmd|""x"",y"`);
    expect(recallHead.split(',')).toHaveLength(10);
  });

  it('is a to-do of a calendar as RFC 5545 has it', () => {
    const [, month] = recalls;
    if (month === undefined) throw new Error('nothing due');
    const todo = recallTodo(
      { ...month, text: 'One; two, three\nfour é'.repeat(9) },
      '2026-04-02T08:00:00.000Z',
    );
    const lines = todo.split('\r\n');
    expect(todo).toContain('DUE;VALUE=DATE:20260331');
    expect(todo).toContain('DTSTAMP:20260402T080000Z');
    expect(todo).toContain('One\\; two\\, three\\nfour');
    expect(lines.every((line) => new TextEncoder().encode(line).length <= 75)).toBe(true);
  });

  it('is a Task that conforms, for every item of the examples', () => {
    for (const exam of exams) {
      for (const recall of recallsOf(exam, '2026-04-02')) {
        const entry = {
          fullUrl: `urn:uuid:${recallTask(recall).id}`,
          resource: recallTask(recall),
        };
        const bundle = { resourceType: 'Bundle', type: 'collection', entry: [entry] };
        const { issues } = validateBundle(bundle);
        expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
      }
    }
  });
});

describe('an audit of many', () => {
  it('keeps of many exams no more than of few, but figures', () => {
    const sizeAfter = (most: number): number => {
      const auditor = createAuditor();
      for (let seed = 1; seed <= most; seed++)
        auditor.add(sampleExam((seed % 20) + 1, { size: 'small' }));
      return JSON.stringify(auditor.result()).length;
    };
    expect(sizeAfter(60)).toBeLessThan(sizeAfter(20) * 1.1);
  });
});
