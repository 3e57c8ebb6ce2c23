import type { Bundle, Coding, ConceptMap, Observation, ValueSet } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { clinicDefinitions, parseClinic } from '../../src/clinic/index.ts';
import { CANONICAL_BASE } from '../../src/fhir/names/systems.ts';
import { packageDefinitions } from '../../src/generate/fhir-package/package-files.ts';
import {
  adopterCodes,
  codesFromConceptMap,
  type Exam,
  type ExamDraft,
  entered,
  type Issue,
  orThrow,
  toBundle,
} from '../../src/index.ts';
import { compileProfiles, validateBundle } from '../../src/validate/versions/all-r4.ts';
import * as r5 from '../../src/validate/versions/all-r5.ts';
import { harbourFile, maskCheck } from './harbour.ts';

/** The clinic with a test, a result and a reason of its own; results the profiles take from their list alone. */
const clinic = orThrow(
  'read the clinic file',
  parseClinic({
    ...harbourFile(),
    catalogue: {
      ...harbourFile().catalogue,
      testPoints: [
        {
          code: 'mask-seal',
          display: 'Seal of the mask while breathing out',
          group: 'function',
          section: 'skin',
          region: 'seal-line',
          laterality: 'paired',
          results: ['leaks'],
        },
      ],
      testResults: [{ code: 'leaks', display: 'Air leaks' }],
      reasons: [{ code: 'swell', display: 'Swell on the quay', dataAbsentReason: 'not-performed' }],
    },
    codeMap: [
      ...harbourFile().codeMap,
      {
        source: 'findings',
        code: 'mask-mark',
        system: 'https://harbour.example/old-codes',
        target: 'M8',
        relation: 'wider',
      },
    ],
  }),
);

const exam: Exam = (() => {
  const made = maskCheck('quay-1', '2025-05-06T09:00:00+02:00');
  const unseen = {
    kind: 'region-state',
    region: 'forehead',
    side: 'left',
    state: 'not-examined',
    reason: { code: 'swell' },
  };
  const seal = { kind: 'function-test', test: 'mask-seal', side: 'left', result: 'leaks' };
  const begun: ExamDraft = { exam: { ...made, status: 'draft' } };
  const { catalogue } = clinic;
  const draft = [unseen, seal].reduce<ExamDraft>(
    (told, one) => orThrow('enter', entered(told, one, { catalogue })),
    begun,
  );
  return { ...draft.exam, status: 'final' };
})();

const order = { version: 'R4', base: CANONICAL_BASE, packageVersion: '0.1.0' } as const;
const guide = await packageDefinitions(order);
const made = clinicDefinitions(clinic);
const bundle = orThrow('export', toBundle(exam, { ...clinic.export, profiles: true })) as Bundle;

/** What the profiles of the guide say of the record, with definitions in place of those of the same URL. */
function bindingIssues(definitions: readonly object[]): string[] {
  const urls = new Set(definitions.map((one) => 'url' in one && one.url));
  const whole = [...guide.filter(({ url }) => !urls.has(url)), ...definitions];
  const profiles = compileProfiles(whole);
  expect(profiles.issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  const { issues } = validateBundle(bundle, { profiles });
  return issues.filter(isOfBinding).map(({ severity, code }) => `${severity} ${code}`);
}

function isOfBinding({ code }: Issue): boolean {
  return ['unknown-code', 'not-in-value-set', 'wrong-system'].includes(code);
}

describe('the definitions of a clinic', () => {
  it('let the profiles of the guide take its records, which they do not without', () => {
    const without = bindingIssues([]);
    expect(without.filter((told) => told.startsWith('error'))).toHaveLength(1);
    expect(without.filter((told) => told.startsWith('warning')).length).toBeGreaterThan(3);
    expect(bindingIssues(made)).toEqual([]);
  });

  it('are a code system, the value sets of the guide and a concept map, without a fault', () => {
    expect(made.map(({ resourceType, id }) => `${resourceType}/${id}`)).toEqual([
      'CodeSystem/clinic-codes',
      'ValueSet/regions',
      'ValueSet/findings',
      'ValueSet/negatives',
      'ValueSet/protocols',
      'ValueSet/test-points',
      'ValueSet/test-results',
      'ValueSet/reasons',
      'ValueSet/values-state-reasons',
      'ConceptMap/clinic-code-map',
    ]);
    const urls = new Set(guide.map(({ url }) => url));
    const sets = made.filter(({ resourceType }) => resourceType === 'ValueSet');
    expect(sets.filter(({ url }) => !urls.has(url))).toEqual([]);
    for (const one of made) {
      const { issues } = validateBundle(one);
      expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
    for (const one of clinicDefinitions(clinic, { fhirVersion: 'R5' })) {
      const { issues } = r5.validateBundle(one);
      expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
  });

  it('hold every coding that a record of the clinic has of a sign and of a place', () => {
    const held = (id: string): ReadonlySet<string> => {
      const set = made.find((one): one is ValueSet => one.id === id);
      return new Set(
        set?.compose?.include.flatMap(({ system, concept }) =>
          concept === undefined ? [`${system}|*`] : concept.map(({ code }) => `${system}|${code}`),
        ),
      );
    };
    const missing = (codings: readonly Coding[] = [], id: string): Coding[] =>
      codings.filter(
        ({ system, code }) => !held(id).has(`${system}|${code}`) && !held(id).has(`${system}|*`),
      );
    const observations = (bundle.entry ?? []).flatMap(
      ({ resource }) => (resource?.resourceType === 'Observation' ? [resource as Observation] : []), // as it says
    );
    const findings = observations.filter(({ meta }) =>
      meta?.profile?.some((url) => url.endsWith('face-neck-finding')),
    );
    expect(findings).toHaveLength(3);
    expect(findings.flatMap(({ code }) => missing(code.coding, 'findings'))).toEqual([]);
    expect(observations.flatMap(({ bodySite }) => missing(bodySite?.coding, 'regions'))).toEqual(
      [],
    );
  });

  it('say the code map as a ConceptMap, which is read back as the same map', () => {
    const map = made.find((one): one is ConceptMap => one.resourceType === 'ConceptMap');
    const { catalogue } = clinic;
    const lines = (clinic.file.codeMap ?? []).map((line, at) => ({ ...line, path: [at] }));
    const ours = map?.group?.filter(({ source }) => source?.startsWith(CANONICAL_BASE));
    const read = orThrow('read', codesFromConceptMap({ ...map, group: ours }, { catalogue }));
    const builtIn = lines.filter(({ code }) => code === 'naevus');
    expect(read).toEqual(orThrow('check', adopterCodes(builtIn, { catalogue })));
    expect(map?.group?.find(({ source }) => source === 'https://harbour.example/codes')).toEqual({
      source: 'https://harbour.example/codes',
      target: 'https://harbour.example/old-codes',
      element: [
        {
          code: 'mask-mark',
          display: 'Pressure mark of a mask',
          target: [{ code: 'M8', equivalence: 'wider' }],
        },
      ],
    });
  });

  it('are none for a file without rows and code map', () => {
    const { identity, format } = harbourFile();
    const bare = orThrow('read', parseClinic({ format, identity }));
    expect(clinicDefinitions(bare)).toEqual([]);
  });
});
