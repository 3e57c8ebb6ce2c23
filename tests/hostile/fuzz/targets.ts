import { readFileSync } from 'node:fs';
import { fromCda } from '../../../src/convert/cda/index.ts';
import { codesFromCsv } from '../../../src/convert/code-map/from-csv.ts';
import { fromCsv } from '../../../src/convert/csv/index.ts';
import { fromHl7v2 } from '../../../src/convert/hl7v2/index.ts';
import { parseMappingText } from '../../../src/convert/prepare/read-mapping.ts';
import { fromXmlExport } from '../../../src/convert/xml/index.ts';
import { fromXml, toXml } from '../../../src/fhir/xml/index.ts';
import {
  amendExam,
  appendExam,
  checkExam,
  codesFromConceptMap,
  createCatalogue,
  type Exam,
  fromBundle,
  fromJson,
  type Issue,
  IssueError,
  licenceIssues,
  parseCheckSettings,
  parseExam,
  releaseExam,
  signExam,
  toBundle,
  toJson,
  toOperationOutcome,
} from '../../../src/index.ts';
import { toHtml } from '../../../src/report/to-html.ts';
import { german } from '../../../src/terminology/languages/de.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { validateBundle as validateAny } from '../../../src/validate/versions/all-r4.ts';
import { compileProfiles, validateBundle } from '../../../src/validate/versions/r4.ts';
import { validateBundle as validateR5 } from '../../../src/validate/versions/r5.ts';

/** One public function under damage. */
export interface Target {
  readonly name: string;
  /** A sound input of the kind that the function takes. */
  readonly sound: (seed: number) => unknown;
  /** Calls it, and gives what it says; what it throws is a find, but an IssueError. */
  readonly call: (input: never) => readonly Issue[];
  /** What it takes is an adopter's own and holds nothing of patients: its names may be told. */
  readonly adopters?: true;
}

const exam = (seed: number): Exam => sampleExam(seed, { size: seed % 4 === 0 ? 'edge' : 'small' });
const few = (seed: number): Exam[] => [exam(seed), exam(seed + 1)];
const types = ['collection', 'transaction', 'document'] as const;
const bundle = (version: 'R4' | 'R5') => (seed: number) =>
  toBundle(exam(seed), { fhirVersion: version, bundleType: types[seed % 3] ?? 'collection' }).value;

const step = { by: 'nurse', at: '2030-01-01T00:00:00Z', reason: 'Read the wrong line' };
const steps = (seed: number) => ({
  exam: exam(seed),
  step: { ...step, changes: { statements: exam(seed + 1).statements.slice(0, 3) } },
});
const taking =
  (take: (exam: Exam, step: never) => { readonly issues: readonly Issue[] }) =>
  (given: { readonly exam: Exam; readonly step: never } | undefined): readonly Issue[] =>
    take(given?.exam as Exam, given?.step as never).issues; // whatever damage has left

const row = { display: 'Quay mark', source: 'quay book', evidence: 'common-practice' };
const additions = () => ({
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

const conceptMap = () => ({
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

const settings = () => ({
  ruleSets: ['horner-signs'],
  sideDifferences: { pfh: '2' },
  memoryValues: true,
  judgements: [{ statement: 'a', changing: true }],
  dismissals: [{ prompt: 'R16', by: 'nurse', at: '2024-01-01T00:00:00Z', reason: 'seen' }],
});

const profiles = () => [
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

const mappingText = readFileSync(
  new URL('../../../examples/convert/vineyard.mapping.json', import.meta.url),
  'utf8',
);

const mapCsv = `source,code,system,target,relation,action,version,display,unit
findings,naevus,https://quay.example/codes,m,wider,add,1,Mark,
measures,pfh,https://quay.example/codes,f,equivalent,replace,,Gap,mm
`;

/** What an accepted exam gives must be taken by every step that follows. */
function allSteps(value: Exam): readonly Issue[] {
  const parsed = parseExam(value);
  const said = [...parsed.issues, ...checkExam(value, { ruleSets: ['horner-signs'] }).issues];
  if (parsed.value === undefined) return said;
  const exported = toBundle(parsed.value, {
    allowDraft: true,
    codes: undefined as never,
    language: german,
  });
  if (exported.value === undefined) return [...said, ...exported.issues];
  const { issues } = validateBundle(exported.value);
  const wrong = issues.filter(({ severity }) => severity === 'error');
  if (wrong.length > 0) {
    throw new Error(
      `accepted, exported and not valid: ${wrong.map(({ code, path }) => `${code} ${path.join('.')}`).join()}`,
    );
  }
  toJson(exported.value);
  return [...said, ...exported.issues];
}

function page(value: Exam): readonly Issue[] {
  try {
    toHtml(value, { language: german });
    return [];
  } catch (thrown) {
    if (thrown instanceof IssueError) return thrown.issues;
    throw thrown;
  }
}

export const targets: readonly Target[] = [
  { name: 'parse, check, export and validate', sound: exam, call: allSteps },
  { name: 'toHtml', sound: exam, call: page },
  { name: 'validateBundle r4', sound: bundle('R4'), call: (input) => validateBundle(input).issues },
  { name: 'validateBundle r5', sound: bundle('R5'), call: (input) => validateR5(input).issues },
  {
    name: 'validateBundle all-r4',
    sound: bundle('R4'),
    call: (input) => validateAny(input).issues,
  },
  { name: 'fromBundle', sound: bundle('R4'), call: (input) => fromBundle(input).issues },
  { name: 'toXml', sound: bundle('R4'), call: (input) => toXml(input).issues },
  { name: 'licenceIssues', sound: bundle('R4'), call: (input) => licenceIssues(input, 'none') },
  {
    name: 'createCatalogue',
    sound: additions,
    adopters: true,
    call: (input) => createCatalogue(input).issues,
  },
  {
    name: 'codesFromConceptMap',
    sound: conceptMap,
    call: (input) => codesFromConceptMap(input).issues,
  },
  {
    name: 'parseCheckSettings',
    sound: settings,
    adopters: true,
    call: (input) => parseCheckSettings(input).issues,
  },
  {
    name: 'checkExam settings',
    sound: settings,
    adopters: true,
    call: (input) => checkExam(exam(5), input ?? {}).issues,
  },
  {
    name: 'compileProfiles',
    sound: profiles,
    adopters: true,
    call: (input) => compileProfiles(input).issues,
  },
  { name: 'signExam', sound: steps, call: taking(signExam) },
  { name: 'releaseExam', sound: steps, call: taking(releaseExam) },
  { name: 'amendExam', sound: steps, call: taking(amendExam) },
  { name: 'appendExam', sound: steps, call: taking(appendExam) },
  {
    name: 'fromJson',
    sound: (seed) => toJson(bundle('R4')(seed)),
    call: (input) => fromJson(input).issues,
  },
  {
    name: 'fromXml',
    sound: (seed) => toXml(bundle('R4')(seed)).value ?? '',
    call: (input) => fromXml(input).issues,
  },
  {
    name: 'parseMappingText',
    sound: () => mappingText,
    call: (input) => parseMappingText(input).issues,
  },
  {
    name: 'mapping',
    sound: () => fromJson(mappingText).value,
    adopters: true,
    call: (input) => fromCsv('exam_no,exam_date\n1,2024-01-01\n', input).issues,
  },
  { name: 'codesFromCsv', sound: () => mapCsv, call: (input) => codesFromCsv(input).issues },
  ...(['csv', 'hl7v2', 'xml', 'cda'] as const).map((format): Target => {
    const convert = { csv: fromCsv, hl7v2: fromHl7v2, xml: fromXmlExport, cda: fromCda }[format];
    return {
      name: `convert ${format}`,
      sound: (seed) => writeExams(few(seed), format),
      call: (input) => {
        const { issues, exams, quarantine } = convert(input, sampleMapping(format));
        return [
          ...issues,
          ...exams.flatMap((one) => one.issues),
          ...quarantine.flatMap((one) => one.issues),
        ];
      },
    };
  }),
];

/** All that is told of issues: what is logged, shown and sent. */
export function toldText(issues: readonly Issue[]): string {
  return JSON.stringify([issues, toOperationOutcome(issues)]);
}
