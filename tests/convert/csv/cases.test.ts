import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import { mergePatch } from '../merge-patch.ts';

/** One case: an input in our own scenario and what must become of it, whole. */
interface Case {
  readonly description: string;
  readonly rule: string;
  readonly source: string;
  /** Mapping in tests/cases/csv/mappings, and a JSON merge patch on it. */
  readonly base: string;
  readonly mapping?: object;
  /** The text, or its lines, which are then joined by CRLF. */
  readonly input: string | readonly string[];
  /** Statements of each exam. */
  readonly statements?: readonly (readonly object[])[];
  /** Parts of the head of each exam. */
  readonly heads?: readonly object[];
  readonly issues?: readonly object[];
  readonly quarantine?: readonly object[];
  readonly ledger?: object;
}

const folder = fileURLToPath(new URL('../../cases/csv/', import.meta.url));
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));

test('there are at least 40 cases', () => {
  expect(names.length).toBeGreaterThanOrEqual(40);
});

describe.each(names)('%s', (name) => {
  const found: Case = JSON.parse(readFileSync(folder + name, 'utf8'));
  const base = JSON.parse(readFileSync(`${folder}mappings/${found.base}`, 'utf8'));
  const text = typeof found.input === 'string' ? found.input : found.input.join('\r\n');
  const result = fromCsv(text, mergePatch(base, found.mapping ?? {}));
  const issues = [
    ...result.issues,
    ...result.exams.flatMap((exam) => exam.issues),
    ...result.quarantine.flatMap((entry) => entry.issues),
  ];

  test(`${found.description} (${found.rule}; ${found.source})`, () => {
    // Messages are told in full by the tests of the single parts; a case fixes code, place and weight.
    const brief = issues.map(({ code, severity, path, source }) => ({
      code,
      severity,
      path,
      source,
    }));
    expect(brief).toEqual(found.issues ?? []);
    expect(result.exams.map(({ exam }) => exam.statements)).toEqual(found.statements ?? []);
    const quarantine = result.quarantine.map(({ reason, at, raw }) => ({ reason, at, raw }));
    expect(quarantine).toEqual(found.quarantine ?? []);
    found.heads?.forEach((head, at) => {
      expect(result.exams[at]?.exam).toMatchObject(head);
    });
    if (found.ledger !== undefined) expect(result.ledger).toMatchObject(found.ledger);
  });

  test('every field is accounted for, and every exam holds', () => {
    const { fields, coded, verbatim, blank, layout, quarantined } = result.ledger;
    expect(coded + verbatim + blank + layout + quarantined).toBe(fields);
    const entries = result.exams.flatMap(({ ledger }) => ledger).length;
    const set = result.quarantine.reduce((sum, entry) => sum + entry.fields, 0);
    expect(entries + set).toBe(fields);
    for (const { exam } of result.exams)
      expect(parseExam(exam).issues.filter((i) => i.severity === 'error')).toEqual([]);
    for (const one of issues) expect(one.received).toBeUndefined();
  });
});
