/// <reference types="node" />

import { readFile } from 'node:fs/promises';
import { nearest } from '../issues/nearest.ts';
import { shownText } from '../issues/shown-text.ts';
import { flagOption, parseOptions, textOption } from './arguments.ts';
import type { Command } from './command.ts';
import { systemCode, systemReason, UsageError } from './failure.ts';
import { commandHelp, generalHelp } from './help.ts';
import type { CliIo } from './io.ts';
import { helpOption } from './shared-options.ts';

interface Entry {
  readonly what: string;
  readonly load: () => Promise<{ readonly command: Command }>;
}

/** Each command is loaded when it is called, so that a call starts no more than it needs. */
const commands: ReadonlyMap<string, Entry> = new Map<string, Entry>([
  ['demo', { what: 'an example, start to end', load: () => import('./commands/demo.ts') }],
  ['export', { what: 'exams to FHIR bundles', load: () => import('./commands/fhir/export.ts') }],
  ['validate', { what: 'check FHIR bundles', load: () => import('./commands/fhir/validate.ts') }],
  ['read', { what: 'FHIR bundles to exams', load: () => import('./commands/fhir/read.ts') }],
  ['check', { what: 'coverage, rules, prompts', load: () => import('./commands/exam/check.ts') }],
  [
    'compare',
    { what: 'two exams of one person', load: () => import('./commands/exam/compare.ts') },
  ],
  ['report', { what: 'exams as a page to read', load: () => import('./commands/exam/report.ts') }],
  ['letter', { what: 'letters from an exam', load: () => import('./commands/exam/letter.ts') }],
  ['audit', { what: 'figures over many exams', load: () => import('./commands/many/audit.ts') }],
  ['flat', { what: 'rows for analysis', load: () => import('./commands/many/flat.ts') }],
  ['recall', { what: 'what is due, and overdue', load: () => import('./commands/many/recall.ts') }],
  ['convert', { what: 'older exports to FHIR', load: () => import('./commands/convert.ts') }],
  ['form', { what: 'forms, and their answers', load: () => import('./commands/exam/form.ts') }],
  ['find', { what: 'codes by what people say', load: () => import('./commands/find.ts') }],
  ['sample', { what: 'invented exams for tests', load: () => import('./commands/sample.ts') }],
  ['clinic', { what: 'what a clinic decides', load: () => import('./commands/clinic.ts') }],
  ['probe', { what: 'tries a FHIR server', load: () => import('./commands/fhir/probe.ts') }],
]);

/** Runs one call of the command line and resolves to its exit code. Never throws. */
export async function cli(argv: readonly string[], io: CliIo): Promise<number> {
  try {
    return await run(argv, io);
  } catch (thrown) {
    if (thrown instanceof UsageError) {
      await io.err(`face-neck-fhir: ${shownText(thrown.message)}\n`);
      return 2;
    }
    if (systemCode(thrown) === 'EPIPE') {
      await io.err('face-neck-fhir: the reader of the output has gone; stopped\n');
      return 0;
    }
    const reason = systemReason(thrown);
    if (reason !== undefined) {
      await io.err(`face-neck-fhir: cannot go on: ${reason}\n`);
      return 2;
    }
    // The message of a fault of our own could quote data, so only its kind and place are shown.
    await io.err(`face-neck-fhir: internal fault, please report it: ${placeOf(thrown)}\n`);
    return 2;
  }
}

async function run([name, ...args]: readonly string[], io: CliIo): Promise<number> {
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    await io.out(generalHelp([...commands].map(([command, { what }]) => [command, what])));
    return name === undefined ? 2 : 0;
  }
  if (name === '--version') {
    await io.out(`${await packageVersion()}\n`);
    return 0;
  }
  const entry = commands.get(name);
  if (entry === undefined) throw unknownCommand(name);
  const { command } = await entry.load();
  const { files, options } = parseOptions(args, { ...command.options, ...helpOption });
  if (flagOption(options, 'help')) {
    await io.out(commandHelp(name, command));
    return 0;
  }
  const { least, most } = command.files;
  if (files.length < least || files.length > most) {
    throw new UsageError(`wrong number of files: ${name} ${command.argumentsText}`.trimEnd());
  }
  if (textOption(options, 'clinic') === undefined) return command.run({ io, files, options });
  const { clinicOf } = await import('./input/clinic-file.ts');
  const clinic = await clinicOf({ io, options });
  return clinic === undefined ? 1 : command.run({ io, files, options, clinic });
}

function unknownCommand(name: string): UsageError {
  const near = nearest(name, commands.keys());
  const hint =
    near === undefined ? `it knows ${[...commands.keys()].join(', ')}` : `perhaps ${near}`;
  return new UsageError(`unknown command "${name}"; ${hint}`);
}

async function packageVersion(): Promise<string> {
  const text = await readFile(new URL('../../package.json', import.meta.url), 'utf8');
  const { version }: { version: string } = JSON.parse(text); // our own file
  return version;
}

function placeOf(thrown: unknown): string {
  if (!(thrown instanceof Error)) return typeof thrown;
  const frame = thrown.stack?.split('\n').find((line) => line.trimStart().startsWith('at '));
  return `${thrown.name} ${frame?.trim() ?? ''}`.trimEnd();
}
