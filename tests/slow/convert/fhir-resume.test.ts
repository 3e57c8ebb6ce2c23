import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { BulkOptions } from '../../../src/convert/bulk/options.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';
import { contents, convert, temporaryFolder } from '../../convert/bulk/folder.ts';
import { killedRun, wholeRun } from '../../convert/bulk/killed-run.ts';
import { bundleOf, linesOf, record, resourceMapping } from '../../convert/fhir/resource-samples.ts';
import { seeded } from '../../convert/random.ts';

const folder = temporaryFolder();
const COUNT = 400;
const records = Array.from({ length: COUNT }, (_, at) => record(`p${at}`, at % 3, 1));
const all = records.flat();

mkdirSync(join(folder, 'types'));
mkdirSync(join(folder, 'bundles'));
for (const type of ['Patient', 'Observation', 'DiagnosticReport']) {
  const lines = linesOf(all.filter(({ resourceType }) => resourceType === type));
  writeFileSync(join(folder, 'types', `${type}.ndjson.gz`), gzipSync(lines));
}
writeFileSync(join(folder, 'bundles', 'all.json'), records.map(bundleOf).join('\n'));

const bundles: FhirMapping = { ...resourceMapping, source: { syntax: 'fhir' } };

describe.each([
  ['resources', 'types', resourceMapping],
  ['bundles', 'bundles', bundles],
] as const)('a run over %s', (form, inputs, mapping) => {
  const options = (out: string, more: Partial<BulkOptions> = {}): BulkOptions => ({
    ...{ mapping, to: 'exams', checkpointEvery: 50 },
    inputs: [join(folder, inputs)],
    out: join(folder, `${form}-${out}`),
    ...more,
  });

  it('ends, killed and resumed, with the bytes of a run that was not', async () => {
    const whole = options('whole');
    const time = await wholeRun(whole);
    const random = seeded(11);
    let stopped = 0;
    for (let round = 0; round < 4; round++) {
      const delay = random.below(Math.ceil(time));
      stopped += Number(await killedRun(options(`killed-${round}`), delay, whole.out));
    }
    expect(stopped).toBeGreaterThan(0);
  });

  it('ends with the same bytes in several threads', async () => {
    await convert(options('one'));
    await convert(options('two', { jobs: 2 }));
    expect(contents(join(folder, `${form}-two`))).toEqual(contents(join(folder, `${form}-one`)));
  });
});
