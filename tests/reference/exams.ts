import { readdirSync, readFileSync } from 'node:fs';
import { type Exam, parseExamOrThrow, toBundleOrThrow, toJson } from '../../src/index.ts';
import { type SampleSize, sampleExams } from '../../src/testing/sample-exam.ts';
import { bundleKinds } from './bases.ts';
import type { FhirRelease } from './corpus.ts';

const folder = new URL('../../examples/exams/', import.meta.url);

export interface NamedExam {
  readonly name: string;
  readonly exam: Exam;
}

export function exampleExams(): NamedExam[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .map((file) => ({
      name: file,
      exam: parseExamOrThrow(JSON.parse(readFileSync(new URL(file, folder), 'utf8'))),
    }));
}

/** How many seeded exams a suite takes: 300, or what the environment variable SEEDED_EXAMS says. */
export const seededCount = Number(process.env['SEEDED_EXAMS'] ?? 300);

/** Seeded exams: most are small, since what an exam says varies more than how much it says. */
export function* seededExams(): Generator<NamedExam> {
  const share = (of300: number) => Math.round((of300 * seededCount) / 300);
  const sizes = { edge: share(45), usual: share(18), full: share(2) };
  const small = seededCount - sizes.edge - sizes.usual - sizes.full;
  for (const [size, count] of Object.entries({ small, ...sizes }) as [
    SampleSize, // the keys stand above
    number,
  ][]) {
    for (const exam of sampleExams(1, count, { size })) yield { name: exam.id, exam };
  }
}

/**
 * Whether the composition of an exam has to do with records of the receiver: a patient, a visit, an
 * organization, or an examiner whose role is not told. A document cannot hold those.
 */
export function refersElsewhere({ subject, examiners, organization, encounter }: Exam): boolean {
  const authors = examiners.filter(({ role }) => role === undefined);
  return [subject, ...authors, organization, encounter].some((one) => one?.reference !== undefined);
}

/** The bundles of an exam in one version, one of each kind. */
export function bundlesOf({ name, exam }: NamedExam, version: FhirRelease) {
  return Object.entries(bundleKinds).map(([kind, options]) => {
    const bundle = toBundleOrThrow(exam, { fhirVersion: version, ...options });
    return { id: `${version}/${name}/${kind}`, version, bundle, text: toJson(bundle) };
  });
}

/** The report alone, with its form for people as a document of the chart. */
const reportAlone = {
  detail: 'report',
  presentedForms: () => [{ contentType: 'text/plain', content: 'As examined.', title: 'Report' }],
} as const;

export function reportAloneOf({ name, exam }: NamedExam, version: FhirRelease) {
  const bundle = toBundleOrThrow(exam, { fhirVersion: version, ...reportAlone });
  return { id: `${version}/${name}/report alone`, version, bundle, text: toJson(bundle) };
}
