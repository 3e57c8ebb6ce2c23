import { describe, expect, it } from 'vitest';
import { thresholds } from '../../src/checks/settings/thresholds.ts';
import { builtInCatalogue, type CheckSettings, parseCheckSettings } from '../../src/index.ts';

const whole: CheckSettings = {
  protocol: {
    code: 'harbour-lids',
    display: 'Lids of harbour workers',
    version: '2',
    regions: [{ region: 'lid-upper', methods: ['inspection'] }],
    measures: ['mrd1'],
  },
  thresholds: { 'lid-difference': '2', 'skin-change': 'off' },
  sideDifferences: { levator: '2.5' },
  populations: ['adults'],
  memoryValues: true,
  ruleSets: ['horner-signs'],
  negatives: ['neg-skin'],
  judgements: [{ statement: 's1', unexplained: true }],
  dismissals: [
    {
      prompt: 'R18:left',
      reason: 'Known since childhood',
      by: 'nurse',
      at: '2025-03-11T10:00:00Z',
    },
  ],
};

describe('settings of the checks', () => {
  it('takes what the types allow, and every published protocol and threshold', () => {
    expect(parseCheckSettings(whole)).toEqual({ ok: true, value: whole, issues: [] });
    expect(parseCheckSettings({})).toEqual({ ok: true, value: {}, issues: [] });
    for (const protocol of builtInCatalogue.protocols.values()) {
      expect(parseCheckSettings({ protocol }).issues).toEqual([]);
    }
    const same = Object.entries(thresholds).map(([id, { value }]) => [id, value]);
    expect(parseCheckSettings({ thresholds: Object.fromEntries(same) }).issues).toEqual([]);
  });

  it.each<[string, unknown, string, string]>([
    ['no object', 'x', 'wrong-type', ''],
    ['a list', [], 'wrong-type', ''],
    ['an unknown setting', { ...whole, defaults: 'normal' }, 'unknown-property', 'defaults'],
    ['an unknown threshold', { thresholds: { lid: '2' } }, 'unknown-property', 'thresholds.lid'],
    ['a number', { thresholds: { 'skin-change': 2 } }, 'wrong-type', 'thresholds.skin-change'],
    ['words', { thresholds: { 'skin-change': 'two' } }, 'invalid-value', 'thresholds.skin-change'],
    ['an unknown rule set', { ruleSets: ['all'] }, 'unknown-code', 'ruleSets.0'],
    ['no reason', { dismissals: [{ prompt: 'R18' }] }, 'missing-property', 'dismissals.0.reason'],
    [
      'a prototype',
      JSON.parse('{"__proto__":{"memoryValues":true}}'),
      'unsafe-property',
      '__proto__',
    ],
  ])('%s is an issue with its path', (_, value, code, path) => {
    const { value: settings, issues } = parseCheckSettings(value);
    expect(settings).toBeUndefined();
    expect(issues.map((one) => [one.code, one.path.join('.')])).toContainEqual([code, path]);
  });

  it('shows what it refuses only when asked', () => {
    const wrong = { thresholds: { 'skin-change': 'two' } };
    expect(JSON.stringify(parseCheckSettings(wrong))).not.toContain('two');
    expect(JSON.stringify(parseCheckSettings(wrong, { includeValues: true }))).toContain('two');
  });
});
