import { parseCheckSettings } from '../../../src/checks/settings/parse-settings.ts';
import { parseClinic } from '../../../src/clinic/parse-clinic.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { createCatalogue } from '../../../src/terminology/catalogue.ts';
import { codesFromConceptMap } from '../../../src/terminology/code-map/from-concept-map.ts';
import { compileProfiles } from '../../../src/validate/versions/r4.ts';
import { characters, many, nested, type Shape, text } from './shape.ts';

type Made = Readonly<Record<string, (bytes: number) => unknown>>;

const row = (code: string) => ({
  code,
  display: code,
  source: 'quay book',
  evidence: 'common-practice',
});
const region = (at: number) => ({
  ...row(`r${at}`),
  section: 'skin',
  laterality: 'paired',
  methods: ['inspection'],
});
const added = (tables: object) => ({ system: 'https://quay.example/codes', ...tables });

const longTexts = (wrap: (letters: string) => unknown): Made =>
  Object.fromEntries(
    characters.map(([name, letters]) => [
      `text of ${name}`,
      (bytes) => wrap(letters.repeat(bytes / letters.length)),
    ]),
  );

const catalogues: Made = {
  ...longTexts((letters) =>
    added({ regions: [{ ...region(0), code: letters, display: letters }] }),
  ),
  'regions in a chain': (bytes) =>
    added({ regions: many(bytes, (at) => ({ ...region(at), parent: `r${at + 1}` })) }),
  'regions in a circle': (bytes) => {
    const list = many(bytes, region);
    return added({
      regions: list.map((one, at) => ({ ...one, parent: `r${(at + 1) % list.length}` })),
    });
  },
  'one code for all': (bytes) => added({ regions: many(bytes, () => region(0)) }),
  'unknown tables': (bytes) =>
    added(Object.fromEntries(many(bytes, (at) => [`regionns${at}`, []]))),
  'unknown references': (bytes) =>
    added({ findings: many(bytes, (at) => ({ ...row(`f${at}`), regions: [`x${at}`] })) }),
  'nulls for rows': (bytes) => added({ findings: many(bytes, () => null) }),
  'deep row': (bytes) => added({ findings: [{ ...row('f'), regions: nested(bytes) }] }),
};

const conceptMap = (elements: unknown) => ({
  resourceType: 'ConceptMap',
  group: [{ source: 'findings', target: 'https://quay.example/codes', element: elements }],
});

const conceptMaps: Made = {
  ...longTexts((letters) => conceptMap([{ code: letters, target: [{ code: letters }] }])),
  'many targets of one code': (bytes) =>
    conceptMap([
      {
        code: 'naevus',
        target: many(bytes, (at) => ({ code: `t${at}`, equivalence: 'wider' })),
      },
    ]),
  'one code again': (bytes) =>
    conceptMap(
      many(bytes, (at) => ({ code: 'naevus', target: [{ code: `t${at}`, equivalence: 'wider' }] })),
    ),
  'unknown codes': (bytes) =>
    conceptMap(
      many(bytes, (at) => ({
        code: `naevvus${at}`,
        target: [{ code: 't', equivalence: 'wider' }],
      })),
    ),
  'nulls for elements': (bytes) => conceptMap(many(bytes, () => null)),
  'deep list': (bytes) => nested(bytes),
};

const settings: Made = {
  ...longTexts((letters) => ({ sideDifferences: { pfh: letters }, populations: [letters] })),
  'unknown names': (bytes) => Object.fromEntries(many(bytes, (at) => [`ruleSetts${at}`, at])),
  'wrong rule sets': (bytes) => ({ ruleSets: many(bytes, (at) => `horner-signss${at}`) }),
  'many judgements': (bytes) => ({ judgements: many(bytes, () => null) }),
  'deep list': (bytes) => nested(bytes),
};

const mapped = (fields: unknown) => ({
  format: 'face-neck-mapping/1',
  source: { syntax: 'csv', zone: 'UTC', dates: ['yyyy-MM-dd'] },
  exam: {},
  fields,
});

const mappings: Made = {
  ...longTexts((letters) => mapped({ [letters]: { finding: letters } })),
  'many fields': (bytes) =>
    mapped(
      Object.fromEntries(
        many(bytes, (at) => [
          `Field ${at}`,
          { finding: 'naevus', region: 'cheek-malar', side: 'left' },
        ]),
      ),
    ),
  'many wrong fields': (bytes) =>
    mapped(Object.fromEntries(many(bytes, (at) => [`Field ${at}`, { findding: `naevvus${at}` }]))),
  'many words': (bytes) => ({
    ...mapped({}),
    words: {
      mole: Object.fromEntries(many(bytes, (at) => [`word ${at}`, { presence: 'present' }])),
    },
  }),
  'many words that clash': (bytes) => ({
    ...mapped({}),
    noValue: Object.fromEntries(many(bytes, (at) => [`Word ${at}`, { reason: 'unknwn' }])),
  }),
  'deep list': (bytes) => nested(bytes),
};

const base = 'http://hl7.org/fhir/StructureDefinition/Observation';
const profile = (differential: unknown) => ({
  resourceType: 'StructureDefinition',
  url: 'https://quay.example/StructureDefinition/x',
  name: 'X',
  status: 'active',
  kind: 'resource',
  abstract: false,
  type: 'Observation',
  baseDefinition: base,
  derivation: 'constraint',
  differential: { element: differential },
});

const profiles: Made = {
  ...longTexts((letters) => [profile([{ id: letters, path: letters, patternString: letters }])]),
  'many slices': (bytes) => [
    profile([
      {
        id: 'Observation.component',
        path: 'Observation.component',
        slicing: { discriminator: [{ type: 'pattern', path: 'code' }], rules: 'open' },
      },
      ...many(bytes, (at) => ({
        id: `Observation.component:s${at}`,
        path: 'Observation.component',
        sliceName: `s${at}`,
        max: '1',
      })),
    ]),
  ],
  'many unknown elements': (bytes) => [
    profile(
      many(bytes, (at) => ({ id: `Observation.x${at}`, path: `Observation.x${at}`, max: '0' })),
    ),
  ],
  'one element again': (bytes) => [
    profile(many(bytes, () => ({ id: 'Observation.code', path: 'Observation.code', min: 1 }))),
  ],
  'rules without end': (bytes) => [
    profile([
      {
        id: 'Observation',
        path: 'Observation',
        constraint: many(bytes, (at) => ({
          key: `k${at}`,
          severity: 'error',
          human: 'x',
          expression: 'code.exists()',
        })),
      },
    ]),
  ],
  'one long rule': (bytes) => [
    profile([
      {
        id: 'Observation',
        path: 'Observation',
        constraint: [
          { key: 'k', severity: 'error', human: 'x', expression: `${'('.repeat(bytes / 2)}code` },
        ],
      },
    ]),
  ],
  'one rule of many parts': (bytes) => [
    profile([
      {
        id: 'Observation',
        path: 'Observation',
        constraint: [
          {
            key: 'k',
            severity: 'error',
            human: 'x',
            expression: text(bytes, () => 'code.exists() and '),
          },
        ],
      },
    ]),
  ],
  'value set of many codes': (bytes) => [
    {
      resourceType: 'ValueSet',
      url: 'https://quay.example/ValueSet/x',
      status: 'active',
      compose: {
        include: [
          {
            system: 'https://quay.example/codes',
            concept: many(bytes, (at) => ({ code: `c${at}` })),
          },
        ],
      },
    },
  ],
  'value sets that import each other': (bytes) =>
    many(bytes, (at) => ({
      resourceType: 'ValueSet',
      url: `https://quay.example/ValueSet/x${at}`,
      status: 'active',
      compose: { include: [{ valueSet: [`https://quay.example/ValueSet/x${at + 1}`] }] },
    })),
  'profiles built on each other': (bytes) =>
    many(bytes, (at) => ({
      ...profile([{ id: 'Observation.code', path: 'Observation.code', min: 1 }]),
      url: `https://quay.example/StructureDefinition/x${at}`,
      baseDefinition: `https://quay.example/StructureDefinition/x${at + 1}`,
    })),
  'code system in levels': (bytes) => [
    {
      resourceType: 'CodeSystem',
      url: 'https://quay.example/codes',
      status: 'active',
      content: 'complete',
      concept: [nested(bytes, (inner) => ({ code: 'c', concept: [inner] }))],
    },
  ],
  'nulls for resources': (bytes) => many(bytes, () => null),
};

const clinicFile = (parts: object) => ({ format: 'face-neck-clinic/1', ...parts });
const line = { source: 'findings', system: 'https://quay.example/codes', relation: 'equivalent' };

const clinics: Made = {
  ...Object.fromEntries(
    Object.entries(catalogues).map(([name, make]): [string, Made[string]] => [
      name,
      (bytes) => clinicFile({ catalogue: make(bytes) }),
    ]),
  ),
  'words of unknown rows': (bytes) =>
    clinicFile({
      words: { findings: Object.fromEntries(many(bytes, (at) => [`naevuz${at}`, ['x']])) },
    }),
  'unknown populations': (bytes) =>
    clinicFile({ checks: { populations: many(bytes, (at) => `Adultz${at}`) } }),
  'lines of one code': (bytes) =>
    clinicFile({ codeMap: many(bytes, (at) => ({ ...line, code: 'naevus', target: `t${at}` })) }),
  'unknown names': (bytes) =>
    clinicFile(Object.fromEntries(many(bytes, (at) => [`langage${at}`, 'en']))),
};

const entries: Readonly<Record<string, readonly [(value: never) => unknown, Made]>> = {
  createCatalogue: [createCatalogue, catalogues],
  codesFromConceptMap: [codesFromConceptMap, conceptMaps],
  parseCheckSettings: [parseCheckSettings, settings],
  parseClinic: [parseClinic, clinics],
  'prepare mapping': [prepareMapping, mappings],
  compileProfiles: [compileProfiles, profiles],
};

export const tableShapes: readonly Shape[] = Object.entries(entries).flatMap(
  ([entry, [call, made]]) =>
    Object.entries(made).map(
      ([name, make]): Shape => ({
        entry,
        name,
        prepare: (bytes) => {
          const value = make(bytes) as never; // wrong on purpose
          return () => call(value);
        },
      }),
    ),
);
