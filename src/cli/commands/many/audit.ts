import { createAuditor } from '../../../audit/audit.ts';
import { auditOfSums } from '../../../audit/sums/audit-of-sums.ts';
import type { AuditSums } from '../../../audit/sums/sums.ts';
import { englishAuditWords, germanAuditWords } from '../../../audit/words.ts';
import { auditCsv, auditHtml } from '../../../audit/write-audit.ts';
import type { CheckOptions } from '../../../checks/settings/check-settings.ts';
import { toJson } from '../../../fhir/json/to-json.ts';
import { type ParseOptions, parseExam } from '../../../model/parse-exam.ts';
import { builtInCatalogue } from '../../../terminology/catalogue.ts';
import { inLanguage } from '../../../terminology/languages/language.ts';
import { flagOption, textOption } from '../../arguments.ts';
import type { Call, Command } from '../../command.ts';
import { eachDocument } from '../../input/each-document.ts';
import { withFolders } from '../../input/folders.ts';
import { parseOptionsOf } from '../../input/read-exam.ts';
import { languageOf, languageOption } from '../../language.ts';
import { linesOption } from '../../lines/answer-lines.ts';
import { auditByLine, type Merged, mergedSums } from '../../lines/audit-lines.ts';
import { outputTo } from '../../output/output.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';
import { checkOptionsOf, nowOption, ruleSetOption, settingsOption } from '../exam/check.ts';

export const command: Command = {
  argumentsText: '[FILE|FOLDER ...]',
  description:
    'Adds up many exams: coverage by protocol and region, reasons for what was not done, what the ' +
    'checks found, prompts nobody set aside, corrections, agreement of two examiners on one person, ' +
    'and last digits of figures. Exams come one per file or one per line; none is kept, and no person is named. ' +
    'On many machines each line (--lines) or part (--to sums) gives sums, which --merge adds up.',
  options: {
    to: {
      type: 'text',
      values: ['page', 'json', 'csv', 'sums'],
      fallback: 'page',
      help: 'Form of the result; sums are what --merge adds up',
    },
    ...clinicOption,
    ...ruleSetOption,
    ...settingsOption,
    ...nowOption,
    ...linesOption,
    merge: { type: 'flag', help: 'The inputs are sums of --lines or --to sums, one per line' },
    ...languageOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['audit exams/ --out audit.html', 'a page over a folder'],
    ['audit year.ndjson --to csv', 'figures for a spreadsheet'],
    ['audit part.ndjson --to sums > part.sums', 'a part of the exams'],
    ['audit --merge *.sums --out audit.html', 'all parts'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const { options } = call;
    const checks = await checkOptionsOf(call);
    if (checks === undefined) return 1;
    const settings = { checks, parse: parseOptionsOf(call) };
    if (flagOption(options, 'lines')) return auditByLine(call, settings);
    const files = await withFolders(call.io, call.files);
    // The result alone goes to --out.
    const inner = new Map([...options].filter(([name]) => name !== 'out'));
    const reading = { ...call, files, options: inner };
    const isMerge = flagOption(options, 'merge');
    const { sums, code } = await (isMerge ? mergedSums(reading) : addedUp(reading, settings));
    const output = outputTo(call.io, textOption(options, 'out'));
    await output.write(written(call, sums, checks));
    await output.finish();
    return code;
  },
};

async function addedUp(
  call: Call,
  { checks, parse }: { readonly checks: CheckOptions; readonly parse: ParseOptions },
): Promise<Merged> {
  const auditor = createAuditor({ checks });
  const code = await eachDocument(call, {
    run: async (value) => {
      const { value: exam, issues } = parseExam(value, parse);
      if (exam !== undefined) auditor.add(exam);
      return { issues };
    },
  });
  return { sums: auditor.sums(), code };
}

function written(call: Call, sums: AuditSums, checks: CheckOptions): string {
  const { displays } = languageOf(call);
  const audit = auditOfSums(sums);
  switch (textOption(call.options, 'to')) {
    case 'sums':
      return `${toJson(sums)}\n`;
    case 'json':
      return `${toJson(audit, { pretty: true })}\n`;
    case 'csv':
      return auditCsv(audit);
    default:
      return auditHtml(audit, {
        words: displays.tag === 'de' ? germanAuditWords : englishAuditWords,
        catalogue: inLanguage(checks.catalogue ?? builtInCatalogue, displays),
        tag: displays.tag,
      });
  }
}
