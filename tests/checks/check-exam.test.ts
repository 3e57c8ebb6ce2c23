import { describe, expect, it } from 'vitest';
import { checkExam } from '../../src/checks/check-exam.ts';
import { cautions } from '../../src/checks/prompts/prompt.ts';
import { ruleSets } from '../../src/checks/rule-sets.ts';
import type { CheckOptions } from '../../src/checks/settings/check-settings.ts';
import type { Statement } from '../../src/model/statement.ts';
import { examOf, examStart } from './rules/rule-cases.ts';
import { expectSoundResults } from './sound-results.ts';

const everySet = ruleSets.map((set) => set.id);
const stridor: Statement = {
  kind: 'symptom',
  key: 'stridor',
  symptom: 'sym-throat.stridor',
  answer: 'yes',
};

function check(statements: readonly Statement[], options: CheckOptions = {}) {
  return checkExam(examOf({ statements }, 'E-1', examStart), options);
}

describe('prompts', () => {
  it('come only from a chosen rule set', () => {
    const result = check([stridor]);
    expect(result.prompts).toEqual([]);
    expect(result.results.filter((one) => one.kind === 'prompt')).toEqual([]);
    const chosen = check([stridor], { ruleSets: ['suspected-cancer-scotland'] });
    expect(chosen.prompts.map((one) => one.id)).toEqual(['R16b:airway']);
    expect(chosen.prompts[0]).toMatchObject({
      jurisdiction: 'Scotland',
      severity: 'urgent',
      inputsUsed: ['stridor'],
      cautions,
    });
  });

  it('say which rule set is not known', () => {
    // A caller in plain JavaScript can name anything.
    const ruleSetsGiven = ['ng12-wales', '__proto__'] as unknown as CheckOptions['ruleSets'];
    const { issues, prompts } = check([stridor], {
      ...(ruleSetsGiven && { ruleSets: ruleSetsGiven }),
    });
    expect(prompts).toEqual([]);
    const unknown = issues.filter((found) => found.code === 'unknown-rule-set');
    expect(unknown.map((found) => found.path)).toEqual([
      ['options', 'ruleSets', 0],
      ['options', 'ruleSets', 1],
    ]);
  });

  it('stay in the list when they are set aside, with the reason', () => {
    const dismissal = {
      prompt: 'R16b:airway',
      reason: 'Snoring, heard by the family only',
      by: 'examiner',
      at: '2024-05-31T12:10:00Z',
    };
    const ruleSetsGiven = ['suspected-cancer-scotland'] as const;
    const { prompts } = check([stridor], { ruleSets: ruleSetsGiven, dismissals: [dismissal] });
    expect(prompts).toHaveLength(1);
    expect(prompts[0]?.dismissed).toEqual({
      reason: dismissal.reason,
      by: dismissal.by,
      at: dismissal.at,
    });
  });

  it('are not set aside without a reason, nor where there is none of that id', () => {
    const at = '2024-05-31T12:10:00Z';
    const { prompts, issues } = check([stridor], {
      ruleSets: ['suspected-cancer-scotland'],
      dismissals: [
        { prompt: 'R16b:airway', reason: '  ', by: 'examiner', at },
        { prompt: 'R99', reason: 'no', by: 'examiner', at },
      ],
    });
    expect(prompts[0]?.dismissed).toBeUndefined();
    const found = issues.filter((one) => one.path[1] === 'dismissals');
    expect(found.map((one) => one.code)).toEqual(['missing-reason', 'unused-dismissal']);
  });

  it('raise no issue and change no status', () => {
    const exam = examOf({ statements: [stridor] }, 'E-1', examStart);
    const before = JSON.stringify(exam);
    const { issues } = checkExam(exam, { ruleSets: everySet });
    expect(issues.filter((one) => one.rule === 'R16b')).toEqual([]);
    expect(JSON.stringify(exam)).toBe(before);
  });
});

describe('issues', () => {
  const clash: Statement[] = [
    {
      kind: 'region-state',
      key: 'n',
      region: 'chin',
      side: 'left',
      state: 'normal',
      methods: ['inspection'],
    },
    {
      kind: 'finding',
      key: 'p',
      finding: 'papule',
      region: 'chin',
      side: 'left',
      presence: 'present',
      note: 'confidential words on the right',
    },
  ];

  it('lead to the statement, and say nothing of what it says', () => {
    const { issues } = check(clash);
    expect(
      issues.map((one) => `${one.severity} ${one.code} ${one.path.join('.')} ${one.rule}`),
    ).toEqual([
      'information coverage-gap statements R01',
      'warning side-conflict statements.1 R02',
      'error contradiction statements.0 R03',
    ]);
    expect(JSON.stringify(issues)).not.toContain('confidential');
  });

  it('name thresholds and judgements that cannot be read', () => {
    const { issues } = check([], {
      thresholds: { 'lid-sum': '1,5', 'skin-change': 'off' },
      sideDifferences: { levator: 'much' },
      judgements: [{ statement: 'nobody', unexplained: true }],
    });
    expect(issues.filter((one) => one.path[0] === 'options').map((one) => one.path[1])).toEqual([
      'thresholds',
      'sideDifferences',
      'judgements',
    ]);
  });
});

describe('any exam', () => {
  // tests/slow/seeded.test.ts takes many.
  it.each(['small', 'usual', 'full', 'edge'] as const)(
    'of the size %s gives sound results',
    (size) => {
      for (const seed of size === 'full' ? [1] : [1, 2, 3, 4]) expectSoundResults(seed, size);
    },
  );
});

describe('an exam that only has the right structure', () => {
  it('gives results and never a crash', () => {
    const odd = examOf(
      {
        protocol: { id: 'nowhere', version: '0' },
        subject: { birthDate: '2026-02-30' },
        performed: { start: '2024-13' },
        statements: [
          {
            kind: 'finding',
            key: 'a',
            finding: 'constructor',
            region: '__proto__',
            presence: 'present',
          },
          { kind: 'finding', key: 'a', finding: 'papule', region: 'chin', presence: 'absent' },
          {
            kind: 'measurement',
            key: 'm',
            measure: 'mrd1',
            region: 'toString',
            unit: 'parsec',
            value: '1',
          },
          {
            kind: 'measurement',
            key: 'm2',
            measure: 'mrd1',
            region: 'lid-upper',
            unit: 'mm',
            about: 'm2',
          },
          { kind: 'scale-score', key: 's', scale: '7pcl', version: '', score: 'x', items: [] },
          { kind: 'movement', key: 'v', test: 'frontalis', grade: 'valueOf' },
          {
            kind: 'symptom',
            key: 'y',
            symptom: 'sym-ear.hearing-loss-sudden',
            answer: 'yes',
            onset: '2024-02-31',
            duration: { value: '3', unit: 'mm' },
          },
        ],
      },
      'E-1',
      '2024-05-31',
    );
    const result = checkExam(odd, { ruleSets: everySet, prior: odd, samePatient: 'assumed' });
    expect(result.coverage).toBeUndefined();
    expect(result.issues.map((one) => one.code)).toContain('unknown-protocol');
  });

  it('takes long texts and long lists', () => {
    const word = 'left '.repeat(200_000);
    const statements: Statement[] = [
      { kind: 'note', key: 'n', region: 'chin', side: 'right', text: word },
      { kind: 'note', key: 'all', text: `all${' '.repeat(500_000)}x` },
      ...Array.from(
        { length: 4000 },
        (_, at): Statement => ({
          kind: 'finding',
          key: `f-${at}`,
          finding: at % 2 === 0 ? 'skin-moisture.moist' : 'skin-moisture.dry',
          region: 'forehead',
          side: 'left',
          presence: 'present',
        }),
      ),
    ];
    const { issues } = check(statements);
    expect(issues.filter((one) => one.rule === 'R02')).toHaveLength(1);
    expect(issues.filter((one) => one.rule === 'R35').length).toBeGreaterThan(0);
  });
});
