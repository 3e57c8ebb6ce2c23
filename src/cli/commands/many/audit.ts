import { createAuditor } from '../../../audit/audit.ts';
import { englishAuditWords, germanAuditWords } from '../../../audit/words.ts';
import { auditCsv, auditHtml } from '../../../audit/write-audit.ts';
import { toJson } from '../../../fhir/json/to-json.ts';
import { parseExam } from '../../../model/parse-exam.ts';
import { builtInCatalogue } from '../../../terminology/catalogue.ts';
import { inLanguage } from '../../../terminology/language.ts';
import { textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { eachDocument } from '../../input/each-document.ts';
import { withFolders } from '../../input/folders.ts';
import { parseOptionsOf } from '../../input/read-exam.ts';
import { languageOf, languageOption } from '../../language.ts';
import { outputTo } from '../../output/output.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';
import { checkOptionsOf, ruleSetOption, settingsOption } from '../exam/check.ts';

export const command: Command = {
  argumentsText: '[FILE|FOLDER ...]',
  description:
    'Adds up many exams: coverage by protocol and region, reasons for what was not done, what the ' +
    'checks found, prompts nobody set aside, corrections, agreement of two examiners on one person, ' +
    'and last digits of figures. Exams come one a file or one a line; none is kept, and no person is named.',
  options: {
    to: {
      type: 'text',
      values: ['page', 'json', 'csv'],
      fallback: 'page',
      help: 'Form of the result',
    },
    ...clinicOption,
    ...ruleSetOption,
    ...settingsOption,
    ...languageOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['audit exams/ --out audit.html', 'a page over a folder'],
    ['audit year.ndjson --to csv', 'figures for a spreadsheet'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const { io, options } = call;
    const checks = await checkOptionsOf(call);
    if (checks === undefined) return 1;
    const parse = parseOptionsOf(call);
    const auditor = createAuditor({ checks });
    const files = await withFolders(io, call.files);
    const code = await eachDocument(
      // The result alone goes to --out.
      { ...call, files, options: new Map([...options].filter(([name]) => name !== 'out')) },
      {
        run: async (value) => {
          const { value: exam, issues } = parseExam(value, parse);
          if (exam !== undefined) auditor.add(exam);
          return { issues };
        },
      },
    );
    const audit = auditor.result();
    const { displays } = languageOf(call);
    const to = textOption(options, 'to');
    const german = displays.tag === 'de';
    const output = outputTo(io, textOption(options, 'out'));
    await output.write(
      to === 'json'
        ? `${toJson(audit, { pretty: true })}\n`
        : to === 'csv'
          ? auditCsv(audit)
          : auditHtml(audit, {
              words: german ? germanAuditWords : englishAuditWords,
              catalogue: inLanguage(checks.catalogue ?? builtInCatalogue, displays),
              tag: displays.tag,
            }),
    );
    await output.finish();
    return code;
  },
};
