import { hasErrors, type Issue } from '../../../issues/issue.ts';
import type { ValidateOptions, Validation } from '../../../validate/validate-bundle.ts';
import { flagOption, type OptionTable, textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { exitCode } from '../../exit-code.ts';
import { type Document, Unreadable } from '../../input/documents.ts';
import { eachOf } from '../../input/each-document.ts';
import { documentsOrLarge, type LargeDocument } from '../../input/large-file.ts';
import { profileOption, profilesOf } from '../../input/profile-files.ts';
import { type Answer, answerLines, checkLinesCall, linesOption } from '../../lines/answer-lines.ts';
import { type GatheredVerdict, gathered } from '../../output/gathered-verdict.ts';
import { countsOf, countsText, documentName, issueFormatOf } from '../../output/issue-writer.ts';
import {
  clinicOption,
  fhirOption,
  fhirVersionOf,
  issueOptions,
  outOption,
} from '../../shared-options.ts';
import { engineOf, type Validator, validatorOf } from '../../validators.ts';

const levelOption: OptionTable = {
  level: {
    type: 'text',
    values: ['fast', 'thorough'],
    fallback: 'fast',
    help:
      'thorough also evaluates every published invariant with the npm package fhirpath, which has ' +
      'to be installed; it takes some fifty times as long',
  },
};

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Checks whether bundles or single resources conform to FHIR. Each input is JSON or XML, or ' +
    'JSON with one resource per line; a bundle of more than 64 MB is looked at entry by entry. Every ' +
    'issue is reported with its line and column; the verdict of each input goes to standard output. Exit code 3: no error was found, but some rule was not ' +
    'checked. With --lines it works for a program that hands out records: each line is a resource, or ' +
    '{"id": ..., "raw": "text of one"}, and is answered at once with one line; one that does not conform is kept back.',
  options: {
    ...clinicOption,
    ...fhirOption,
    ...levelOption,
    ...profileOption,
    ...linesOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['validate bundle.json', 'against FHIR R4'],
    ['validate --fhir r5 a.json b.json', 'two files against R5'],
    ['validate patient.xml', 'FHIR XML'],
    ['validate bundle.json --profile guide/', 'also against the profiles that it claims'],
    ['validate --lines < resources.ndjson > verdicts.ndjson', 'one verdict per line'],
    ['export exam.json | face-neck-fhir validate --format json', 'issues as JSON, one per line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const version = fhirVersionOf(call);
    const validator = await validatorOf(version);
    const { compileProfiles } = validator;
    const paths = call.options.get('profile') ?? [];
    const format = issueFormatOf(call.options);
    const profiles =
      paths.length === 0 ? undefined : await profilesOf(call.io, paths, compileProfiles, format);
    if (paths.length > 0 && profiles === undefined) return 1;
    const options: ValidateOptions = {
      includeValues: flagOption(call.options, 'include-values'),
      ...(profiles !== undefined && { profiles }),
      ...(textOption(call.options, 'level') === 'thorough' && {
        level: 'thorough',
        engine: await engineOf(version),
      }),
    };
    let open = false;
    if (flagOption(call.options, 'lines')) {
      checkLinesCall(call, ['out']);
      const code = await answerLines(call, (text) => {
        const found = validator.validateText(text, options);
        open ||= found.conformance === 'not-fully-checked';
        return lineAnswer(found);
      });
      return code === exitCode.clean && open ? exitCode.notFullyChecked : code;
    }
    const verdict = format === 'text' ? verdictLine : verdictJson;
    const code = await eachOf(call, documentsOrLarge(call.io, call.files), async (document) => {
      const found = await validated(document, validator, options);
      open ||= found.conformance === 'not-fully-checked';
      return { text: verdict(document, found), issues: found.issues };
    });
    return code === exitCode.clean && open ? exitCode.notFullyChecked : code;
  },
};

/** Whatever does not conform must not go on, and is kept back. */
function lineAnswer({ conformance, valid, issues, unchecked }: Validation): Answer {
  if (hasErrors(issues)) return { issues };
  return {
    issues,
    result: { conformance, valid, ...(unchecked.length > 0 && { unchecked }) },
  };
}

type Named = Pick<Document, 'input' | 'record'>;

/** What is too large to be held is looked at entry by entry. */
async function validated(
  document: Document | LargeDocument,
  { validateText, validateEntries }: Validator,
  options: ValidateOptions,
): Promise<GatheredVerdict> {
  if (document.issue !== undefined) return unread(document.issue);
  if ('chunks' in document) {
    try {
      return await gathered(validateEntries(document.chunks, options));
    } catch (thrown) {
      if (thrown instanceof Unreadable) return unread(thrown.issue);
      throw thrown;
    }
  }
  const { issues, unchecked, conformance } = validateText(document.text, options);
  return { issues, unchecked, conformance, counts: countsOf(issues) };
}

function unread(found: Issue): GatheredVerdict {
  const issues = [found];
  return { conformance: 'does-not-conform', issues, counts: countsOf(issues), unchecked: [] };
}

function verdictLine(document: Named, { conformance, counts, unchecked }: GatheredVerdict): string {
  const rules = new Set(unchecked.map(({ rule }) => rule)).size;
  const open = rules > 0 ? `${rules} ${rules === 1 ? 'rule' : 'rules'} not checked` : '';
  const parts = [verdictWords[conformance], documentName(document), countsText(counts), open];
  return `${parts.filter(Boolean).join('  ')}\n`;
}

const verdictWords = {
  conforms: 'valid  ',
  'does-not-conform': 'invalid',
  'not-fully-checked': 'not fully checked',
} as const;

function verdictJson({ input, record }: Named, found: GatheredVerdict): string {
  const { conformance, counts, unchecked } = found;
  const verdict = {
    input,
    ...(record !== undefined && { record }),
    conformance,
    valid: conformance === 'conforms',
    errors: counts.error,
    warnings: counts.warning,
    information: counts.information,
    ...(unchecked.length > 0 && { unchecked }),
  };
  return `${JSON.stringify(verdict)}\n`;
}
