import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hazardsText, readHazards } from '../../src/generate/hazards.ts';

/**
 * The log follows the practice of clinical safety cases: each hazard with its cause, harm, controls
 * and evidence (NHS England, DCB0129, from memory).
 */
const project = resolve(import.meta.dirname, '../..');
const { hazards } = readHazards();
const severities = ['minor', 'significant', 'considerable', 'major', 'catastrophic'];

describe('the hazard log', () => {
  test.each(hazards.map((one) => [one.id, one] as const))('%s is complete', (_, hazard) => {
    expect(severities).toContain(hazard.severity);
    const { hazard: name, harm, open, sign } = hazard;
    for (const text of [name, harm, open, sign, ...hazard.causes, ...hazard.controls]) {
      expect(text.trim()).not.toBe('');
    }
    expect(hazard.causes.length).toBeGreaterThan(0);
    expect(hazard.controls.length).toBeGreaterThan(0);
  });

  test.each(hazards.map((one) => [one.id, one] as const))(
    '%s has tests, and each of them is there',
    (_, { tests }) => {
      expect(tests.length).toBeGreaterThan(0);
      const missing = tests.filter(({ file, test: name }) => {
        const path = resolve(project, file);
        if (!existsSync(path)) return true;
        return name !== null && !titlesOf(readFileSync(path, 'utf8')).includes(name);
      });
      expect(missing).toEqual([]);
    },
  );

  test('numbers each hazard once, and people read the same', () => {
    const ids = hazards.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const shown = readFileSync(resolve(project, 'src/checks/HAZARDS.md'), 'utf8');
    expect(shown).toBe(hazardsText(readHazards()));
  });
});

/** The titles of tests that are run: a test that is skipped holds nothing. */
function titlesOf(text: string): string[] {
  const call = /\b(?:it|test)(?:\.each\([\s\S]*?\))?\(\s*(['"`])((?:\\.|(?!\1).)*)\1/g;
  return [...text.matchAll(call)].map(([, , title = '']) => title.replaceAll('\\', ''));
}
