/// <reference types="node" />
import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import type {
  BulkIo,
  BulkOptions,
  ConvertSettings,
  OutputKind,
} from '../../convert/bulk/options.ts';
import { countOption, flagOption, textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import type { CliIo } from '../io.ts';
import { exportOptionsOf } from '../shared-options.ts';

export const kinds: ReadonlyMap<string, OutputKind> = new Map([
  ['bundles', 'bundles'],
  ['resources', 'resources'],
  ['exams', 'exams'],
]);

/** What decides how a record becomes lines. */
export function recordSettings(call: Call, mapping: unknown): ConvertSettings {
  const { options, clinic } = call;
  // The tables and the code map go as plain data, which a worker can be told.
  const { catalogue: _, codes: _codes, ...exported } = exportOptionsOf(call);
  const { additions, codeMap } = clinic?.convert ?? {};
  return {
    ...exported,
    ...(additions && { additions }),
    ...(codeMap && { codeMap }),
    mapping,
    to: kinds.get(textOption(options, 'to') ?? '') ?? 'bundles',
    ledger: flagOption(options, 'ledger'),
  };
}

export type RunSettings = Omit<BulkOptions, 'out'>;

export function runSettings(call: Call, mapping: unknown): RunSettings {
  const { io, files, options } = call;
  const jobs = countOption(options, 'jobs', 0) ?? 1;
  return {
    ...recordSettings(call, mapping),
    inputs: files.map((path) => (path === '-' ? path : resolve(io.cwd, path))),
    inputKind: flagOption(options, 'quarantine') ? 'quarantine' : 'export',
    jobs: jobs === 0 ? availableParallelism() : jobs,
    resume: flagOption(options, 'resume'),
  };
}

/** Progress goes to standard error. */
export function bulkIo(io: CliIo): BulkIo {
  return {
    now: () => io.now().getTime(),
    progress: {
      isTerminal: io.errIsTerminal,
      write: (text) => {
        void io.err(text);
      },
    },
  };
}
