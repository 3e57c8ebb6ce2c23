import {
  type AnyBundle,
  type Exam,
  parseExam,
  type Statement,
  toBundle,
} from '../../../src/index.ts';
import { type OptionalPart, optionalParts } from '../../../src/model/optional-parts.ts';
import { german } from '../../../src/terminology/languages/de.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { withOnly } from '../../../src/testing/without.ts';
import { clinic } from '../../clinic.ts';
import { canary } from './mutate.ts';

/**
 * Sound inputs that damage starts from. Most have one to three statements, so that a call takes well
 * under a millisecond and the place of the damage is seldom a part that says nothing new; seeds from
 * {@link largeFrom} on are exams as they come.
 */
export const largeFrom = 1_000;

const exams = new Map<number, Exam>();

/** The exam of a seed, with the words of a patient in every text that takes them. */
export function exam(seed: number): Exam {
  const made =
    exams.get(seed) ?? (seed < largeFrom ? withWords(cut(seed)) : sampleExam(seed, sizeOf(seed)));
  exams.set(seed, made);
  return made;
}

const sizeOf = (seed: number) => ({
  size: seed % 4 === 0 ? ('edge' as const) : ('small' as const),
});

function cut(seed: number): Exam {
  const whole = sampleExam(seed, sizeOf(seed));
  const random = createRandom(seed);
  const left: Statement[] = [];
  const count = random.int(1, 3);
  while (left.length < Math.min(count, whole.statements.length)) {
    const one = random.pick(whole.statements);
    if (!left.includes(one)) left.push(one);
  }
  const parts = optionalParts.filter((part) => part !== 'history' && random.chance(0.3));
  // What the record went through belongs to the statements that are gone.
  const status =
    whole.status === 'amended' || whole.status === 'corrected' ? 'final' : whole.status;
  const cutDown = { ...withOnly(whole, left, new Set<OptionalPart>(parts)), status };
  return parseExam(cutDown).ok ? cutDown : whole;
}

type Holder = Record<string, unknown>;

/**
 * Puts the canary behind each text of an exam but the keys that programs make, and takes it back where
 * the exam is then no exam.
 */
function withWords(given: Exam): Exam {
  const made = structuredClone(given);
  for (const { holder, name } of texts(made)) {
    const before = holder[name];
    const accepted = [`${before} ${canary}`, `${before}${canary}`].some((text) => {
      holder[name] = text;
      return parseExam(made).ok;
    });
    if (!accepted) holder[name] = before;
  }
  return made;
}

function texts(value: unknown): { readonly holder: Holder; readonly name: string }[] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Holder; // an object or a list, read by any of its names
  return Object.entries(holder).flatMap(([name, member]) =>
    typeof member !== 'string' ? texts(member) : name === 'key' ? [] : [{ holder, name }],
  );
}

const types = ['collection', 'transaction', 'document'] as const;

/** The bundle of a seed; of two in three small ones some entries alone, since most entries are alike. */
export const bundle =
  (version: 'R4' | 'R5') =>
  (seed: number): AnyBundle | undefined => {
    const whole = toBundle(exam(seed), {
      ...clinic,
      fhirVersion: version,
      bundleType: types[seed % 3] ?? 'collection',
      narrative: seed % 2 === 0,
    }).value;
    if (whole?.entry === undefined || seed >= largeFrom || seed % 3 === 0) return whole;
    const random = createRandom(seed);
    const first = random.int(0, whole.entry.length - 1);
    // One structure in all versions, whose typings differ in Extension alone.
    return { ...whole, entry: whole.entry.slice(first, first + 3) } as AnyBundle;
  };

const row = { display: 'Quay mark', source: 'quay book', evidence: 'common-practice' };

/** Rows of an adopter, one a table. */
export const additions = () => ({
  system: 'https://quay.example/codes',
  regions: [
    { ...row, code: 'quay-place', section: 'skin', laterality: 'paired', methods: ['inspection'] },
  ],
  findings: [{ ...row, code: 'quay-mark', regions: ['quay-place'], maps: [] }],
  attributes: [
    {
      ...row,
      code: 'quay-hue',
      family: 'lesion',
      type: 'code',
      values: [{ code: 'red', display: 'Red' }],
    },
  ],
  protocols: [
    {
      ...row,
      code: 'quay',
      version: '1',
      regions: [{ region: 'quay-place', methods: ['inspection'] }],
      points: [],
      tests: [],
    },
  ],
  scales: [
    {
      ...row,
      code: 'quay-scale',
      versions: ['1'],
      type: 'sum',
      region: 'general',
      laterality: 'whole',
      items: [{ code: 'a', display: 'A', weight: 1 }],
      licence: 'none',
    },
  ],
});

export const conceptMap = () => ({
  resourceType: 'ConceptMap',
  group: [
    {
      source: 'findings',
      target: 'https://quay.example/codes',
      element: [
        { code: 'naevus', target: [{ code: 'm', equivalence: 'wider' }] },
        { code: 'scar', noMap: true },
      ],
    },
  ],
});

export const mapCsv = `source,code,system,target,relation,action,version,display,unit
findings,naevus,https://quay.example/codes,m,wider,add,1,Mark,
measures,pfh,https://quay.example/codes,f,equivalent,replace,,Gap,mm
`;

/** What an adopter says of exports. */
export const exportOptions = (seed: number) => ({
  fhirVersion: (['R4', 'R4B', 'R5'] as const)[seed % 3],
  bundleType: types[seed % 3],
  language: language(),
  laterality: 'extension',
  transaction: 'put',
  masterData: { patient: 'match', device: 'own' },
  detail: 'everything',
  filing: {
    reportCategory: { system: 'https://quay.example/codes', code: 'r', display: 'Round' },
    encounterStatus: 'finished',
    security: [{ system: 'https://quay.example/codes', code: 's' }],
    tags: [{ system: 'https://quay.example/codes', code: 't', display: 'Tag' }],
  },
  identity: { exam: 'https://quay.example/exams', statement: 'https://quay.example/statements' },
  canonicalBase: 'https://quay.example/fhir',
  profiles: false,
  allowDraft: true,
  narrative: true,
});

/** A few displays alone: damage to a text says the same wherever it is done. */
export const language = () => ({
  ...german,
  displays: { regions: { forehead: 'Stirn' }, findings: { scar: 'Narbe' } },
});

export const settings = () => ({
  ruleSets: ['horner-signs'],
  sideDifferences: { pfh: '2' },
  memoryValues: true,
  judgements: [{ statement: 'a', changing: true }],
  dismissals: [{ prompt: 'R16', by: 'nurse', at: '2024-01-01T00:00:00Z', reason: 'seen' }],
});

export const profiles = () => [
  {
    resourceType: 'StructureDefinition',
    url: 'https://quay.example/StructureDefinition/x',
    type: 'Observation',
    kind: 'resource',
    abstract: false,
    baseDefinition: 'http://hl7.org/fhir/StructureDefinition/Observation',
    derivation: 'constraint',
    differential: {
      element: [
        {
          id: 'Observation.component',
          path: 'Observation.component',
          slicing: { discriminator: [{ type: 'pattern', path: 'code' }], rules: 'open' },
        },
        { id: 'Observation.component:a', path: 'Observation.component', sliceName: 'a', min: 1 },
        {
          id: 'Observation.component:a.code',
          path: 'Observation.component.code',
          patternCodeableConcept: { coding: [{ code: 'x' }] },
          constraint: [
            {
              key: 'k',
              severity: 'error',
              human: 'x',
              expression: "coding.where(code = 'x').exists()",
            },
          ],
          binding: { strength: 'required', valueSet: 'https://quay.example/ValueSet/x' },
        },
      ],
    },
  },
  {
    resourceType: 'ValueSet',
    url: 'https://quay.example/ValueSet/x',
    compose: { include: [{ system: 'https://quay.example/codes', concept: [{ code: 'x' }] }] },
  },
  {
    resourceType: 'CodeSystem',
    url: 'https://quay.example/codes',
    content: 'complete',
    concept: [{ code: 'x' }],
  },
];
