import { expect, it } from 'vitest';
import { type ImportManifestOptions, importManifest, toNdjson } from '../../src/index.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';

// Properties and which of them must stand: https://github.com/smart-on-fhir/bulk-import,
// import-manifest.md (a proposal), "Body JSON Fields".

const url = 'https://files.clinic.example/2025';

it('names a file for every type that has lines', () => {
  const { lines } = toNdjson(sampleExam(3), clinic);
  for (const place of [url, `${url}/`]) {
    const { value, issues } = importManifest(lines.keys(), { url: place, source: clinic.identity });
    expect(issues).toEqual([]);
    expect(value).toEqual({
      inputFormat: 'application/fhir+ndjson',
      inputSource: clinic.identity,
      storageDetail: { type: 'https' },
      input: [...lines.keys()].map((type) => ({ type, url: `${url}/${type}.ndjson` })),
    });
  }
  expect(lines.size).toBeGreaterThan(4);
});

it.each([
  ['a folder of this machine', { url: 'output/2025', source: clinic.identity }, 'url'],
  [
    'an address without encryption',
    { url: 'http://files.example', source: clinic.identity },
    'url',
  ],
  ['an address with a query', { url: `${url}?sig=1`, source: clinic.identity }, 'url'],
  ['no source', { url }, 'source'],
  ['a source that is no URI', { url, source: 'clinic' }, 'source'],
])('%s gives an issue', (_, options, name) => {
  // As JavaScript would call it.
  const { ok, issues } = importManifest(['Patient'], options as ImportManifestOptions);
  expect(ok).toBe(false);
  expect(issues.map(({ code, path }) => [code, path])).toEqual([['invalid-value', [name]]]);
});
