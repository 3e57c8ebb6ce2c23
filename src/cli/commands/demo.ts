/// <reference types="node" />
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { coverExam } from '../../checks/coverage/coverage.ts';
import { toBundle } from '../../export/to-bundle.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { hasErrors, orThrow } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { parseExamOrThrow } from '../../model/parse-exam.ts';
import { toHtml } from '../../report/to-html.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { flagOption, textOption } from '../arguments.ts';
import type { Command } from '../command.ts';
import { CAUTION, demoSummary, resourceTypes } from '../output/demo-summary.ts';
import { countText, issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { writeWhole } from '../output/output.ts';
import { bundleOptions, exportOptionsOf, issueOptions } from '../shared-options.ts';
import { validatorOf } from '../validators.ts';

/** The example that comes with the package; the program that makes it stands beside it. */
const EXAMPLE = new URL('../../../examples/exams/yearly-check.json', import.meta.url);

export const command: Command = {
  argumentsText: '',
  description:
    'Takes the yearly check of an invented crane operator through the library: writes it as a FHIR ' +
    'bundle, validates that, and writes a page to read and a summary.',
  options: {
    ...bundleOptions,
    out: {
      type: 'text',
      value: 'FOLDER',
      fallback: 'output/demo',
      help: 'Folder to write into',
    },
    ...issueOptions,
  },
  examples: [
    ['demo', 'writes into output/demo, below the folder it is called in'],
    ['demo --fhir r5 --bundle document --out demo-r5', 'an R5 document, elsewhere'],
  ],
  files: { least: 0, most: 0 },
  run: async ({ io, options }) => {
    const settings = exportOptionsOf({ options });
    const folder = textOption(options, 'out') ?? join('output', 'demo');
    const exam = await exampleExam();
    const made = toBundle(exam, settings);
    const bundle = orThrow('export the example', made);
    const { validateBundle } = await validatorOf(settings.fhirVersion ?? 'R4');
    const checked = validateBundle(bundle, {
      includeValues: flagOption(options, 'include-values'),
    });
    const issues = [...made.issues, ...checked.issues];
    const summary = demoSummary({ exam, bundle, coverage: coverageOf(exam), issues });

    const json = `${toJson(bundle, { pretty: true })}\n`;
    await writeWhole(io, join(folder, 'bundle.json'), json);
    await writeWhole(io, join(folder, 'report.html'), toHtml(exam));
    await writeWhole(io, join(folder, 'summary.txt'), summary);
    const types = resourceTypes(bundle);
    const observations = types.filter((type) => type === 'Observation').length;
    await io.out(
      [
        `Took the yearly check of an invented crane operator: ${exam.statements.length} statements on face and neck.`,
        `Wrote it as a FHIR ${settings.fhirVersion} ${settings.bundleType}: ${types.length} resources, ${observations} of them Observations.`,
        `Validated the bundle: ${countText(issues) || 'no issue'}.`,
        `See in ${folder}: bundle.json, report.html (a page to read) and summary.txt.`,
        CAUTION,
        '',
      ].join('\n'),
    );
    await writeIssues(io, issueFormatOf(options), { input: join(folder, 'bundle.json') }, issues);
    return hasErrors(issues) ? 1 : 0;
  },
};

async function exampleExam(): Promise<Exam> {
  return parseExamOrThrow(orThrow('read the example', fromJson(await readFile(EXAMPLE, 'utf8'))));
}

function coverageOf(exam: Exam): ReturnType<typeof coverExam>['coverage'] {
  const protocol = builtInCatalogue.protocols.get(exam.protocol.id);
  if (protocol === undefined) throw new TypeError('the example follows no protocol of the tables');
  return coverExam(exam, protocol, builtInCatalogue).coverage;
}
