import { hasErrors, type Issue, type Severity } from '../../issue.ts';
import type { Command } from '../command.ts';
import type { Document } from '../documents.ts';
import { eachDocument } from '../each-document.ts';
import { countText, documentName, issueFormatOf } from '../issue-writer.ts';
import { flagOption } from '../options.ts';
import { fhirOption, fhirVersionOf, issueOptions, outOption } from '../shared-options.ts';
import { validatorOf } from '../validators.ts';

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Checks whether bundles or single resources conform to FHIR. Each input is JSON, or one ' +
    'resource a line. Every issue is told; the verdict of each input goes to standard output.',
  options: { ...fhirOption, ...outOption, ...issueOptions },
  examples: [
    ['validate bundle.json', 'against FHIR R4'],
    ['validate --fhir r5 a.json b.json', 'two files against R5'],
    ['export exam.json | face-neck-fhir validate --format json', 'issues as JSON, one a line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const validate = await validatorOf(fhirVersionOf(call.options));
    const includeValues = flagOption(call.options, 'include-values');
    const verdict = issueFormatOf(call.options) === 'text' ? verdictLine : verdictJson;
    return eachDocument(call, {
      run: async (value, document) => {
        const { issues } = validate(value, { includeValues });
        return { text: verdict(document, issues), issues };
      },
      unread: verdict,
    });
  },
};

function verdictLine(document: Document, issues: readonly Issue[]): string {
  const verdict = hasErrors(issues) ? 'invalid' : 'valid  ';
  return `${[verdict, documentName(document), countText(issues)].filter(Boolean).join('  ')}\n`;
}

function verdictJson({ input, record }: Document, issues: readonly Issue[]): string {
  const of = (severity: Severity): number =>
    issues.filter((found) => found.severity === severity).length;
  const verdict = {
    input,
    ...(record !== undefined && { record }),
    valid: !hasErrors(issues),
    errors: of('error'),
    warnings: of('warning'),
    information: of('information'),
  };
  return `${JSON.stringify(verdict)}\n`;
}
