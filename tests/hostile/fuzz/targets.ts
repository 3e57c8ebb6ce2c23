import { readFileSync } from 'node:fs';
import { parseClinic } from '../../../src/clinic/parse-clinic.ts';
import { codesFromCsv } from '../../../src/convert/code-map/from-csv.ts';
import { fromCsv } from '../../../src/convert/csv/index.ts';
import { convertText } from '../../../src/convert/exams/convert-text.ts';
import { fromFhirBundles } from '../../../src/convert/fhir/index.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { parseMappingText } from '../../../src/convert/prepare/read-mapping.ts';
import { readerFor } from '../../../src/convert/reader-for.ts';
import { toNdjson } from '../../../src/export/to-ndjson.ts';
import { fromXml, toXml } from '../../../src/fhir/xml/index.ts';
import { toQuestionnaire } from '../../../src/forms/index.ts';
import {
  amendExam,
  appendExam,
  checkExam,
  codesFromConceptMap,
  createCatalogue,
  type Exam,
  type ExportOptions,
  fromBundle,
  fromJson,
  type Issue,
  IssueError,
  type Language,
  licenceIssues,
  orThrow,
  parseCheckSettings,
  parseExam,
  releaseExam,
  signExam,
  toBundle,
  toJson,
} from '../../../src/index.ts';
import { within } from '../../../src/issues/budget.ts';
import { endedIssue } from '../../../src/issues/issue-list.ts';
import { toLetter } from '../../../src/letters/to-letter.ts';
import { toHtml } from '../../../src/report/to-html.ts';
import { german } from '../../../src/terminology/languages/de.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { validateBundle as validateAny } from '../../../src/validate/versions/all-r4.ts';
import { compileProfiles, validateBundle } from '../../../src/validate/versions/r4.ts';
import { validateBundle as validateR5 } from '../../../src/validate/versions/r5.ts';
import { clinic } from '../../clinic.ts';
import { answeredForm, protocol, readResponse, response } from './forms.ts';
import {
  additions,
  bundle,
  conceptMap,
  exam,
  exportOptions,
  language,
  mapCsv,
  profiles,
  settings,
} from './sound.ts';

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

const step = { by: 'nurse', at: '2030-01-01T00:00:00Z', reason: 'Read the wrong line' };
const steps = (seed: number) => ({
  exam: exam(seed),
  step: { ...step, changes: { statements: exam(seed + 1).statements.slice(0, 3) } },
});
const taking =
  (take: (exam: Exam, step: never) => { readonly issues: readonly Issue[] }) =>
  (given: { readonly exam: Exam; readonly step: never } | undefined): readonly Issue[] =>
    take(given?.exam as Exam, given?.step as never).issues; // whatever damage has left

const mappingText = readFileSync(
  new URL('../../../examples/convert/vineyard.mapping.json', import.meta.url),
  'utf8',
);

const vineyard = readFileSync(
  new URL('../../../examples/convert/vineyard.csv', import.meta.url),
  'utf8',
);

/** What is accepted must be taken by every step that follows. */
function sound(made: unknown, validate: typeof validateBundle = validateBundle): void {
  const wrong = validate(made).issues.filter(({ severity }) => severity === 'error');
  if (wrong.length === 0) return;
  const where = wrong.map(({ code, path }) => `${code} ${path.join('.')}`).join();
  throw new Error(`accepted, exported and not valid: ${where}`);
}

function allSteps(value: Exam): readonly Issue[] {
  const parsed = parseExam(value);
  const said = [...parsed.issues, ...checkExam(value, { ruleSets: ['horner-signs'] }).issues];
  if (parsed.value === undefined) return said;
  const exported = toBundle(parsed.value, { allowDraft: true, language: german });
  if (exported.value === undefined) return [...said, ...exported.issues];
  sound(exported.value);
  toJson(exported.value);
  return [...said, ...exported.issues];
}

/** An exam that uses what the rows, maps and profiles of the inputs speak of. */
const fixedExam: Exam = exam(20);
const fixedBundle = toBundle(exam(3)).value;

/** What was accepted is used; where something comes out, it is valid. */
function accepted(options: ExportOptions): readonly Issue[] {
  const { value, issues } = toBundle(fixedExam, options);
  if (value === undefined || options?.fhirVersion === 'R4B') return issues;
  sound(value, options?.fhirVersion === 'R5' ? validateR5 : validateBundle);
  return issues;
}

function page(value: Exam, language: Language = german): readonly Issue[] {
  try {
    toHtml(value, { language });
    return [];
  } catch (thrown) {
    if (thrown instanceof IssueError) return thrown.issues;
    throw thrown;
  }
}

const formats = ['csv', 'hl7v2', 'xml', 'cda'] as const;

/**
 * What a public converter does behind the mapping, which is made ready once: that takes fifty times as
 * long as one small exam. The targets of mappings go through the public function.
 */
function converting(format: (typeof formats)[number]): Target['call'] {
  const plan = orThrow('prepare the mapping', prepareMapping(sampleMapping(format)));
  const reader = readerFor(plan.mapping.source);
  return (text) =>
    within(
      'legacy',
      undefined,
      () => {
        const { issues, exams, quarantine } = convertText(text, reader, plan);
        return [...issues, ...[...exams, ...quarantine].flatMap((one) => one.issues)];
      },
      (why) => [endedIssue(why)],
    );
}

export const targets: readonly Target[] = [
  { name: 'parse, check, export and validate', sound: exam, call: allSteps },
  { name: 'toHtml', sound: exam, call: (input) => page(input) },
  { name: 'validateBundle r4', sound: bundle('R4'), call: (input) => validateBundle(input).issues },
  { name: 'validateBundle r5', sound: bundle('R5'), call: (input) => validateR5(input).issues },
  {
    name: 'validateBundle all-r4',
    sound: bundle('R4'),
    call: (input) => validateAny(input).issues,
  },
  { name: 'fromBundle', sound: bundle('R4'), call: (input) => fromBundle(input, clinic).issues },
  { name: 'toXml', sound: bundle('R4'), call: (input) => toXml(input).issues },
  { name: 'licenceIssues', sound: bundle('R4'), call: (input) => licenceIssues(input, 'none') },
  {
    name: 'createCatalogue',
    sound: additions,
    adopters: true,
    call: (input) => {
      const { value: catalogue, issues } = createCatalogue(input);
      if (catalogue !== undefined) accepted({ allowDraft: true, catalogue });
      return issues;
    },
  },
  {
    name: 'parseClinic',
    sound: () => ({
      format: 'face-neck-clinic/1',
      identity: 'https://quay.example/records',
      snomed: 'free-set',
      catalogue: additions(),
      words: { findings: { naevus: ['mole'] } },
      export: { bundleType: 'transaction', masterData: { patient: 'match' } },
      checks: { thresholds: { 'skin-change': '2' }, ruleSets: ['horner-signs'] },
    }),
    adopters: true,
    call: (input) => {
      const { value: clinic, issues } = parseClinic(input);
      if (clinic !== undefined) accepted({ ...clinic.export, allowDraft: true });
      return issues;
    },
  },
  {
    name: 'codesFromConceptMap',
    sound: conceptMap,
    adopters: true,
    call: (input) => {
      const { value: codes, issues } = codesFromConceptMap(input);
      if (codes !== undefined) accepted({ allowDraft: true, codes });
      return issues;
    },
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
    call: (input) => {
      const compiled = compileProfiles(input);
      validateBundle(fixedBundle, { profiles: compiled });
      return compiled.issues;
    },
  },
  {
    name: 'toBundle options',
    sound: exportOptions,
    adopters: true,
    call: (input) => accepted(input),
  },
  {
    name: 'toHtml and toLetter language',
    sound: language,
    adopters: true,
    call: (given) => [
      ...page(exam(6), given),
      ...toLetter(exam(6), 'patient', { language: given }).issues,
    ],
  },
  {
    name: 'values told',
    sound: (seed) => ({ exam: exam(seed), bundle: bundle('R4')(seed) }),
    // Asked for, so that values stand in the issues; none may make it throw.
    adopters: true,
    call: (input: { readonly exam: unknown; readonly bundle: unknown } | undefined) => [
      ...parseExam(input?.exam, { includeValues: true }).issues,
      ...validateBundle(input?.bundle, { includeValues: true }).issues,
    ],
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
    adopters: true,
    sound: () => mappingText,
    call: (input) => parseMappingText(input).issues,
  },
  {
    name: 'mapping',
    sound: () => fromJson(mappingText).value,
    adopters: true,
    call: (input) => fromCsv(vineyard, input).issues,
  },
  {
    name: 'codesFromCsv',
    sound: () => mapCsv,
    adopters: true,
    call: (input) => {
      const { value: codes, issues } = codesFromCsv(input);
      if (codes !== undefined) accepted({ allowDraft: true, codes });
      return issues;
    },
  },
  { name: 'fromQuestionnaireResponse', sound: response, call: (input) => readResponse(input) },
  {
    name: 'fromQuestionnaireResponse of a changed form',
    sound: answeredForm,
    adopters: true,
    call: (input: { readonly response: unknown; readonly questionnaire: unknown } | undefined) =>
      readResponse(input?.response, { questionnaire: input?.questionnaire }),
  },
  {
    name: 'toQuestionnaire',
    sound: protocol,
    adopters: true,
    call: (input: { readonly protocol: string; readonly options: object } | undefined) =>
      toQuestionnaire(input?.protocol ?? '', input?.options ?? {}).issues,
  },
  {
    name: 'fromFhirBundles',
    sound: (seed) => toJson(bundle('R4')(seed)),
    call: (text) => {
      const mapping = { format: 'face-neck-mapping/1', source: { syntax: 'fhir' } } as const;
      const { issues, exams, quarantine } = fromFhirBundles(text, mapping);
      return [...issues, ...[...exams, ...quarantine].flatMap((one) => one.issues)];
    },
  },
  ...formats.map(
    (format): Target => ({
      name: `convert ${format}`,
      sound: (seed) => writeExams([exam(seed)], format),
      call: converting(format),
    }),
  ),
  {
    name: 'fromFhirBundles of resources',
    sound: (seed) => {
      const { lines } = toNdjson([exam(seed)], { identity: 'https://harbour.example/records' });
      return [...lines.values()].flat().join('\n');
    },
    call: (text) => {
      const source = { syntax: 'fhir', form: 'resources' } as const;
      const { issues, exams, quarantine } = fromFhirBundles(text, {
        format: 'face-neck-mapping/1',
        source,
      });
      return [...issues, ...[...exams, ...quarantine].flatMap((one) => one.issues)];
    },
  },
];
