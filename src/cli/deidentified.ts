import type { ExportOptions } from '../export/options.ts';
import type { Outcome } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import { flagOption, type OptionTable, textOption } from './arguments.ts';
import type { Call } from './command.ts';
import { UsageError } from './failure.ts';
import { textFile } from './input/text-file.ts';

export const deidentifyOptions: OptionTable = {
  deidentify: {
    type: 'text',
    value: 'FILE',
    help:
      'Leave out what names people and places, and make new ids with the secret in FILE (32 ' +
      'characters or more). It certifies nothing: local rules decide what may be passed on',
  },
  dates: {
    type: 'text',
    values: ['shift', 'year'],
    fallback: 'shift',
    help: 'With --deidentify: move the dates of each patient by days that the secret decides, or cut them',
  },
};

/** What is done to each exam of a call before it is written. */
export interface Deidentifier {
  readonly exam: (exam: Exam) => Outcome<Exam>;
  /** Labels of what is exported. */
  readonly filing: Pick<ExportOptions, 'filing'>;
  /** Tells how many cells are small. */
  readonly end: () => Promise<void>;
}

/** Fewer patients in a cell are told of. Common practice, no source. */
const least = 5;

/** Undefined where nothing was asked for, so that exams leave as they are. */
export async function deidentifierOf({
  io,
  options,
  clinic,
}: Call): Promise<Deidentifier | undefined> {
  const file = textOption(options, 'deidentify');
  if (file === undefined) return undefined;
  const { createCellCounter, deidentifiedLabels, deidentify } = await import(
    '../deidentify/index.ts'
  );
  const secret = (await textFile(io, file)).trim();
  if (secret.length < 32)
    throw new UsageError('--deidentify needs a secret of 32 characters or more');
  const dates = textOption(options, 'dates') === 'year' ? 'year' : 'shift';
  const includeValues = flagOption(options, 'include-values');
  const tables = clinic && { catalogue: clinic.catalogue };
  const cells = createCellCounter({ least, ...tables });
  return {
    filing: { filing: { security: deidentifiedLabels } },
    exam: (exam) => {
      const outcome = deidentify(exam, { secret, dates, includeValues, ...tables });
      if (outcome.ok) cells.add(outcome.value);
      return outcome;
    },
    end: async () => {
      const small = cells.small().length;
      if (small === 0) return;
      await io.err(
        `${small} cells of a sign or complaint, gender and year have fewer than ${least} patients, who could be recognised by it\n`,
      );
    },
  };
}
