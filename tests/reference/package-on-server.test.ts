import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type {
  Bundle,
  BundleEntry,
  CodeableConcept,
  Observation,
  Parameters,
  ValueSet,
} from 'fhir/r4.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { codeSystemUrl } from '../../src/fhir/names/code-systems.ts';
import { packageFiles } from '../../src/generate/fhir-package/package-files.ts';
import { tarball } from '../../src/generate/fhir-package/tar.ts';
import { fromJson, toBundleOrThrow, toJson } from '../../src/index.ts';
import { CANONICAL_BASE } from '../../src/terminology/canonical-base.ts';
import { createTerminology } from '../../src/validate/terminology/server/index.ts';
import { clinic } from '../clinic.ts';
import { extensionsPack } from './definitions.ts';
import { send, storeExisting } from './exam-store.ts';
import { type FhirServer, startServer } from './server.ts';

// A real server (HAPI JPA) that installs our package as an operator does, and validates what is
// written. Its answers are those of FHIR's terminology service:
// https://hl7.org/fhir/R4/terminology-service.html, https://hl7.org/fhir/R5/terminology-service.html

const regions = codeSystemUrl(CANONICAL_BASE, 'regions');
const headers = { 'content-type': 'application/fhir+json', accept: 'application/fhir+json' };

function query(parameters: Readonly<Record<string, string>>): string {
  return new URLSearchParams(parameters).toString();
}

/** The value of a parameter of an answer, whatever its type. */
function partOf(answer: Record<string, unknown>, name: string): unknown {
  const { parameter = [] } = answer as unknown as Parameters; // the answer of an operation
  const found = parameter.find((one) => one.name === name);
  return Object.entries(found ?? {}).find(([key]) => key.startsWith('value'))?.[1];
}

function ofSystem(concept: CodeableConcept | undefined, table: 'values' | 'regions') {
  return concept?.coding?.find(({ system }) => system === codeSystemUrl(CANONICAL_BASE, table));
}

describe.each(['R4', 'R5'] as const)('a server of %s', (version) => {
  let server: FhirServer;
  let folder: string;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'fhir-package-'));
    const order = { version, base: CANONICAL_BASE, packageVersion: '1.0.0' } as const;
    const file = join(folder, 'package.tgz');
    await writeFile(file, tarball(await packageFiles(order)));
    const pack = (await extensionsPack()).filter((one) => one.version === version);
    server = await startServer({
      fhirVersion: version,
      package: file,
      load: pack.map((one) => one.folder),
    });
    await storeExisting(server.url, [...examples.values()], version);
  }, 1_800_000);

  afterAll(async () => {
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  });

  const exported = (name: string): Bundle => {
    const exam = examples.get(name);
    if (exam === undefined) throw new Error(`no example ${name}`);
    const options = {
      ...clinic,
      bundleType: 'transaction',
      profiles: true,
      fhirVersion: version,
    } as const;
    return toBundleOrThrow(exam, options) as Bundle; // what is looked at is alike in R5
  };

  /** The answer of an operation or a search, as it is. */
  async function get(path: string): Promise<Record<string, unknown>> {
    const answer = await fetch(`${server.url}/${path}`, { headers });
    return fromJson(await answer.text()).value as Record<string, unknown>; // of the server under test
  }

  describe('examinations', () => {
    test.each([...examples.keys()])(
      '%s is taken',
      async (name) => {
        const stored = await send(server.url, exported(name));
        const statuses = (stored.entry ?? []).map(({ response }) => response?.status.slice(0, 3));
        expect(statuses.length).toBeGreaterThan(20);
        expect([...new Set(statuses)].filter((status) => !status?.startsWith('20'))).toEqual([]);
      },
      900_000,
    );

    type Change = (observation: Observation) => Observation | undefined;
    const recoded = (concept: CodeableConcept, code: string, display: string): CodeableConcept => ({
      coding: [{ system: codeSystemUrl(CANONICAL_BASE, 'values'), code, display }],
      text: concept.text ?? display,
    });

    test.each<readonly [string, Change]>([
      [
        'a code that our system does not have',
        (one) =>
          ofSystem(one.valueCodeableConcept, 'values')?.code === 'presence.absent'
            ? { ...one, valueCodeableConcept: recoded({}, 'presence.perhaps', 'Perhaps') }
            : undefined,
      ],
      [
        'a code of our system that the value set of the profile does not have',
        (one) =>
          ofSystem(one.valueCodeableConcept, 'values')?.code === 'presence.absent'
            ? {
                ...one,
                valueCodeableConcept: recoded({}, 'state.abnormal', 'Examined, abnormality found'),
              }
            : undefined,
      ],
    ])(
      '%s is refused, and nothing of the exam is stored',
      async (_, change) => {
        const bundle = exported('neck-lump');
        let changed = 0;
        const entry = (bundle.entry ?? []).map((one): BundleEntry => {
          const { resource } = one;
          if (changed > 0 || resource?.resourceType !== 'Observation') return one;
          const other = change(resource as Observation); // by its type
          if (other === undefined) return one;
          changed += 1;
          return { ...one, resource: other };
        });
        expect(changed).toBe(1);
        const body = toJson({ ...bundle, entry });
        const answer = await fetch(server.url, { method: 'POST', headers, body });
        expect(answer.status).toBe(422);
        expect(await answer.text()).toMatch(
          /valueCodeableConcept|value\.ofType\(CodeableConcept\)/,
        );
      },
      900_000,
    );
  });

  describe('what the server knows of our codes', () => {
    test('$lookup gives display, parent and the German word', async () => {
      const answer = await get(
        `CodeSystem/$lookup?${query({ system: regions, code: 'lid-upper' })}`,
      );
      expect(partOf(answer, 'display')).toBe('Upper eyelid');
      expect(JSON.stringify(answer)).toContain('"eyes"');
      expect(JSON.stringify(answer)).toContain('Oberlid');
    });

    test.each([
      ['eyes', 'lid-upper', 'subsumes'],
      ['eyes', 'lid-upper.left', 'subsumes'],
      ['lid-upper', 'lid-upper.left', 'subsumes'],
      ['lid-upper.left', 'eyes', 'subsumed-by'],
      ['eyes', 'nose', 'not-subsumed'],
    ])('$subsumes of %s and %s: %s', async (codeA, codeB, outcome) => {
      const answer = await get(`CodeSystem/$subsumes?${query({ system: regions, codeA, codeB })}`);
      expect(partOf(answer, 'outcome')).toBe(outcome);
    });

    test('$expand lists a group of regions with its parts and their sides', async () => {
      const url = `${CANONICAL_BASE}/ValueSet/regions-below-eyes`;
      const { expansion } = (await get(
        `ValueSet/$expand?${query({ url })}`,
      )) as unknown as ValueSet; // of $expand
      const codes = (expansion?.contains ?? []).map(({ code }) => code);
      expect(codes).toEqual(
        expect.arrayContaining(['eyes', 'eyes.left', 'lid-upper', 'cornea.right']),
      );
      expect(codes).not.toContain('nose');
    });

    test.each([
      ['presence.present', true],
      ['state.abnormal', false],
      ['presence.perhaps', false],
    ])('$validate-code of %s in the values of presence: %s', async (code, result) => {
      const url = `${CANONICAL_BASE}/ValueSet/values-presence`;
      const system = codeSystemUrl(CANONICAL_BASE, 'values');
      const answer = await get(`ValueSet/$validate-code?${query({ url, system, code })}`);
      expect(partOf(answer, 'result')).toBe(result);
    });

    test('$translate leads to SNOMED CT with the relation of the map', async () => {
      const asked = {
        url: `${CANONICAL_BASE}/ConceptMap/regions-to-snomed`,
        system: regions,
        code: 'eyes',
      };
      const answer = await get(`ConceptMap/$translate?${query(asked)}`);
      expect(partOf(answer, 'result')).toBe(true);
      expect(JSON.stringify(answer)).toContain('371398005');
    });

    test('$validate holds a resource to a profile', async () => {
      const { entry = [] } = exported('neck-lump');
      const finding = entry.find(({ resource }) =>
        JSON.stringify(resource).includes('face-neck-finding'),
      );
      const body = toJson({ ...finding?.resource, status: undefined });
      const answer = await fetch(`${server.url}/Observation/$validate`, {
        method: 'POST',
        headers,
        body,
      });
      expect(await answer.text()).toContain('Observation.status');
    });
  });

  describe('searches of the package', () => {
    const count = async (search: string): Promise<number> =>
      Number((await get(`Observation?${search}&_summary=count`))['total']);

    test('find by site, below a region, by side, and a sign at a site', async () => {
      const site = (code: string): string => encodeURIComponent(`${regions}|${code}`);
      const [exact, below, left] = [
        await count(`body-site=${site('eyes.both')}`),
        await count(`body-site:below=${site('eyes')}`),
        await count(`side=${encodeURIComponent('http://snomed.info/sct|7771000')}`),
      ];
      expect(exact).toBeGreaterThan(0);
      expect(below).toBeGreaterThan(exact);
      expect(left).toBeGreaterThan(0);
    });

    test('find a sign at a site, and whether it is there', async () => {
      const token = (concept: CodeableConcept | undefined): string =>
        `${concept?.coding?.[0]?.system}|${concept?.coding?.[0]?.code}`;
      const absent = (exported('neck-lump').entry ?? [])
        .map(({ resource }) => resource as Observation) // those with a value and a site are
        .find(
          ({ valueCodeableConcept: value, bodySite }) =>
            bodySite !== undefined && ofSystem(value, 'values')?.code === 'presence.absent',
        );
      const [sign, where] = [token(absent?.code), token(absent?.bodySite)];
      expect(await count(`sign-site=${encodeURIComponent(`${sign}$${where}`)}`)).toBeGreaterThan(0);
      const elsewhere = `${sign}$${regions}|no-such-region`;
      expect(await count(`sign-site=${encodeURIComponent(elsewhere)}`)).toBe(0);
      const said = `${sign}$${token(absent?.valueCodeableConcept)}`;
      expect(await count(`code-value-concept=${encodeURIComponent(said)}`)).toBeGreaterThan(0);
    });
  });

  // The adapter of `validate/terminology` beside a server that was written by others.
  describe('the terminology adapter', () => {
    test('asks the server whether a code is in a value set, and for all codes of one', async () => {
      const terminology = createTerminology({ baseUrl: server.url, fetch, timeout: 120_000 });
      const valueSet = `${CANONICAL_BASE}/ValueSet/regions-below-eyes`;
      const asked = (code: string) => terminology.validateCode({ valueSet, system: regions, code });
      expect(await asked('lid-upper.left')).toEqual({ answer: 'in' });
      expect(await asked('nose')).toEqual({ answer: 'not-in' });
      const values = `${CANONICAL_BASE}/ValueSet/values-presence`;
      const bare = { valueSet: values, system: undefined, code: 'presence.absent' };
      expect(await terminology.validateCode(bare)).toEqual({ answer: 'in' });
      const none = {
        valueSet: 'https://clinic.example/ValueSet/none',
        system: regions,
        code: 'nose',
      };
      expect(await terminology.validateCode(none)).toMatchObject({ answer: 'not-checked' });
      const expansion = await terminology.expand(valueSet);
      expect(expansion?.codes).toContainEqual({ system: regions, code: 'cornea' });
    });
  });
});
