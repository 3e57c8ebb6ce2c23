/// <reference types="node" />
import { toJson } from '../../../fhir/json/to-json.ts';
import { isLoopback, type ProbeOptions } from '../../../testing/probe/options.ts';
import { probeServer } from '../../../testing/probe/probe-server.ts';
import type { ProbeReport } from '../../../testing/probe/report/report.ts';
import { probeJUnit } from '../../../testing/probe/report/report-junit.ts';
import { probeText } from '../../../testing/probe/report/report-text.ts';
import { countOption, flagOption, type OptionValues, textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { UsageError } from '../../failure.ts';
import { outputTo } from '../../output/output.ts';
import { fhirOption, fhirVersionOf, outOption } from '../../shared-options.ts';

const formats: ReadonlyMap<string, (report: ProbeReport) => string> = new Map([
  ['text', probeText],
  ['json', (report) => `${toJson(report, { pretty: true })}\n`],
  ['junit', probeJUnit],
]);

export const command: Command = {
  argumentsText: 'URL',
  description:
    'Finds out what a FHIR server does with exams: stores an invented one, reads it back, searches, ' +
    'changes and withdraws it, and sends faults. It talks to this server and to no other. Do not ' +
    'use it on a server with real patients: use one that is meant for tests.',
  options: {
    ...fhirOption,
    yes: { type: 'flag', help: 'Allow a server that is not on this machine' },
    clean: { type: 'flag', help: 'At the end, delete everything that was stored' },
    'token-env': {
      type: 'text',
      value: 'NAME',
      help: 'Environment variable that holds an OAuth bearer token',
    },
    run: {
      type: 'text',
      value: 'NAME',
      fallback: '1',
      help: 'Name of the run; the same name updates what it stored before',
    },
    timeout: { type: 'text', value: 'SECONDS', fallback: '60', help: 'Longest wait for an answer' },
    entries: {
      type: 'text',
      value: 'COUNT',
      fallback: '600',
      help: 'Entries of a large exam, to find the limit of the server; 0 for none',
    },
    format: {
      type: 'text',
      values: [...formats.keys()],
      fallback: 'text',
      help: 'How the report is written',
    },
    ...outOption,
  },
  examples: [
    ['probe http://localhost:8080/fhir --clean', 'a server on this machine'],
    ['probe https://fhir.clinic.example/r4 --yes --token-env TOKEN', 'one that needs a login'],
    ['probe http://localhost:8080/fhir --format junit --out probe.xml', 'for a build server'],
  ],
  files: { least: 1, most: 1 },
  run: async ({ io, files, options }) => {
    const [url = ''] = files;
    if (!flagOption(options, 'yes') && URL.canParse(url) && !isLoopback(new URL(url))) {
      throw new UsageError('this server is not on this machine: add --yes to write to it');
    }
    const report = await probed(url, probeOptionsOf(options));
    const written = formats.get(textOption(options, 'format') ?? 'text') ?? probeText;
    const output = outputTo(io, textOption(options, 'out'));
    await output.write(written(report));
    await output.finish();
    return report.passed ? 0 : 1;
  },
};

async function probed(url: string, options: ProbeOptions): Promise<ProbeReport> {
  try {
    return await probeServer(url, options);
  } catch (thrown) {
    // What it cannot be called with; a fault of our own has a place in the code to tell.
    const misuse = thrown instanceof TypeError && thrown.message.startsWith('cannot ');
    throw misuse ? new UsageError(thrown.message) : thrown;
  }
}

function probeOptionsOf(options: OptionValues): ProbeOptions {
  const run = textOption(options, 'run');
  const seconds = countOption(options, 'timeout', 1);
  const entries = countOption(options, 'entries', 0);
  const variable = textOption(options, 'token-env');
  return {
    fhirVersion: fhirVersionOf({ options }),
    remote: flagOption(options, 'yes'),
    clean: flagOption(options, 'clean'),
    ...(run !== undefined && { run }),
    ...(seconds !== undefined && { timeout: seconds * 1000 }),
    ...(entries !== undefined && { entries }),
    ...(variable !== undefined && { token: tokenFrom(variable) }),
  };
}

function tokenFrom(variable: string): string {
  const token = process.env[variable]?.trim();
  if (token === undefined || token === '') {
    throw new UsageError('the environment variable that --token-env names is not set');
  }
  return token;
}
