import type { Clinic } from '../clinic/clinic.ts';
import type { OptionTable, OptionValues } from './arguments.ts';
import type { CliIo } from './io.ts';

/** What a command is called with. */
export interface Call {
  readonly io: CliIo;
  readonly files: readonly string[];
  readonly options: OptionValues;
  /** What the file of `--clinic` says; options go before it. */
  readonly clinic?: Clinic;
}

/** What decides how a call is carried out: its options, and behind them the clinic. */
export type Choices = Pick<Call, 'options' | 'clinic'>;

/** One command: its help is made from the same table that its options are read by. */
export interface Command {
  /** Arguments as help shows them: `[FILE ...]`. */
  readonly argumentsText: string;
  /** What it does, in a few sentences. */
  readonly description: string;
  readonly options: OptionTable;
  /** Calls to copy, with a word on each. */
  readonly examples: readonly (readonly [call: string, what: string])[];
  /** Most and fewest files that it takes. */
  readonly files: { readonly least: number; readonly most: number };
  /** The exit code, of those in exit-code.ts. Throws UsageError for 2. */
  readonly run: (call: Call) => Promise<number>;
}
