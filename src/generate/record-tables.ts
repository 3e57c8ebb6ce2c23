import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Observation } from 'fhir/r4.js';
import { type AnyBundle, toBundleOrThrow } from '../export/to-bundle.ts';
import { toJson } from '../fhir/json/to-json.ts';
import { SNOMED } from '../fhir/names/systems.ts';
import type { Exam } from '../model/exam.ts';
import { parseExamOrThrow } from '../model/parse-exam.ts';
import { htmlForm } from '../report/html-form.ts';

/**
 * Writes the tables of examples/guides/filing.md that follow from the export of the examples: sizes by
 * level of detail, and which observations bear a published code.
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

/** How many observations of the examples bear a published code, by what they are coded by. */
export function codesTable(): string {
  const counts = new Map<string, { all: number; loinc: number; snomed: number; none: number }>();
  for (const [, exam] of exams()) {
    for (const { code } of observationsOf(toBundleOrThrow(exam))) {
      const systems = (code.coding ?? []).map(({ system = '' }) => system);
      const own = systems.find((system) => system.includes('/CodeSystem/')) ?? '';
      const table = own.slice(own.lastIndexOf('/') + 1);
      const row = counts.get(table) ?? { all: 0, loinc: 0, snomed: 0, none: 0 };
      const loinc = systems.includes('http://loinc.org');
      const snomed = systems.includes(SNOMED);
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

/** The guide with both tables as they are now. */
export function guideWithTables(text: string): string {
  const put = (name: string, table: string, into: string): string =>
    into.replace(
      new RegExp(`(<!-- ${name} -->\n)[\\s\\S]*?(\n<!-- /${name} -->)`),
      (_, start: string, end: string) => `${start}${table}${end}`,
    );
  return put('codes', codesTable(), put('sizes', sizesTable(), text));
}

if (process.argv[1]?.endsWith('record-tables.ts')) {
  writeFileSync(guide, guideWithTables(readFileSync(guide, 'utf8')));
}
