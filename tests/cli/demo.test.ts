import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { inFolder, run } from './in-process.ts';

describe('demo', () => {
  it('writes bundle and summary, and says in five lines what it did', async () => {
    await inFolder(async (cwd) => {
      const { code, out, err } = await run(['demo'], { cwd });
      expect(code).toBe(0);
      expect(err).not.toContain(': error');
      const lines = out.trimEnd().split('\n');
      expect(lines).toHaveLength(5);
      expect(lines[4]).toMatch(/never replaces .*; not legal or medical advice\.$/);
      const folder = join(cwd, 'output/demo');
      expect(readdirSync(folder).sort()).toEqual(['bundle.json', 'report.html', 'summary.txt']);

      const bundle = JSON.parse(readFileSync(join(folder, 'bundle.json'), 'utf8'));
      expect(validateBundle(bundle).valid).toBe(true);
      const types = bundle.entry.map(
        ({ resource }: { resource: { resourceType: string } }) => resource.resourceType,
      );
      const observations = types.filter((type: string) => type === 'Observation').length;
      expect(observations).toBeGreaterThanOrEqual(60);
      expect(lines[1]).toContain(`${types.length} resources, ${observations} of them Observations`);
      const page = readFileSync(join(folder, 'report.html'), 'utf8');
      expect(page).toContain('Left eardrum only half seen');
      const summary = readFileSync(join(folder, 'summary.txt'), 'utf8');
      expect(summary).toContain(`Observation             ${observations}`);
      expect(summary).toContain(lines[4]);
    });
  });

  it('takes version, kind of bundle and folder', async () => {
    await inFolder(async (cwd) => {
      const argv = ['demo', '--fhir', 'r5', '--bundle', 'document', '--out', 'here'];
      const { code, out } = await run(argv, { cwd });
      expect(code).toBe(0);
      expect(out).toContain('FHIR R5 document');
      const bundle = JSON.parse(readFileSync(join(cwd, 'here/bundle.json'), 'utf8'));
      expect(bundle.type).toBe('document');
    });
  });

  it('run twice it writes the same bytes', async () => {
    await inFolder(async (cwd) => {
      const text = (): string => readFileSync(join(cwd, 'output/demo/bundle.json'), 'utf8');
      await run(['demo'], { cwd });
      const before = text();
      await run(['demo'], { cwd });
      expect(text()).toBe(before);
    });
  });
});
