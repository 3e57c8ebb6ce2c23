import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { checkExam } from '../../src/checks/check-exam.ts';
import { type Coverage, coverageGaps } from '../../src/checks/coverage/coverage.ts';
import type { CheckOptions } from '../../src/checks/settings/check-settings.ts';
import type { Statement } from '../../src/model/statement.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { examOf, examStart } from './rules/rule-cases.ts';

type Protocol = NonNullable<CheckOptions['protocol']>;

function small(parts: Partial<Protocol>): Protocol {
  return { code: 'clinic-own', display: 'Our own', version: '3', regions: [], ...parts };
}

function cover(statements: readonly Statement[], protocol: Protocol): Coverage {
  const { coverage } = checkExam(examOf({ statements }, 'E-1', examStart), { protocol });
  if (coverage === undefined) throw new Error('no coverage');
  return coverage;
}

const normal = (key: string, region: string, methods: string[], side?: 'right'): Statement => ({
  kind: 'region-state',
  key,
  region,
  state: 'normal',
  methods,
  ...(side !== undefined && { side }),
});

describe('coverage of the published protocols', () => {
  it.each([...builtInCatalogue.protocols.keys()])('%s: an empty exam is all gaps', (id) => {
    const exam = examOf({ protocol: { id, version: '1.0.0' } }, 'E-1', examStart);
    const { coverage, issues } = checkExam(exam);
    expect(coverage?.regions.required).toBeGreaterThan(0);
    expect(coverage?.regions.gaps).toBe(coverage?.regions.required);
    expect(coverage && coverageGaps(coverage)).toEqual(coverage?.items);
    expect(issues.map((found) => found.code)).toContain('coverage-gap');
  });

  it('prints what a focused protocol leaves out', () => {
    const exam = examOf({ protocol: { id: 'neck-lump', version: '1.0.0' } }, 'E-1', examStart);
    const outside = checkExam(exam).coverage?.outside ?? [];
    expect(outside.some((text) => /mouth|throat|larynx/i.test(text))).toBe(true);
  });
});

describe('coverage of an own protocol', () => {
  it('asks for both sides of a pair and of a region with a middle, and for one of the rest', () => {
    const coverage = cover(
      [],
      small({
        regions: ['tmj', 'forehead', 'nose-tip', 'general'].map((region) => ({
          region,
          methods: ['inspection'],
        })),
      }),
    );
    const sides = coverage.items
      .filter((item) => item.kind === 'region')
      .map((item) => `${item.code} ${item.side ?? '-'}`);
    expect(sides).toEqual([
      'tmj right',
      'tmj left',
      'forehead right',
      'forehead left',
      'nose-tip -',
      'general -',
    ]);
  });

  it('writes a group out as the regions below it, each with the methods that it takes', () => {
    const coverage = cover([], small({ regions: [{ region: 'ears', methods: ['otoscopy'] }] }));
    const regions = new Set(coverage.items.map((item) => item.code));
    expect(regions).toContain('tm');
    expect(regions).not.toContain('ears');
    const methods = coverage.items.filter((item) => item.kind === 'method');
    expect(new Set(methods.map((item) => item.code))).toEqual(new Set(['eac', 'tm']));
  });

  it('lists the method that was left out of a covered region', () => {
    const protocol = small({ regions: [{ region: 'tmj', methods: ['inspection', 'palpation'] }] });
    const coverage = cover([normal('a', 'tmj', ['palpation'], 'right')], protocol);
    expect(coverage.regions).toMatchObject({ required: 2, covered: 1, documented: 0, gaps: 1 });
    expect(coverage.methods).toMatchObject({ required: 4, covered: 1, documented: 0, gaps: 3 });
  });

  it('takes a loupe for a look, and two hands for a touch', () => {
    const protocol = small({
      regions: [{ region: 'parotid', methods: ['inspection', 'palpation'] }],
    });
    const used = ['inspection', 'bimanual-palpation'];
    expect(cover([normal('a', 'parotid', used, 'right')], protocol).methods.covered).toBe(2);
  });

  it('counts signs that were looked for, with the methods that they name', () => {
    const protocol = small({ regions: [{ region: 'tmj', methods: ['palpation'] }] });
    const absent: Statement = {
      kind: 'finding',
      key: 'a',
      finding: 'tmj-tender',
      region: 'tmj',
      side: 'both',
      presence: 'absent',
    };
    const bare = cover([absent], protocol);
    expect([bare.regions.covered, bare.methods.covered]).toEqual([2, 0]);
    const told = cover([{ ...absent, methods: ['palpation'] }], protocol);
    expect([told.regions.covered, told.methods.covered]).toEqual([2, 2]);
  });

  describe('the measure of a mass that can lie on either side', () => {
    const protocol = small({ measures: ['neck-mass'] });
    const notSeen = (side: 'right' | 'left' | 'both'): Statement => ({
      kind: 'region-state',
      key: `neck-${side}`,
      region: 'neck',
      side,
      state: 'not-examined',
      reason: { code: 'declined' },
    });
    const mass: Statement = {
      kind: 'measurement',
      key: 'm',
      measure: 'neck-mass',
      region: 'neck',
      side: 'left',
      value: '12',
      unit: 'mm',
    };

    it.each([
      ['is asked for once and covered on the side where it lies', [mass], 'covered'],
      ['is a gap where nothing was said', [], 'gap'],
      ['is a gap where one side alone was not examined', [notSeen('right')], 'gap'],
      ['is documented where neither side was', [notSeen('both')], 'documented'],
      ['also side by side', [notSeen('left'), notSeen('right')], 'documented'],
    ] as const)('%s', (_name, statements, status) => {
      expect(cover(statements, protocol).items.map((item) => item.status)).toEqual([status]);
    });
  });

  it('marks what was examined in part', () => {
    const protocol = small({ regions: [{ region: 'tm', methods: ['otoscopy'] }] });
    const coverage = cover(
      [
        {
          kind: 'region-state',
          key: 'a',
          region: 'tm',
          side: 'both',
          state: 'partial',
          methods: ['otoscopy'],
          limit: { code: 'unable-wax' },
        },
      ],
      protocol,
    );
    expect(coverage.regions.covered).toBe(2);
    expect(coverage.items.every((item) => item.partial === true)).toBe(true);
  });

  it('lets a group that was not examined document everything below it', () => {
    const protocol = small({
      regions: [{ region: 'tm', methods: ['otoscopy'] }],
      tests: ['cn8-whisper'],
    });
    const coverage = cover(
      [
        {
          kind: 'region-state',
          key: 'ears',
          region: 'ears',
          side: 'both',
          state: 'not-examined',
          reason: { code: 'declined' },
        },
      ],
      protocol,
    );
    expect(coverage.items.map((item) => item.status)).toEqual(Array(6).fill('documented'));
  });

  it('never lets a normal group stand for the regions below it', () => {
    const protocol = small({ regions: [{ region: 'nose-tip', methods: ['inspection'] }] });
    expect(cover([normal('a', 'nose', ['inspection'])], protocol).regions.gaps).toBe(1);
  });

  it('counts points by side and modality, and an untested one as documented', () => {
    const protocol = small({ points: [{ point: 'v2', modalities: ['light-touch', 'pinprick'] }] });
    const coverage = cover(
      [
        {
          kind: 'sensation',
          key: 'a',
          point: 'v2',
          side: 'left',
          results: [
            { modality: 'light-touch', result: 'normal' },
            { modality: 'pinprick', result: 'not-tested', reason: { code: 'time' } },
          ],
        },
      ],
      protocol,
    );
    expect(coverage.points).toMatchObject({ required: 4, covered: 1, documented: 1, gaps: 2 });
  });

  it('counts tests and measures by side, and an unusable reading as documented', () => {
    const protocol = small({ tests: ['frontalis'], measures: ['mrd1', 'mirror-mist'] });
    const coverage = cover(
      [
        { kind: 'movement', key: 'm', test: 'frontalis', side: 'both', grade: 'normal' },
        { kind: 'function-test', key: 'f', test: 'mirror-mist', result: 'symmetric' },
        {
          kind: 'measurement',
          key: 'r',
          measure: 'mrd1',
          region: 'lid-upper',
          side: 'right',
          value: '4',
          unit: 'mm',
        },
        {
          kind: 'measurement',
          key: 'l',
          measure: 'mrd1',
          region: 'lid-upper',
          side: 'left',
          unit: 'mm',
          unusable: { code: 'reading-unusable' },
        },
      ],
      protocol,
    );
    expect(coverage.tests).toMatchObject({ required: 2, covered: 2, documented: 0, gaps: 0 });
    expect(coverage.measures).toMatchObject({ required: 3, covered: 2, documented: 1, gaps: 0 });
  });

  it('is in part where only a sign is told of a place, and whole where its state is', () => {
    const protocol = small({ regions: [{ region: 'general', methods: ['inspection'] }] });
    const sign = {
      kind: 'finding',
      key: 's',
      finding: 'voice.hoarse',
      presence: 'absent',
      region: 'general',
      methods: ['inspection'],
    } as const;
    const state = normal('a', 'general', ['inspection']);
    for (const [statements, complete, partial] of [
      [[sign], 0, 1],
      [[state], 1, 0],
      [[sign, state], 1, 0],
    ] as const) {
      const coverage = cover(statements, protocol);
      expect(coverage.regions).toMatchObject({ complete, partial, covered: 1 });
      expect(coverage.methods).toMatchObject({ complete, partial, covered: 1 });
    }
  });

  it.each([...examples])('of %s counts everything asked for once', (_name, exam) => {
    const carried = { exam: 'E-0', statement: 'a', at: '2020-01-01', confirmed: false };
    const unseen = exam.statements.map((statement) => ({ ...statement, carried }));
    for (const statements of [exam.statements, unseen]) {
      const { coverage } = checkExam({ ...exam, statements });
      if (coverage === undefined) throw new Error('the protocol of an example is not known');
      const { regions, methods, points, tests, measures } = coverage;
      for (const count of [regions, methods, points, tests, measures]) {
        expect(count.complete + count.partial + count.derived).toBe(count.covered);
        const all = count.covered + count.documented + count.carried + count.gaps;
        expect(all).toBe(count.required);
        if (statements === unseen) expect(count.covered + count.documented).toBe(0);
      }
    }
  });

  it('does not count what was carried over and not looked at again', () => {
    const protocol = small({ regions: [{ region: 'general', methods: ['inspection'] }] });
    const carried = { exam: 'E-0', statement: 'a', at: '2024-03-01', confirmed: false };
    const stale = cover([{ ...normal('a', 'general', ['inspection']), carried }], protocol);
    expect(stale.regions).toMatchObject({ covered: 0, documented: 0, carried: 1 });
    const again = { ...carried, confirmed: true };
    const fresh = cover([{ ...normal('a', 'general', ['inspection']), carried: again }], protocol);
    expect(fresh.regions.covered).toBe(1);
  });

  it('names what to mind at the steps that it asks for', () => {
    const minded = (code: string): readonly string[] => {
      const protocol = { id: code, version: '1.0.0' };
      return checkExam(examOf({ protocol }, 'E-1', examStart)).coverage?.cautions ?? [];
    };
    expect(minded('droopy-lid')).toEqual(['carotid-one-side', 'injured-globe']);
    expect(minded('ear-and-hearing')).toEqual(['perforated-drum']);
    expect(minded('hoarseness-swallowing')).toEqual(['airway-first']);
    expect(minded('full')).toEqual([
      'carotid-one-side',
      'neck-after-injury',
      'perforated-drum',
      'injured-globe',
      'airway-first',
    ]);
  });

  it('names the rows that its protocol and the catalogue do not share', () => {
    const protocol = small({
      regions: [{ region: 'third-ear', methods: ['inspection'] }],
      tests: ['knee-jerk'],
    });
    const { issues, coverage } = checkExam(examOf({}, 'E-1', examStart), { protocol });
    const unknown = issues.filter((found) => found.code === 'unknown-code');
    expect(unknown.map((found) => found.path)).toEqual([
      ['options', 'protocol', 'regions', 0, 'region'],
      ['options', 'protocol', 'tests', 0],
    ]);
    expect(coverage?.regions.gaps).toBe(1);
  });
});
