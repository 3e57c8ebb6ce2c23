import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { toJson } from '../../src/fhir/json/to-json.ts';
import type { Exam } from '../../src/model/exam.ts';
import { createRandom } from '../../src/testing/random.ts';
import { clinic } from '../clinic.ts';
import type { Json } from './spots.ts';

/**
 * What a server gives back for an exam that was sent to it as a transaction, after the published
 * rules: each resource gets an id of the server, references are rewritten to it, versions are noted
 * in `meta`, and a search set has no order.
 * @see https://hl7.org/fhir/R4/http.html#trules and https://hl7.org/fhir/R4/bundle.html#searchset
 */
export function searchSetOf(exam: Exam, seed: number): object {
  const random = createRandom(seed);
  const bundle = toBundleOrThrow(exam, {
    ...clinic,
    bundleType: 'transaction',
    transaction: 'conditional',
  });
  const base = 'https://clinic.example/fhir';
  const names = new Map<string, string>();
  const resources = (bundle.entry ?? []).map(({ fullUrl = '', resource }, at) => {
    const json = fromJson(toJson(resource)).value as Json;
    json.id = String(1000 + at);
    json.meta = { versionId: '1', lastUpdated: '2026-01-02T03:04:05.678+00:00', source: '#abc' };
    names.set(fullUrl, `${String(json.resourceType)}/${String(json.id)}`);
    return json;
  });
  return {
    resourceType: 'Bundle',
    id: 'a1b2',
    meta: { lastUpdated: '2026-01-02T03:04:06Z' },
    type: 'searchset',
    total: resources.length,
    link: [{ relation: 'self', url: `${base}/DiagnosticReport?_include=*` }],
    entry: random.shuffled(resources).map((resource) => ({
      fullUrl: `${base}/${String(resource.resourceType)}/${String(resource.id)}`,
      resource: rewritten(resource, names),
      search: { mode: resource.resourceType === 'DiagnosticReport' ? 'match' : 'include' },
    })),
  };
}

function rewritten(value: unknown, names: ReadonlyMap<string, string>): unknown {
  if (typeof value === 'string') return names.get(value) ?? value;
  if (Array.isArray(value)) return value.map((entry) => rewritten(entry, names));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([name, inner]) => [name, rewritten(inner, names)]);
  // The copy keeps the texts of decimals, which entries do not show.
  return { ...value, ...Object.fromEntries(entries) };
}
