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
  append(lines, ['', ...capabilityLines(report.capabilities)]);
  if (changes.length > 0) append(lines, ['', ...changeLines(changes)]);
  if (faults.length > 0) {
    const refused = faults.filter(({ verdict }) => verdict === 'refused').length;
    lines.push('', `Faults sent: ${faults.length}, refused: ${refused}`);
    for (const { fault, title, verdict, status } of faults) {
      if (verdict !== 'refused') lines.push(`  ${verdict}  ${fault}: ${title} (${status ?? '-'})`);
    }
  }
  lines.push(
    '',
    `Stores exams and gives them back: ${report.works ? 'yes' : 'NO'}; conforms in all that was tried: ${report.passed ? 'yes' : 'NO'}`,
  );
  const count = (verdict: ProbeStep['verdict']): number =>
    steps.filter((step) => step.verdict === verdict).length;
  lines.push(
    '',
    `${count('passed')} passed, ${count('failed')} failed, ${count('skipped')} skipped; ` +
      `${report.requests} requests, ${report.retries} retries`,
  );
  return `${lines.join('\n')}\n`;
}

/** What the server can do, line by line, and what to set for it. */
function capabilityLines(capabilities: ProbeReport['capabilities']): string[] {
  return [
    'What the server can do, and what to set for it:',
    ...capabilities.map(
      ({ title, found, set }) => `  ${title}: ${found}${set === undefined ? '' : `  ->  ${set}`}`,
    ),
  ];
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
  return `${severity === 'information' ? 'note' : severity}  ${misbehaviour}: ${asked}${meaning}${said}`;
}
