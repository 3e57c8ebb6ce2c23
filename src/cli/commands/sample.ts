import { toBundle } from '../../export/to-bundle.ts';
import { resourcesApart } from '../../fhir/references.ts';
import { failure, type Outcome, orThrow, success } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { type SampleSize, sampleExams } from '../../testing/sample-exam.ts';
import { countOption, flagOption, textOption } from '../arguments.ts';
import type { Call, Command } from '../command.ts';
import { isLegacyFormat, sampleToLegacy } from '../convert/sample-to-legacy.ts';
import { UsageError } from '../failure.ts';
import { lacksIdentity } from '../input/lacks-identity.ts';
import { writeIssues } from '../output/issue-writer.ts';
import { outputTo } from '../output/output.ts';
import { formatOutOption, resourceWriter, wantsXml } from '../output/resource-text.ts';
import { bundleOptions, clinicOption, exportOptionsOf, outOption } from '../shared-options.ts';

const sizes: ReadonlyMap<string, SampleSize> = new Map([
  ['small', 'small'],
  ['usual', 'usual'],
  ['full', 'full'],
  ['edge', 'edge'],
]);

export const command: Command = {
  argumentsText: '',
  description:
    'Prints invented exams for tests, one per line. Each follows from its seed alone, so the same ' +
    'call always prints the same bytes. The data is plausible in form, not medically.',
  options: {
    seed: { type: 'text', value: 'N', fallback: '1', help: 'Seed of the first exam' },
    count: { type: 'text', value: 'N', fallback: '1', help: 'How many' },
    size: {
      type: 'text',
      values: [...sizes.keys()],
      fallback: 'usual',
      help: 'How much each states: a dozen statements, a hundred, everything, or odd cases',
    },
    to: {
      type: 'text',
      values: ['exam', 'bundle', 'resources', 'csv', 'hl7v2', 'xml', 'cda'],
      fallback: 'exam',
      help:
        'What to print: exams, bundles, every resource on a line of its own, or the export of an ' +
        'older system with the same exams in it',
    },
    mapping: {
      type: 'text',
      value: 'FILE',
      help: 'With csv, hl7v2, xml or cda: write the mapping that reads the export to this file',
    },
    losses: {
      type: 'flag',
      help: 'With these: report on standard error what the format does not carry, and why',
    },
    ...clinicOption,
    ...bundleOptions,
    ...formatOutOption,
    ...outOption,
  },
  examples: [
    ['sample --seed 7 --count 100 --to bundle', 'a hundred R4 bundles'],
    ['sample --count 3 | face-neck-fhir export --fhir r5', 'exams, exported by the next command'],
    ['sample --count 9 --to hl7v2 --mapping map.json --out checks.hl7', 'input for a converter'],
  ],
  files: { least: 0, most: 0 },
  run: async (call) => {
    const { io, options } = call;
    const seed = countOption(options, 'seed', 0) ?? 1;
    const count = countOption(options, 'count', 0) ?? 1;
    const size = sizes.get(textOption(options, 'size') ?? 'usual') ?? 'usual';
    const settings = exportOptionsOf(call);
    const to = textOption(options, 'to') ?? 'exam';
    if (wantsXml(options) && to !== 'bundle' && to !== 'resources') {
      throw new UsageError('--format-out xml needs --to bundle or --to resources');
    }
    const resources = to === 'bundle' || to === 'resources';
    if (resources && (await lacksIdentity(call, settings))) return 1;
    const write = await resourceWriter(call);
    const exams = sampleExams(seed, count, { size });
    if (isLegacyFormat(to)) return await sampleToLegacy(exams, to, { io, options });
    if (flagOption(options, 'losses') || textOption(options, 'mapping') !== undefined) {
      throw new UsageError('--mapping and --losses belong to --to csv, hl7v2, xml or cda');
    }
    return await writeSamples(call, exams, (exam) => {
      const { value: lines, issues } = linesOf(exam, to, settings);
      const written = lines?.map((line) => orThrow('write a sample', write(line, true)));
      return written === undefined ? failure(issues) : success(written);
    });
  },
};

/** One exam after another; the first that cannot leave as was asked for ends it. */
async function writeSamples(
  { io, options }: Call,
  exams: Iterable<Exam>,
  textsOf: (exam: Exam) => Outcome<readonly string[]>,
): Promise<number> {
  const output = outputTo(io, textOption(options, 'out'));
  try {
    for (const exam of exams) {
      const { value: texts, issues } = textsOf(exam);
      if (texts === undefined) {
        await output.discard();
        await writeIssues(io, 'text', { input: exam.id }, issues);
        return 1;
      }
      for (const text of texts) await output.write(text);
    }
    await output.finish();
  } catch (thrown) {
    await output.discard();
    throw thrown;
  }
  return 0;
}

function linesOf(
  exam: Exam,
  to: string,
  settings: ReturnType<typeof exportOptionsOf>,
): Outcome<readonly unknown[]> {
  if (to === 'exam') return success([exam]);
  const made = toBundle(exam, settings);
  if (!made.ok) return made;
  return success(to === 'bundle' ? [made.value] : resourcesApart(made.value.entry ?? []));
}
