import { describe, expect, it } from 'vitest';
import { checkExam } from '../../src/checks/check-exam.ts';
import { type RuleSetId, ruleSets } from '../../src/checks/rule-sets.ts';
import { rules } from '../../src/checks/rules.ts';
import type { Picture as Row } from '../../src/checks/tables/picture.ts';
import { pictures } from '../../src/checks/tables/pictures.ts';
import { parseExam } from '../../src/model/parse-exam.ts';
import type { Measurement } from '../../src/model/statement.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { limits } from '../../src/terminology/limits.ts';
import { ordinaryExam } from './ordinary.ts';
import { bank, checked, everySet, examFor, type Picture } from './warnings.ts';

const rows: readonly (readonly [string, Row])[] = Object.entries(pictures);

describe('the bank of warnings', () => {
  it('has two hundred and fifty pictures and more, of each kind', () => {
    expect(bank.length).toBeGreaterThanOrEqual(250);
    expect(new Set(bank.map(({ name, of }) => `${of}: ${name}`)).size).toBe(bank.length);
    for (const kind of ['danger', 'near-miss', 'partial', 'noisy', 'ordinary']) {
      expect(bank.filter((one) => one.kind === kind).length, kind).toBeGreaterThanOrEqual(10);
    }
  });

  it.each(bank.map((one) => [`${one.kind}: ${one.name}`, one] as const))('%s', (_, picture) => {
    const { issues } = parseExam(examFor(picture));
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    const { prompts, openPrompts, results } = checked(picture);
    const { fires = [], also = [], open = [] } = picture;
    expect(prompts.map(({ id }) => id).sort()).toEqual([...fires, ...also].sort());
    expect(open.filter((id) => !openPrompts.some((one) => one.id === id))).toEqual([]);
    if (picture.kind === 'near-miss') {
      const outcomes = results.filter((one) => one.ruleId === picture.of).map((one) => one.outcome);
      expect(outcomes).toContain('does-not-fire');
      expect(outcomes).not.toContain('fires');
    }
  });
});

describe('every row of the tables of pictures', () => {
  it.each(rows)('%s has its pictures and its source', (id, row) => {
    const kinds = new Set(bank.filter((one) => one.of === id).map(({ kind }) => kind));
    expect(kinds).toContain('danger');
    expect(kinds).toContain('near-miss');
    // A picture that asks for nothing beside its anchor is never half there.
    expect(row.with === undefined || kinds.has('partial') || kinds.has('noisy')).toBe(true);
    expect(row.source.length).toBeGreaterThan(20);
    expect(row.evidence).not.toBe('memory');
  });

  it('is a case of one in the bank, and nothing else is', () => {
    const known = new Set(rows.map(([id]) => id));
    expect(bank.filter(({ of }) => of !== undefined && !known.has(of))).toEqual([]);
  });
});

type Answer = 'fires' | 'cannot tell' | 'silent';

/** Pictures that the sets written by hand speak of as well. */
const alsoIn: { readonly [Set in RuleSetId]?: readonly string[] } = {
  'horner-signs': ['drooping-lid-small-pupil'],
  'facial-weakness-signs': ['weak-lower-face'],
  'giant-cell-arteritis-uk': ['temple-jaw-sight-from-50'],
  'zoster-eye-uk': ['forehead-zoster-eye'],
  'hearing-loss-england': ['hearing-lost-suddenly'],
  'neck-mass-us': ['neck-lump-hard-or-fixed'],
  'suspected-cancer-scotland': ['neck-lump-lasting', 'thyroid-lump-child', 'lasting-hoarseness'],
  'ng12-england': ['neck-lump-lasting', 'thyroid-lump-child', 'suspicious-mole'],
};

/** Whether a picture, whole or half told, is of a danger that the set has a rule for. */
function isSpokenOf({ kind, of }: Picture, set: RuleSetId): boolean {
  if (kind !== 'danger' && kind !== 'partial') return false;
  const own = rows.find(([id]) => id === of)?.[1].ruleSet === set;
  return own || alsoIn[set]?.includes(of ?? '') === true;
}

/** What a set answers: of its own pictures the row itself, of others any of its rules. */
function answerTo(picture: Picture, set: RuleSetId): Answer {
  const { prompts, openPrompts } = checkExam(examFor(picture), { ruleSets: [set] });
  const own = rows.find(([id]) => id === picture.of)?.[1].ruleSet === set;
  const counts = ({ ruleId }: { readonly ruleId: string }): boolean =>
    !own || ruleId === picture.of;
  if (prompts.some(counts)) return 'fires';
  return openPrompts.some(counts) ? 'cannot tell' : 'silent';
}

/** A nodule of the thyroid is a matter of the guidelines and not ordinary to them. */
const seeded = Array.from({ length: 80 }, (_, at) => ordinaryExam(at + 1)).filter(
  ({ statements }) => !JSON.stringify(statements).includes('single-nodule'),
);

describe('sensitivity and false prompts by rule set', () => {
  const ordinary = bank.filter(({ kind }) => kind === 'ordinary').map(examFor);
  const table = ruleSets.map(({ id }) => {
    const inScope = bank.filter((one) => isSpokenOf(one, id)).map((one) => answerTo(one, id));
    const exams = [...ordinary, ...seeded];
    const crying = exams.filter((exam) => checkExam(exam, { ruleSets: [id] }).prompts.length > 0);
    const count = (answer: Answer): number => inScope.filter((one) => one === answer).length;
    return {
      set: id,
      'fires on danger': count('fires'),
      'cannot tell': count('cannot tell'),
      silent: count('silent'),
      'ordinary exams': exams.length,
      'cries on ordinary': crying.length,
    };
  });
  console.table(table);

  it('is never silent on a picture in its scope', () => {
    expect(table.map(({ set, silent }) => [set, silent])).toEqual(
      ruleSets.map(({ id }) => [id, 0]),
    );
  });

  it('cries on fewer than two in a hundred ordinary exams', () => {
    for (const row of table) {
      expect(row['cries on ordinary'] / row['ordinary exams'], row.set).toBeLessThan(0.02);
    }
  });
});

/** Every measure that stands as a figure, on both sides, at an end of what is possible. */
function figures(right: 'low' | 'high', left: 'low' | 'high'): readonly Measurement[] {
  return Object.entries(limits).flatMap(([measure, { possible }], at): Measurement[] => {
    const row = builtInCatalogue.measures.get(measure);
    const region = row?.region;
    if (row?.unit === undefined || region === undefined) return [];
    const paired = builtInCatalogue.regions.get(region)?.laterality === 'paired';
    const { unit } = row;
    const figure = (end: 'low' | 'high'): string => String(possible[end]);
    const base = { kind: 'measurement', measure, region, unit } as const;
    if (!paired) return [{ ...base, key: `m${at}`, value: figure(right) }];
    return [
      { ...base, key: `m${at}r`, side: 'right', value: figure(right) },
      { ...base, key: `m${at}l`, side: 'left', value: figure(left) },
    ];
  });
}

describe('a measurement', () => {
  const spoken = bank.filter(
    ({ kind, says }) => kind === 'danger' && !says.some((line) => line.startsWith('measure ')),
  );
  const ends = ['low', 'high'] as const;
  const sets = ends.flatMap((right) => ends.map((left) => figures(right, left)));

  it('is there for each measure that stands as a figure', () => {
    expect(sets[0]?.length).toBeGreaterThan(40);
  });

  it.each(spoken.map((one, at) => [one.name, one, sets[at % sets.length] ?? []] as const))(
    'silences no prompt, whatever it reads: %s',
    (_, picture, added) => {
      const exam = examFor(picture);
      const measured = { ...exam, statements: [...exam.statements, ...added] };
      const after = checkExam(measured, { ruleSets: everySet }).prompts.map(({ id }) => id);
      const before = checked(picture).prompts.map(({ id }) => id);
      expect(before.filter((id) => !after.includes(id))).toEqual([]);
    },
  );
});

describe('the order of prompts', () => {
  it('is the most urgent first, and what was set aside last', () => {
    const order = ['now', 'same-day', 'days', 'weeks', 'routine'];
    for (const picture of bank) {
      const found = checked(picture).prompts.map(({ urgency }) => order.indexOf(urgency ?? ''));
      expect(found).toEqual([...found].sort((a, b) => a - b));
    }
    const picture = bank.find(({ name }) => name === 'thyroid mass with stridor');
    if (picture === undefined) throw new Error('the picture is not in the bank');
    const [first] = checked(picture).prompts;
    if (first === undefined) throw new Error('nothing fires');
    const dismissal = {
      prompt: first.id,
      reason: 'Known',
      by: 'examiner',
      at: '2024-05-31T12:00:00Z',
    };
    const again = checkExam(examFor(picture), { ruleSets: everySet, dismissals: [dismissal] });
    expect(again.prompts.at(-1)?.id).toBe(first.id);
  });

  it('has one line each, without its source and the cautions', () => {
    for (const { text, source, cautions } of bank.flatMap((one) => checked(one).prompts)) {
      expect(text).not.toContain('\n');
      expect(text).not.toContain(source);
      for (const caution of cautions) expect(text).not.toContain(caution);
    }
  });
});

describe('the rules of pictures', () => {
  it('run only where their set is chosen', () => {
    const fired = bank.slice(0, 50).flatMap((one) => checkExam(examFor(one)).prompts);
    expect(fired).toEqual([]);
    expect(rules.filter(({ id }) => Object.hasOwn(pictures, id)).length).toBe(rows.length);
  });
});
