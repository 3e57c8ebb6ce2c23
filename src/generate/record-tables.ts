import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Observation } from 'fhir/r4.js';
import { type AnyBundle, toBundleOrThrow } from '../export/to-bundle.ts';
import { toJson } from '../fhir/json/to-json.ts';
import { SNOMED } from '../fhir/names/systems.ts';
import type { Exam } from '../model/exam.ts';
import { parseExamOrThrow } from '../model/parse-exam.ts';
import { htmlForm } from '../report/html-form.ts';
import { builtInCatalogue } from '../terminology/catalogue.ts';
import { sampleExams } from '../testing/sample-exam.ts';

/**
 * Writes the tables of examples/guides/filing.md that follow from the export: sizes by level of detail,
 * which observations bear a published code, and which of those that state something.
 *
 * Run: npm run record-tables
 */

const guide = new URL('../../examples/guides/filing.md', import.meta.url);
const folder = new URL('../../examples/exams/', import.meta.url);

const levels = ['everything', 'notable', 'report'] as const;

function exams(): (readonly [name: string, exam: Exam])[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .map((file) => {
      const exam = parseExamOrThrow(JSON.parse(readFileSync(new URL(file, folder), 'utf8')));
      return [file.replace('.json', ''), exam] as const;
    });
}

function observationsOf({ entry = [] }: AnyBundle): Observation[] {
  return entry.flatMap(({ resource }) =>
    // R4 is the default of the export.
    resource?.resourceType === 'Observation' ? [resource as Observation] : [],
  );
}

const kilobytes = (text: string): string =>
  (new TextEncoder().encode(text).length / 1000).toFixed(0);

/** Entries, observations and size of each example at each level. */
export function sizesTable(): string {
  const rows = exams().map(([name, exam]) => {
    const cells = levels.map((detail) => {
      const forms = detail === 'report' ? { presentedForms: htmlForm() } : {};
      const bundle = toBundleOrThrow(exam, { detail, ...forms });
      const observations = observationsOf(bundle).length;
      return `${bundle.entry?.length} / ${observations} / ${kilobytes(toJson(bundle))}`;
    });
    return `| ${name} | ${exam.statements.length} | ${cells.join(' | ')} |`;
  });
  return [
    `| example | statements | ${levels.join(' | ')} |`,
    '|---|---:|---:|---:|---:|',
    ...rows,
  ].join('\n');
}

interface Coded {
  /** Name of our own table, and code in it. */
  readonly table: string;
  readonly own: string;
  readonly loinc: boolean;
  readonly snomed: boolean;
}

function codedBy({ code: { coding = [] } }: Observation): Coded {
  const own = coding.find(({ system }) => system?.includes('/CodeSystem/'));
  const systems = coding.map(({ system }) => system);
  return {
    table: own?.system?.replace(/^.*\//, '') ?? '',
    own: own?.code ?? '',
    loinc: systems.includes('http://loinc.org'),
    snomed: systems.includes(SNOMED),
  };
}

/** What an observation states to be there; nothing where it is absent, undecided or a figure. */
function statedAs(observation: Observation, { table, own }: Coded): string | undefined {
  const values = observation.valueCodeableConcept?.coding?.map(({ code }) => code) ?? [];
  if (table === 'symptoms' && values.includes('answer.yes')) return 'complaints';
  if (table !== 'findings' || !values.includes('presence.present')) return undefined;
  const usual = builtInCatalogue.findings.get(own)?.usual === true;
  return usual ? 'the usual appearance' : 'other signs';
}

/** How much of what is there bears a published code, in the examples and in seeded exams. */
export function presentTable(): string {
  const sets = [exams().map(([, exam]) => exam), [...sampleExams(1, 100)]];
  const counts = sets.map((set) => {
    const rows = new Map<string, { all: number; published: number }>();
    for (const observation of set.flatMap((exam) => observationsOf(toBundleOrThrow(exam)))) {
      const coded = codedBy(observation);
      const name = statedAs(observation, coded);
      if (name === undefined) continue;
      const row = rows.get(name) ?? { all: 0, published: 0 };
      row.all += 1;
      if (coded.loinc || coded.snomed) row.published += 1;
      rows.set(name, row);
    }
    return rows;
  });
  const cell = (row: { all: number; published: number } | undefined): string =>
    row === undefined
      ? '0'
      : `${row.published} of ${row.all} (${Math.round((100 * row.published) / row.all)} %)`;
  return [
    '| what was found | with a published code, six examples | 100 seeded exams |',
    '|---|---:|---:|',
    ...['other signs', 'complaints', 'the usual appearance'].map(
      (name) => `| ${name} | ${counts.map((rows) => cell(rows.get(name))).join(' | ')} |`,
    ),
  ].join('\n');
}

/** How many observations of the examples bear a published code, by what they are coded by. */
export function codesTable(): string {
  const counts = new Map<string, { all: number; loinc: number; snomed: number; none: number }>();
  for (const [, exam] of exams()) {
    for (const observation of observationsOf(toBundleOrThrow(exam))) {
      const { table, loinc, snomed } = codedBy(observation);
      const row = counts.get(table) ?? { all: 0, loinc: 0, snomed: 0, none: 0 };
      row.all += 1;
      if (loinc) row.loinc += 1;
      if (snomed) row.snomed += 1;
      if (!loinc && !snomed) row.none += 1;
      counts.set(table, row);
    }
  }
  const rows = [...counts].sort(([a], [b]) => (a < b ? -1 : 1));
  return [
    '| table of the code | observations | with LOINC | with SNOMED CT | with our own code alone |',
    '|---|---:|---:|---:|---:|',
    ...rows.map(
      ([table, { all, loinc, snomed, none }]) =>
        `| ${table} | ${all} | ${loinc} | ${snomed} | ${none} |`,
    ),
  ].join('\n');
}

/** The guide with its tables as they are now. */
export function guideWithTables(text: string): string {
  const put = (name: string, table: string, into: string): string =>
    into.replace(
      new RegExp(`(<!-- ${name} -->\n)[\\s\\S]*?(\n<!-- /${name} -->)`),
      (_, start: string, end: string) => `${start}${table}${end}`,
    );
  const withCodes = put('codes', codesTable(), put('sizes', sizesTable(), text));
  return put('present', presentTable(), withCodes);
}

if (process.argv[1]?.endsWith('record-tables.ts')) {
  writeFileSync(guide, guideWithTables(readFileSync(guide, 'utf8')));
}
