import { hasErrors, type Issue, type Severity } from '../../issues/issue.ts';
import type { ValidateOptions } from '../../validate/validate-bundle.ts';
import type { Unchecked } from '../../validate/walk/scope.ts';
import { flagOption, type OptionTable, textOption } from '../arguments.ts';
import type { Command } from '../command.ts';
import type { Document } from '../input/documents.ts';
import { eachText } from '../input/each-document.ts';
import { profileOption, profilesOf } from '../input/profile-files.ts';
import { countText, documentName, issueFormatOf } from '../output/issue-writer.ts';
import { fhirOption, fhirVersionOf, issueOptions, outOption } from '../shared-options.ts';
import { engineOf, validatorOf } from '../validators.ts';

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
    'JSON with one resource a line. Every issue is told with its line and column; the verdict of ' +
    'each input goes to standard output. Exit code 3: no error was found, and some rule was not ' +
    'looked at.',
  options: { ...fhirOption, ...levelOption, ...profileOption, ...outOption, ...issueOptions },
  examples: [
    ['validate bundle.json', 'against FHIR R4'],
    ['validate --fhir r5 a.json b.json', 'two files against R5'],
    ['validate patient.xml', 'FHIR XML'],
    ['validate bundle.json --profile guide/', 'also against the profiles that it claims'],
    ['export exam.json | face-neck-fhir validate --format json', 'issues as JSON, one a line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const version = fhirVersionOf(call.options);
    const { validateText, compileProfiles } = await validatorOf(version);
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
    const verdict = format === 'text' ? verdictLine : verdictJson;
    let open = false;
    const code = await eachText(call, async (document) => {
      if (document.issue !== undefined) {
        return { text: verdict(document, [document.issue]), issues: [document.issue] };
      }
      const { issues, unchecked, conformance } = validateText(document.text, options);
      open ||= conformance === 'not-fully-checked';
      return { text: verdict(document, issues, unchecked), issues };
    });
    return code === 0 && open ? NOT_FULLY_CHECKED : code;
  },
};

/** Exit code where no error was found and some rule was not looked at. */
const NOT_FULLY_CHECKED = 3;

function verdictLine(
  document: Document,
  issues: readonly Issue[],
  unchecked: readonly Unchecked[] = [],
): string {
  const rules = new Set(unchecked.map(({ rule }) => rule)).size;
  const open = rules > 0 ? `${rules} ${rules === 1 ? 'rule' : 'rules'} not checked` : '';
  const verdict = hasErrors(issues) ? 'invalid' : rules > 0 ? 'not fully checked' : 'valid  ';
  const parts = [verdict, documentName(document), countText(issues), open];
  return `${parts.filter(Boolean).join('  ')}\n`;
}

function verdictJson(
  { input, record }: Document,
  issues: readonly Issue[],
  unchecked: readonly Unchecked[] = [],
): string {
  const of = (severity: Severity): number =>
    issues.filter((found) => found.severity === severity).length;
  const passed = unchecked.length > 0 ? 'not-fully-checked' : 'conforms';
  const conformance = hasErrors(issues) ? 'does-not-conform' : passed;
  const verdict = {
    input,
    ...(record !== undefined && { record }),
    conformance,
    valid: conformance === 'conforms',
    errors: of('error'),
    warnings: of('warning'),
    information: of('information'),
    ...(unchecked.length > 0 && { unchecked }),
  };
  return `${JSON.stringify(verdict)}\n`;
}
