import { capabilitiesOf } from './capabilities.ts';
import type { ProbeContext, Step } from './context.ts';
import { Misbehaved, type ProbeNote } from './misbehaviour.ts';
import { type ProbeOptions, probeSettings } from './options.ts';
import { probeExams } from './probe-exams.ts';
import type { ProbeReport, ProbeStep } from './report/report.ts';
import { createClient } from './server/client.ts';
import { clean } from './steps/clean.ts';
import { probeSteps } from './steps/steps.ts';

/**
 * Finds out what a FHIR server does with exams: stores an invented one, reads it back, searches,
 * changes and withdraws it, and sends faults. It talks to no other server, for a limited time, and
 * writes only its own invented exams.
 *
 * @param url Base of the server. One that is not on this machine needs the option `remote`.
 * @param options Version, bounds, and whether it cleans up; see {@link ProbeOptions}.
 * @returns The report, with every misbehaviour of the server.
 * @throws {TypeError} Where the URL or an option cannot be used.
 * @example
 * const report = await probeServer('http://127.0.0.1:8080/fhir', { clean: true });
 * console.log(probeText(report));
 */
export async function probeServer(url: string, options: ProbeOptions = {}): Promise<ProbeReport> {
  const settings = probeSettings(url, options);
  const steps: ProbeStep[] = [];
  let notes: ProbeNote[] = [];
  const tell = (note: ProbeNote): void => {
    notes.push(note);
  };
  const shared: Omit<ProbeContext, 'client'> = {
    settings,
    exams: probeExams(settings.run, settings.entries),
    declared: undefined,
    stored: undefined,
    left: new Set(),
    unknownIds: false,
    changes: [],
    faults: [],
    measured: {},
  };
  const counts = { requests: 0, retries: 0 };
  const runAll = async (list: readonly Step[]): Promise<void> => {
    const over = new AbortController();
    const timer = setTimeout(() => over.abort(), settings.totalTime);
    const client = createClient(settings, over.signal, tell);
    // The steps change the shared part; the client is another one when cleaning.
    const context: ProbeContext = Object.assign(shared, { client });
    try {
      for (const step of list) {
        notes = [];
        const skipped = await runStep(step, context);
        steps.push(stepOf(step, skipped, notes));
      }
    } finally {
      clearTimeout(timer);
      counts.requests += client.counts.requests;
      counts.retries += client.counts.retries;
    }
  };
  await runAll(probeSteps);
  await runAll([clean]);
  const { declared, stored, changes, faults } = shared;
  const software = [declared?.software, declared?.softwareVersion].filter(Boolean).join(' ');
  return {
    url: settings.base.href,
    fhirVersion: settings.fhirVersion,
    ...(software !== '' && { software: withoutToken(software, settings.token) }),
    works: stored !== undefined && steps.every((step) => !life.has(step.id) || works(step)),
    passed: stored !== undefined && steps.every(conforms),
    steps,
    capabilities: capabilitiesOf(shared),
    changes,
    faults,
    ...counts,
  };
}

/** The steps that an exam goes through. */
const life: ReadonlySet<string> = new Set([
  'store',
  'read-back',
  'update',
  're-send',
  'amend',
  'retract',
]);

const works = ({ verdict }: ProbeStep): boolean => verdict !== 'failed';

function conforms(step: ProbeStep): boolean {
  return works(step) && step.notes.every(({ severity }) => severity === 'information');
}

/** Why a step was left out; undefined when it was run to its end or as far as it went. */
async function runStep(step: Step, context: ProbeContext): Promise<string | undefined> {
  if (step.needsExam === true && context.stored === undefined) return 'no exam was stored';
  try {
    return (await step.run(context))?.skipped;
  } catch (thrown) {
    if (!(thrown instanceof Misbehaved)) throw thrown;
    const { misbehaviour, message, request } = thrown;
    const severity = 'error';
    context.client.tell({
      misbehaviour,
      severity,
      message,
      ...(request !== undefined && { request }),
    });
    return undefined;
  }
}

function stepOf({ id, title }: Step, reason: string | undefined, all: ProbeNote[]): ProbeStep {
  const notes = [...new Map(all.map((note) => [JSON.stringify(note), note])).values()];
  if (reason !== undefined) return { id, title, verdict: 'skipped', reason, notes };
  const failed = notes.some(({ severity }) => severity === 'error');
  return { id, title, verdict: failed ? 'failed' : 'passed', notes };
}

/** A server can send back what it was sent. */
function withoutToken(text: string, token: string | undefined): string {
  return token === undefined ? text : text.replaceAll(token, '[token]');
}
