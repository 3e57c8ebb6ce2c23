import type { ExportOptions } from '../../export/options.ts';
import { prepareExport } from '../../export/to-bundle.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { resourcesApart } from '../../fhir/references.ts';
import { flagOption, type OptionTable } from '../arguments.ts';
import type { Call } from '../command.ts';
import { exitCode } from '../exit-code.ts';
import { examOfText, parseOptionsOf } from '../input/read-exam.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { answerLines, checkLinesCall } from './answer-lines.ts';

export const apartOption: OptionTable = {
  apart: {
    type: 'flag',
    help: 'With --lines: a list of resources as {type, id, text}; text keeps the decimals in any language',
  },
};

/** The bundle of an exam a line, or its resources apart. */
export async function exportByLine(call: Call, options: ExportOptions): Promise<number> {
  checkLinesCall(call, ['out', 'most', 'as', 'format-out', 'deidentify']);
  const exporter = prepareExport(options);
  if (!exporter.ok) {
    await writeIssues(call.io, issueFormatOf(call.options), { input: 'export' }, exporter.issues);
    return exitCode.errors;
  }
  const parse = parseOptionsOf(call);
  const apart = flagOption(call.options, 'apart');
  return answerLines(call, (text) => {
    const read = examOfText(text, parse);
    if (!read.ok) return { issues: read.issues };
    const { value: bundle, issues } = exporter.value(read.value);
    const found = [...read.issues, ...issues];
    if (bundle === undefined) return { issues: found };
    const result = apart
      ? resourcesApart(bundle.entry ?? []).map((resource) => ({
          type: resource.resourceType,
          id: resource.id,
          text: toJson(resource),
        }))
      : bundle;
    return { exam: read.value.id, issues: found, result };
  });
}
