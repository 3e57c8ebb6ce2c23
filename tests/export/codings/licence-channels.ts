import { auditHtml, createAuditor, recallsOf, recallTask } from '../../../src/audit/index.ts';
import { codesFromCsv } from '../../../src/convert/code-map/from-csv.ts';
import type { ExportOptions } from '../../../src/export/options.ts';
import { toBundle } from '../../../src/export/to-bundle.ts';
import { toNdjson } from '../../../src/export/to-ndjson.ts';
import { toJson } from '../../../src/fhir/json/to-json.ts';
import type { SnomedPolicy } from '../../../src/fhir/licence/snomed-policy.ts';
import { toXml } from '../../../src/fhir/xml/to-xml.ts';
import { letterHtml, toLetter } from '../../../src/letters/index.ts';
import { readers } from '../../../src/letters/letter.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import { toHtml } from '../../../src/report/to-html.ts';
import { createCatalogue } from '../../../src/terminology/catalogue.ts';
import { german } from '../../../src/terminology/languages/de.ts';
import { english } from '../../../src/terminology/languages/language.ts';
import { freeSet } from '../../../src/terminology/published/free-set.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { clinic } from '../../clinic.ts';

/**
 * 68426009 Nasal septum structure is not a member of the Global Patient Set 2020-09 (hl7.terminology.r4
 * 7.0.1, ValueSet-snomed-intl-gps.json), and no row of ours has it: wherever it stands in an export,
 * an adversarial caller has brought it there.
 */
export const planted = '68426009';

/** Published spellings of the system, and ways to hide it. */
export const spellings = [
  'http://snomed.info/sct',
  'https://snomed.info/sct/',
  'HTTP://SNOMED.INFO/SCT',
  'http://snomed.info./sct',
  'http://snomed.info:80/sct',
  'http://user@snomed.info/sct',
  'http://snomed.info?x',
  'http://snomed%2Einfo/sct',
  'http://%73nomed.info/sct',
  'http://snomed%252Einfo/sct',
  'http://www.snomed.org/sct',
  'http://ihtsdo.org/x',
  'https://browser.ihtsdotools.org/',
  'http://snomed.info/xsct',
  'http://www.nlm.nih.gov/research/umls/snomedct_us',
  'http://nlm.nih.gov/research/umls/snomedct_us',
  'http://purl.bioontology.org/ontology/SNOMEDCT',
  'urn:oid:2.16.840.1.113883.6.96',
  'urn:oid:2.16.840.1.113883.6.96.',
  'oid:2.16.840.1.113883.6.96',
  '2.16.840.1.113883.6.96',
  'urn:snomed',
  'urn:sct',
  'SNOMED-CT',
  'SNOMEDCT_US',
  'SCT',
  'SCT2',
  'http://ｓｎｏｍｅｄ.info/sct',
  'http://sno\u200Bmed.info/sct',
  'http:\\\\snomed.info\\sct',
] as const;

/** URIs that name the concept. */
export const conceptUris = [
  `http://snomed.info/id/${planted}`,
  `https://snomed.info/id/${planted}`,
  `http://snomed.info/sct|${planted}`,
  `http://snomed.info/sct%7C${planted}`,
  `http://snomed%2Einfo/id/${planted}`,
  `http://snomed.info/xsct/id/${planted}`,
  `http://www.nlm.nih.gov/research/umls/snomedct_us/${planted}`,
  `http://purl.bioontology.org/ontology/SNOMEDCT/${planted}`,
  `urn:oid:2.16.840.1.113883.6.96|${planted}`,
  `urn:sct:${planted}`,
] as const;

type Json = { [name: string]: unknown };

/** Ways by which a caller puts data of its own into an exam. */
const examWays: readonly ((exam: Json, system: string, uri: string) => void)[] = [
  (exam, system) => ofStatements(exam, { codings: [{ system, code: planted }] }),
  (exam, _, uri) =>
    ofStatements(exam, { codings: [{ system: 'https://x.example', version: uri, code: 'a' }] }),
  (exam, _, uri) =>
    ofStatements(exam, { codings: [{ system: 'https://x.example', code: 'a', display: uri }] }),
  (exam, _, uri) => ofStatements(exam, { codings: [{ system: uri, code: 'a' }] }),
  (exam, _, uri) => ofStatements(exam, { codings: [{ system: 'https://x.example', code: uri }] }),
  (exam, _, uri) => ofStatements(exam, { note: `as in ${uri}` }),
  (exam, system) => identified(exam, 'subject', system),
  (exam, system) => identified(exam, 'encounter', system),
  (exam, system) => identified(exam, 'organization', system),
  (exam, _, uri) => Object.assign(exam, { subject: { reference: uri } }),
  (exam, _, uri) => Object.assign(exam, { encounter: { reference: uri } }),
  (exam, system) => {
    const coding = { system, code: planted, display: 'Nasal septum' };
    if (exam.conclusion !== undefined)
      Object.assign(exam.conclusion as object, { codings: [coding] });
  },
  (exam, _, uri) => {
    if (exam.conclusion !== undefined) Object.assign(exam.conclusion as object, { text: uri });
  },
];

function ofStatements(exam: Json, parts: Json): void {
  for (const one of exam.statements as Json[]) Object.assign(one, parts);
}

function identified(exam: Json, who: string, system: string): void {
  exam[who] = { identifiers: [{ system, value: planted }] };
}

/** Ways by which it does so in the options. */
const optionWays: readonly ((uri: string, exam: Exam) => ExportOptions)[] = [
  (uri) => ({ canonicalBase: uri }),
  (uri) => ({ identity: { exam: uri } }),
  (uri) => ({ identity: { exam: clinic.identity, statement: uri, tracking: uri } }),
  (uri) => ({ language: { ...english, sides: { ...english.sides, left: uri, right: uri } } }),
  (uri) => ({ language: { ...german, texts: { ...german.texts, notNamed: uri } } }),
  (uri) => {
    const rows = ['source,code,system,target,relation,display', ...mapRows(uri)];
    const codes = codesFromCsv(rows.join('\n')).value;
    return codes === undefined ? {} : { codes };
  },
  (uri) => {
    const { value } = createCatalogue({
      system: uri,
      findings: [{ code: 'own', display: uri, sections: [] } as never],
    });
    return value === undefined ? {} : { catalogue: value };
  },
  (_, exam) => {
    // Sent while there was a licence.
    const sent = toBundle(withPlanted(exam), {
      ...clinic,
      snomed: licence,
      bundleType: 'transaction',
    }).value;
    return sent === undefined ? {} : { previous: sent, bundleType: 'transaction' };
  },
  (_, exam) => ({ previous: withPlanted(exam), bundleType: 'transaction' }),
];

function mapRows(uri: string): string[] {
  return ['regions', 'findings'].map(
    (table) => `${table}|cheek,${planted},${uri},x,equivalent,${uri}`,
  );
}

function withPlanted(exam: Exam): Exam {
  const extra = { system: 'http://snomed.info/sct', code: planted };
  return {
    ...exam,
    statements: exam.statements.map((one) => ({ ...one, key: `${one.key}x`, codings: [extra] })),
  } as Exam; // keys that the exam of today does not have, so that they are taken back
}

const licence: SnomedPolicy = {
  licensed: {
    holder: 'Harbour clinic',
    edition: 'http://snomed.info/sct/900000000000207008/version/20240101',
  },
};

const versions = ['R4', 'R4B', 'R5'] as const;
const types = ['collection', 'transaction', 'document'] as const;
const lateralities = ['extension', 'body-structure', 'text'] as const;

export interface Attempt {
  readonly exam: Exam;
  readonly options: ExportOptions;
  readonly policy: 'none' | 'free-set';
}

/** One export by an adversarial caller, by its seed. */
export function attempt(seed: number): Attempt {
  const random = createRandom(seed);
  const policy = random.pick(['none', 'free-set'] as const);
  const exam = structuredClone(sampleExam(seed, { size: 'small' }));
  const [system, uri] = [random.pick(spellings), random.pick(conceptUris)];
  const base: ExportOptions = {
    ...clinic,
    fhirVersion: random.pick(versions),
    bundleType: random.pick(types),
    laterality: random.pick(lateralities),
    profiles: random.chance(0.5),
    transaction: random.pick(['put', 'conditional'] as const),
    snomed: policy,
    ...(random.chance(0.5) && { freeSet }),
  };
  if (random.chance(0.6)) {
    random.pick(examWays)(exam as unknown as Json, system, uri);
    return { exam, options: base, policy };
  }
  return { exam, options: { ...base, ...random.pick(optionWays)(uri, exam) }, policy };
}

/**
 * What people read of an exam that is accepted, and the Tasks of a recall. Its words stand there as the
 * examiner wrote them; codes do not stand there at all.
 */
export function forPeople({ exam, options: { catalogue, language } }: Attempt): string {
  if (!parseExam(exam, { ...(catalogue && { catalogue }) }).ok) return '';
  const options = { ...(language && { language }), ...(catalogue && { checks: { catalogue } }) };
  const auditor = createAuditor(options);
  auditor.add(exam);
  const letters = readers.map((reader) => toLetter(exam, reader, options).value);
  return [
    toHtml(exam, options),
    ...letters.map((letter) => (letter === undefined ? '' : letterHtml(letter))),
    ...recallsOf(exam, '2030-01-01').map((recall) => toJson(recallTask(recall))),
    auditHtml(auditor.result()),
  ].join('');
}

/** Exam and language without the words that people read, in which an id is left as it was written. */
export function wordless({ exam, options, policy }: Attempt): Attempt {
  const { language: _, ...others } = options;
  const { conclusion, ...rest } = exam;
  const statements = rest.statements.map((one) => ({ ...one, note: 'as seen' }));
  return { exam: { ...rest, statements } as Exam, options: others, policy };
}

export const forms = ['json', 'xml', 'ndjson'] as const;

/** What leaves in one form, as text; nothing where the export is refused. */
export function leaving(
  { exam, options }: Attempt,
  form: (typeof forms)[number],
): string | undefined {
  if (form === 'ndjson') {
    const lines = [...toNdjson(exam, options).lines.values()].flat();
    return lines.length === 0 ? undefined : lines.join('\n');
  }
  const { value } = toBundle(exam, options);
  if (value === undefined) return undefined;
  return form === 'json'
    ? toJson(value)
    : toXml(value, { fhirVersion: options.fhirVersion ?? 'R4' }).value;
}
