import { describe, expect, test } from 'vitest';
import type { Issue } from '../../../src/issues/issue.ts';
import * as r4 from '../../../src/validate/versions/all-r4.ts';
import * as r4b from '../../../src/validate/versions/all-r4b.ts';
import * as r5 from '../../../src/validate/versions/all-r5.ts';
import { bundleCases } from '../../reference/all-types/wholes/bundles.ts';

const versions = { R4: r4, R4B: r4b, R5: r5 } as const;

/** Pieces of other lengths each, so that every place is cut at. */
function* pieces(text: string, length: number): Generator<string> {
  for (let at = 0, step = length; at < text.length; at += step, step = (step % 7) + 1)
    yield text.slice(at, at + step);
}

/** What only the bundle as a whole can tell of an entry stands where that begins, and not inside it. */
function withoutPlaces(issues: readonly Issue[]): Issue[] {
  const place = { line: 1 };
  return issues.map((each) => (ofBundle.has(each.code) ? { ...each, source: place } : each));
}

const ofBundle: ReadonlySet<string> = new Set([
  'unreachable-entry',
  'contradiction',
  'missing-property',
  'unresolved-reference',
]);

function told(issues: readonly Issue[]): string[] {
  return [
    ...new Set(
      issues.map(({ code, severity, path, rule, message, source }) =>
        [severity, code, path.join('.'), rule, message, JSON.stringify(source)].join(' | '),
      ),
    ),
  ].sort();
}

async function byEntry(
  { validateEntries }: typeof r4,
  text: string,
  options?: r4.ValidateOptions,
): Promise<{ issues: Issue[]; whole: r4.Conformance | undefined; rules: string[] }> {
  const issues: Issue[] = [];
  const rules: string[] = [];
  let whole: r4.Conformance | undefined;
  for await (const each of validateEntries(() => pieces(text, 3), options)) {
    issues.push(...each.issues);
    rules.push(...each.unchecked.map(({ rule }) => rule));
    whole = each.whole;
  }
  return { issues, whole, rules };
}

describe.each(['R4', 'R4B', 'R5'] as const)('a bundle entry by entry, in %s', (version) => {
  const entry = versions[version];
  const cases = Object.entries(bundleCases(version));

  test.each(cases)('tells what the whole tells: %s', async (_, bundle) => {
    for (const text of [JSON.stringify(bundle), JSON.stringify(bundle, null, 2)]) {
      const whole = entry.validateText(text);
      const { issues, whole: verdict } = await byEntry(entry, text);
      expect(told(withoutPlaces(issues))).toEqual(told(withoutPlaces(whole.issues)));
      expect(verdict === 'does-not-conform').toBe(whole.conformance === 'does-not-conform');
    }
  });
});

const uuid = 'urn:uuid:c757873d-ec9a-4326-a141-556f43239521';
const collection = {
  resourceType: 'Bundle',
  type: 'collection',
  entry: [
    { fullUrl: uuid, resource: { resourceType: 'Patient' } },
    {
      fullUrl: 'urn:uuid:c757873d-ec9a-4326-a141-556f43239522',
      resource: {
        resourceType: 'Observation',
        status: 'final',
        code: { text: 'Skin' },
        subject: { reference: uuid },
      },
    },
  ],
};

describe('what entry by entry cannot be told', () => {
  test('is said of a profile of the bundle', async () => {
    const profile = 'https://vineyard.example/bundle';
    const text = JSON.stringify({ ...collection, meta: { profile: [profile] } });
    const { whole, rules } = await byEntry(r4, text);
    expect(rules).toContain(profile);
    expect(whole).toBe('not-fully-checked');
  });

  test('is said where a rule asks what another entry holds', async () => {
    const definition = {
      resourceType: 'StructureDefinition',
      url: 'https://vineyard.example/observation',
      name: 'Seen',
      status: 'active',
      kind: 'resource',
      abstract: false,
      type: 'Observation',
      baseDefinition: 'http://hl7.org/fhir/StructureDefinition/Observation',
      derivation: 'constraint',
      differential: {
        element: [
          { id: 'Observation', path: 'Observation' },
          {
            id: 'Observation.subject',
            path: 'Observation.subject',
            constraint: [
              {
                key: 'v-1',
                severity: 'error',
                human: 'born',
                expression: 'resolve().birthDate.exists()',
              },
            ],
          },
        ],
      },
    };
    const claiming = structuredClone(collection);
    Object.assign(claiming.entry[1]?.resource ?? {}, { meta: { profile: [definition.url] } });
    const text = JSON.stringify(claiming);
    const options = { profiles: [definition] };
    expect(r4.validateText(text, options).conformance).toBe('does-not-conform');
    const { whole, rules } = await byEntry(r4, text, options);
    expect(rules).toContain('https://hl7.org/fhir/R4/bundle.html#references');
    expect(whole).not.toBe('conforms');
  });
});

describe('damaged texts', () => {
  const text = JSON.stringify(collection, null, 1);

  test.each([
    ['cut in an entry', text.slice(0, text.indexOf('Observation') + 3)],
    ['cut between entries', text.slice(0, text.lastIndexOf(']'))],
    ['two commas', text.replace(/\},\s*\{/, '},,{')],
    ['a comma at the end', text.replace(/\}\s*\]/, '},]')],
    ['more behind it', `${text}{}`],
    ['a name twice', text.replace('"type"', '"entry": [], "type"')],
    ['no closing of an entry', text.replace('"Patient"\n', '"Patient\n')],
    ['a list', `[${text}]`],
    ['nothing', ''],
    ['a list of entries that is none', '{"resourceType":"Bundle","type":"collection","entry":{}}'],
    [
      'entries of no objects',
      '{"resourceType":"Bundle","type":"collection","entry":[null,1,"x",[]]}',
    ],
    ['an empty list', '{"resourceType":"Bundle","type":"collection","entry":[]}'],
    [
      'another resource with entries',
      '{"resourceType":"List","status":"current","mode":"working","entry":[{"item":{"display":"x"}}]}',
    ],
  ])('are refused: %s', async (_, damaged) => {
    const { issues, whole } = await byEntry(r4, damaged);
    expect(whole).toBe('does-not-conform');
    expect(issues.some(({ severity }) => severity === 'error')).toBe(true);
  });

  test('each place of a cut is told of, and none stops the program', async () => {
    for (let at = 0; at < text.length; at += 11) {
      const { whole } = await byEntry(r4, text.slice(0, at));
      expect(whole).toBe('does-not-conform');
    }
  });

  test('a fault in one entry stops no other', async () => {
    const faulty =
      '{"resourceType":"Bundle","type":"collection","entry":[{x},{"fullUrl":"urn:uuid:c757873d-ec9a-4326-a141-556f43239521","resource":{"resourceType":"Patient","gender":"banana"}}]}';
    const { issues } = await byEntry(r4, faulty);
    const found = issues.map(({ code, path }) => `${code} ${path.join('.')}`);
    expect(found).toContain('not-json entry.0');
    expect(found.some((one) => one.endsWith('entry.1.resource.gender'))).toBe(true);
  });

  test('an entry longer than a text may be is refused', async () => {
    const { whole, issues } = await byEntry(r4, text, { budget: { characters: 100 } });
    expect(whole).toBe('does-not-conform');
    expect(issues.map(({ code }) => code)).toEqual(['too-large']);
  });
});
