import { toBundle } from '../../export/to-bundle.ts';
import { resourcesApart } from '../../fhir/references.ts';
import { orThrow } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { type SampleSize, sampleExams } from '../../testing/sample-exam.ts';
import { countOption, flagOption, textOption } from '../arguments.ts';
import type { Command } from '../command.ts';
import { isLegacyFormat, sampleToLegacy } from '../convert/sample-to-legacy.ts';
import { UsageError } from '../failure.ts';
import { outputTo } from '../output/output.ts';
import { formatOutOption, resourceWriter, wantsXml } from '../output/resource-text.ts';
import { bundleOptions, exportOptionsOf, outOption } from '../shared-options.ts';

const sizes: ReadonlyMap<string, SampleSize> = new Map([
  ['small', 'small'],
  ['usual', 'usual'],
  ['full', 'full'],
  ['edge', 'edge'],
]);

export const command: Command = {
  argumentsText: '',
  description:
    'Prints invented exams for tests, one a line. Each follows from its seed alone, so the same ' +
    'call always prints the same bytes. The data is plausible in form and not in medicine.',
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
      help: 'With these: tell on standard error what the format does not carry, and why',
    },
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
  run: async ({ io, options }) => {
    const seed = countOption(options, 'seed', 0) ?? 1;
    const count = countOption(options, 'count', 0) ?? 1;
    const size = sizes.get(textOption(options, 'size') ?? 'usual') ?? 'usual';
    const settings = exportOptionsOf(options);
    const to = textOption(options, 'to') ?? 'exam';
    if (wantsXml(options) && to !== 'bundle' && to !== 'resources') {
      throw new UsageError('--format-out xml needs --to bundle or --to resources');
    }
    const write = await resourceWriter(options);
    const exams = sampleExams(seed, count, { size });
    if (isLegacyFormat(to)) return await sampleToLegacy(exams, to, { io, options });
    if (flagOption(options, 'losses') || textOption(options, 'mapping') !== undefined) {
      throw new UsageError('--mapping and --losses belong to --to csv, hl7v2, xml or cda');
    }
    const output = outputTo(io, textOption(options, 'out'));
    try {
      for (const exam of exams) {
        for (const line of linesOf(exam, to, settings)) {
          await output.write(orThrow('write a sample', write(line, true)));
        }
      }
      await output.finish();
    } catch (thrown) {
      await output.discard();
      throw thrown;
    }
    return 0;
  },
};

function linesOf(
  exam: Exam,
  to: string,
  settings: ReturnType<typeof exportOptionsOf>,
): readonly unknown[] {
  if (to === 'exam') return [exam];
  const bundle = orThrow('export a sample', toBundle(exam, settings));
  return to === 'bundle' ? [bundle] : resourcesApart(bundle.entry ?? []);
}
