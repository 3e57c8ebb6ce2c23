import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ruleSets } from '../../../src/checks/rule-sets.ts';
import { rules } from '../../../src/checks/rules.ts';
import { rulesTable } from '../../../src/checks/rules-table.ts';
import { thresholds } from '../../../src/checks/settings/thresholds.ts';

describe('the table of rules', () => {
  const text = readFileSync(join(import.meta.dirname, '../../../src/checks/RULES.md'), 'utf8');

  it('is the one that the code makes', () => {
    expect(text).toBe(rulesTable());
  });

  it('has a line for every rule, rule set and limit', () => {
    const first = text.split('\n').map((line) => line.split(' | ')[0]?.replace('| ', '').trim());
    for (const { id } of [...rules, ...ruleSets]) expect(first).toContain(id);
    for (const id of Object.keys(thresholds)) expect(first).toContain(id);
  });
});

describe('the rules', () => {
  it('have ids of their own', () => {
    expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
  });

  it('name a source and how sure it is', () => {
    for (const rule of rules) expect(rule.source.length, rule.id).toBeGreaterThan(10);
    expect(rules.filter((rule) => rule.evidence === 'memory')).toEqual([]);
  });

  it('prompt only from a known rule set, and each rule set has a rule', () => {
    const used = rules.flatMap((rule) => (rule.kind === 'prompt' ? [rule.ruleSet] : []));
    expect([...new Set(used)].sort()).toEqual(ruleSets.map((set) => set.id).sort());
  });
});
