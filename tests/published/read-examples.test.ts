import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decimalText } from '../../src/fhir/json/decimal.ts';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { published } from '../../src/generate/published.ts';
import { pathText } from '../../src/issues/path.ts';
import { fromBundle, type Supplied } from '../../src/read/from-bundle.ts';
import { type Json, spots } from '../read/spots.ts';

/** What an exam must have and these examples do not say. */
const supplied: Supplied = {
  id: 'published-example',
  status: 'final',
  subject: { reference: 'Patient/not-told' },
  examiners: [{ key: 'reader', reference: 'Practitioner/not-told' }],
  performed: { start: '2012' },
  recorded: '2026-01-01T00:00:00Z',
  protocol: { id: 'full', version: '1.0.0' },
};

/** A bundle of one example and of the examples that it refers to, but for other reports. */
function bundleOf(folder: string, file: string): Json {
  const resource = read(join(folder, file));
  if (resource.resourceType === 'Bundle') return resource;
  const found = new Map([[file, resource]]);
  for (const one of [...found.values()]) {
    for (const { holder, step } of spots(one)) {
      const value = holder[step];
      if (step !== 'reference' || typeof value !== 'string') continue;
      const other = `${value.replace('/', '-')}.json`;
      if (other.startsWith('DiagnosticReport-')) continue;
      if (/^[A-Za-z0-9.-]+$/.test(other) && !found.has(other) && existsSync(join(folder, other))) {
        found.set(other, read(join(folder, other)));
      }
    }
  }
  const entry = [...found.values()].map((one) => ({ resource: one }));
  return { resourceType: 'Bundle', type: 'collection', entry };
}

function read(path: string): Json {
  return fromJson(readFileSync(path, 'utf8').replace(/^\uFEFF/, '')).value as Json;
}

/**
 * What follows from the exam without standing in it: types, generated text, the code of a visit, the
 * category of what was examined. What a reference says of its target is told once.
 */
const follows = [
  /^entry\[\d+\]\.resource\.active$/,
  /resourceType$/,
  /^type$/,
  /\.text\.(status|div)$/,
  /\.class(\[0\]\.coding\[0\])?\.(system|code|display)$/,
  /\.category\[0\]\.coding\[0\]\.(system|code|display)$/,
  /\.(subject|performer\[\d+\])\.display$/,
];

/** A reference that leads to a resource of the bundle, which was read in its place. */
function leadsInside(bundle: Json, text: unknown): boolean {
  if (typeof text !== 'string') return false;
  if (text.startsWith('#')) return true;
  const entries = bundle.entry as { resource: Json }[];
  return entries.some(({ resource }) => `${resource.resourceType}/${resource.id}` === text);
}

/** A coded value that is read as the presence of the sign. @see terminology/published/snomed.json */
const asPresence: ReadonlySet<unknown> = new Set(['2667000', 'Absent (qualifier value)']);

function isMeant(at: string, leaf: unknown): boolean {
  const isPresence = asPresence.has(leaf) && at.includes('.valueCodeableConcept.');
  return isPresence || follows.some((pattern) => pattern.test(at));
}

/** Values that stand neither in the exam nor in the remainder. */
function unaccounted(bundle: Json): string[] {
  const { value, remainder } = fromBundle(bundle, { supplied });
  const said = JSON.stringify(value);
  const rest = remainder.map(({ path }) => pathText(path));
  return [...spots(bundle)].flatMap(({ holder, step, path }) => {
    const leaf = holder[step];
    if (typeof leaf === 'object' && leaf !== null) return [];
    const at = pathText(path);
    if (
      rest.some(
        (part) => part === '' || `${at}.`.startsWith(`${part}.`) || at.startsWith(`${part}[`),
      )
    ) {
      return [];
    }
    const text = typeof leaf === 'number' ? decimalText(holder, String(step)) : leaf;
    const quoted = JSON.stringify(text).slice(
      typeof text === 'string' ? 1 : 0,
      typeof text === 'string' ? -1 : undefined,
    );
    if (step === 'reference' && leadsInside(bundle, leaf)) return [];
    return said.includes(quoted) || isMeant(at, leaf) ? [] : [`${at} ${quoted.slice(0, 60)}`];
  });
}

describe.each([
  ['hl7.fhir.r4.examples', '4.0.1'],
  ['hl7.fhir.r4b.examples', '4.3.0'],
  ['hl7.fhir.r5.examples', '5.0.0'],
])('examples of %s', (name, version) => {
  it('are read as far as they can be understood, and the rest is told', async () => {
    const folder = await published(name, version);
    const files = readdirSync(folder).filter((file) =>
      /^(DiagnosticReport|Observation)-.*\.json$/.test(file),
    );
    const unread: string[] = [];
    const lost: string[] = [];
    for (const file of files) {
      const bundle = bundleOf(folder, file);
      const { value, issues } = fromBundle(bundle, { supplied });
      if (value === undefined)
        unread.push(
          `${file}: ${issues.map(({ code, path }) => `${code} ${pathText(path)}`).join(', ')}`,
        );
      else lost.push(...unaccounted(bundle).map((spot) => `${file}: ${spot}`));
    }
    expect(files.length).toBeGreaterThan(50);
    expect(lost).toEqual([]);
    expect(unread).toEqual([]);
  });
});
