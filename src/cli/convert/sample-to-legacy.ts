import { toJson } from '../../fhir/json/to-json.ts';
import type { Exam } from '../../model/exam.ts';
import type { LegacyFormatName } from '../../testing/formats/format.ts';
import { legacyFormats, sampleMapping } from '../../testing/formats/formats.ts';
import { formatLosses } from '../../testing/formats/losses/losses.ts';
import { whatArrives } from '../../testing/formats/losses/what-arrives.ts';
import { flagOption, textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { outputTo, writeWhole } from '../output/output.ts';

export function isLegacyFormat(name: string): name is LegacyFormatName {
  return Object.hasOwn(legacyFormats, name);
}

/** Writes exams as an export, one at a time, and with it the mapping and the losses that were asked for. */
export async function sampleToLegacy(
  exams: Iterable<Exam>,
  format: LegacyFormatName,
  { io, options }: Pick<Call, 'io' | 'options'>,
): Promise<number> {
  const { begin, exam: write, end } = legacyFormats[format];
  const output = outputTo(io, textOption(options, 'out'));
  const counts = new Map<string, number>();
  try {
    await output.write(begin);
    for (const exam of exams) {
      await output.write(write(exam));
      if (!flagOption(options, 'losses')) continue;
      for (const id of whatArrives(exam, format).losses) counts.set(id, (counts.get(id) ?? 0) + 1);
    }
    await output.write(end);
    await output.finish();
  } catch (thrown) {
    await output.discard();
    throw thrown;
  }
  const mapping = textOption(options, 'mapping');
  if (mapping !== undefined) await writeWhole(io, mapping, `${toJson(sampleMapping(format))}\n`);
  for (const { id, what, why } of formatLosses) {
    const count = counts.get(id);
    if (count !== undefined) await io.err(`${count} exams: ${what}, since ${why}\n`);
  }
  return 0;
}
