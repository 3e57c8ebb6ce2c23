/** What the command line touches of its surroundings. Nothing else in the library reads a clock. */
export interface CliIo {
  /** Standard input in pieces. */
  readonly stdin: AsyncIterable<Uint8Array>;
  /** Whether a person sits at standard input, so that waiting for data would hang. */
  readonly interactive: boolean;
  /** Writes to standard output; rejects with the code EPIPE when its reader has gone. */
  readonly out: (text: string) => Promise<void>;
  /** Writes to standard error. */
  readonly err: (text: string) => Promise<void>;
  /** Whether standard error is a terminal, so that progress can be shown on one line. */
  readonly errIsTerminal: boolean;
  readonly now: () => Date;
  /** Folder that relative paths start from. */
  readonly cwd: string;
}
