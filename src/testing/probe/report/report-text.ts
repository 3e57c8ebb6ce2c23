import { append } from '../../../data/append.ts';
import { allowedChanges, type ServerChange } from '../../../deliver/stored/changes.ts';
import { misbehaviours, type ProbeNote } from '../misbehaviour.ts';
import type { ProbeReport, ProbeStep } from './report.ts';

/**
 * Writes the report of a probe for people.
 *
 * @param report From `probeServer`.
 * @returns Lines of text: one for each step, change and fault, and the counts at the end.
 * @example
 * const lines = probeText(await probeServer('http://127.0.0.1:8080/fhir'));
 */
export function probeText(report: ProbeReport): string {
  const { software, fhirVersion, changes, faults, steps } = report;
  const lines = [
    `Probe of ${report.url} (FHIR ${fhirVersion}${software === undefined ? '' : `, ${software}`})`,
    '',
    ...steps.flatMap(stepLines),
  ];
  if (changes.length > 0) append(lines, ['', ...changeLines(changes)]);
  if (faults.length > 0) {
    const refused = faults.filter(({ verdict }) => verdict === 'refused').length;
    lines.push('', `Faults sent: ${faults.length}, refused: ${refused}`);
    for (const { fault, title, verdict, status } of faults) {
      if (verdict !== 'refused') lines.push(`  ${verdict}  ${fault}: ${title} (${status ?? '-'})`);
    }
  }
  const count = (verdict: ProbeStep['verdict']): number =>
    steps.filter((step) => step.verdict === verdict).length;
  lines.push(
    '',
    `${count('passed')} passed, ${count('failed')} failed, ${count('skipped')} skipped; ` +
      `${report.requests} requests, ${report.retries} retries`,
  );
  return `${lines.join('\n')}\n`;
}

/** What the server changed, kind by kind; nothing where it changed nothing. */
export function changeLines(changes: readonly ServerChange[]): string[] {
  if (changes.length === 0) return [];
  const met = Object.entries(allowedChanges).filter(([what]) =>
    changes.some((change) => change.what === what),
  );
  return [
    'What the server changed:',
    ...changes.map(({ what, allowed, element, count }) => {
      const word = allowed ? 'allowed' : 'NOT ALLOWED';
      return `  ${word}  ${what}  ${element}  ${count}`;
    }),
    ...met.map(([what, meaning]) => `  (${what}: ${meaning})`),
  ];
}

function stepLines({ verdict, id, title, reason, notes }: ProbeStep): string[] {
  const head = `${verdict.padEnd(8)}${id}: ${title}${reason === undefined ? '' : ` (${reason})`}`;
  return [head, ...notes.map((note) => `          ${noteText(note)}`)];
}

export function noteText({ severity, misbehaviour, message, request }: ProbeNote): string {
  const asked = request === undefined ? '' : `${request}: `;
  const meaning = misbehaviours[misbehaviour];
  const said = message === meaning ? '' : `; ${message}`;
  return `${severity === 'error' ? 'error' : 'note'}  ${misbehaviour}: ${asked}${meaning}${said}`;
}
