import type { ProbeReport, ProbeStep } from './report.ts';
import { changeLines, noteText } from './report-text.ts';

/**
 * Writes the report of a probe as JUnit XML, which build servers show: a test case for each step,
 * and one for each fault. A fault that the server accepted is told and does not fail.
 *
 * @param report From `probeServer`.
 * @returns The XML.
 * @example
 * const xml = probeJUnit(await probeServer('http://127.0.0.1:8080/fhir'));
 */
export function probeJUnit(report: ProbeReport): string {
  const { steps, faults } = report;
  const total = steps.length + faults.length;
  const failures = steps.filter(({ verdict }) => verdict === 'failed').length;
  const skipped = steps.filter(({ verdict }) => verdict === 'skipped').length;
  const counts = `tests="${total}" failures="${failures}" errors="0" skipped="${skipped}"`;
  const name = `probe of ${report.url}`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites ${counts}>`,
    `  <testsuite name="${escaped(name)}" ${counts}>`,
    '    <properties>',
    property('fhirVersion', report.fhirVersion),
    ...(report.software === undefined ? [] : [property('software', report.software)]),
    '    </properties>',
    ...steps.map(stepCase),
    ...faults.map(({ fault, title, verdict, status }) => {
      const out = `${verdict}: ${title} (${status ?? '-'})`;
      return testCase('probe.fault', fault, `<system-out>${escaped(out)}</system-out>`);
    }),
    `    <system-out>${escaped(changeLines(report.changes).join('\n'))}</system-out>`,
    '  </testsuite>',
    '</testsuites>',
    '',
  ].join('\n');
}

function property(name: string, value: string): string {
  return `      <property name="${name}" value="${escaped(value)}"/>`;
}

function stepCase({ id, title, verdict, reason, notes }: ProbeStep): string {
  const told = notes.map(noteText).join('\n');
  const first = notes.find(({ severity }) => severity === 'error')?.misbehaviour ?? '';
  const inner: Readonly<Record<ProbeStep['verdict'], string>> = {
    passed: told === '' ? '' : `<system-out>${escaped(told)}</system-out>`,
    failed: `<failure type="${escaped(first)}" message="${escaped(first)}">${escaped(told)}</failure>`,
    skipped: `<skipped message="${escaped(reason ?? '')}"/>`,
  };
  return testCase('probe', `${id}: ${title}`, inner[verdict]);
}

function testCase(of: string, name: string, inner: string): string {
  const head = `    <testcase classname="${of}" name="${escaped(name)}"`;
  return inner === '' ? `${head}/>` : `${head}>${inner}</testcase>`;
}

const entities: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ['\n', '&#10;'],
]);

/** Without what XML 1.0 cannot hold. @see https://www.w3.org/TR/xml/#charsets */
function escaped(text: string): string {
  return text
    .replace(/[^\n\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/[&<>"\n]/g, (character) => entities.get(character) ?? '');
}
