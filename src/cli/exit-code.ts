/** What the exit code of a call says; part of the public interface. */
export const exitCode = {
  clean: 0,
  /** At least one issue is an error; with `--lines` nothing was answered. */
  errors: 1,
  wrongCall: 2,
  /** `validate` alone: no error was found, and some rule was not looked at. */
  notFullyChecked: 3,
  /** With `--lines`: every record has its answer, and some were kept back. */
  keptBack: 4,
} as const;
