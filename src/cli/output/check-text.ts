import type { CheckResult, Prompt } from '../../checks/check-exam.ts';
import {
  type Coverage,
  type CoverageCount,
  type CoverageItem,
  coverageGaps,
} from '../../checks/coverage/coverage.ts';
import { cautions } from '../../checks/prompt.ts';
import type { RuleResult } from '../../checks/rule.ts';
import { sideText } from '../../terminology/sides.ts';
import { compareText, displayOf } from './compare-text.ts';

/** What the checks found, for people: coverage, what rules say, prompts, what could not be told. */
export function checkText(result: CheckResult): string {
  const { coverage, results, prompts, notEvaluable, comparisons } = result;
  const fired = results.filter(({ kind, outcome }) => kind !== 'prompt' && outcome === 'fires');
  return [
    ...(coverage === undefined ? [] : coverageLines(coverage)),
    ...part('Rules', fired.map(ruleLine)),
    ...part('Prompts', prompts.flatMap(promptLines)),
    ...part('Could not be told, and so is no negative', notEvaluable.map(missingLine)),
    ...(comparisons.length === 0 ? [] : ['Against the exam before', '', compareText(comparisons)]),
    ...cautions,
    '',
  ].join('\n');
}

const kinds = ['regions', 'methods', 'points', 'tests', 'measures'] as const;

function coverageLines(coverage: Coverage): string[] {
  const gaps = coverageGaps(coverage);
  return [
    `Coverage of ${coverage.protocol.display}, version ${coverage.protocol.version}`,
    ...kinds.map((kind) => `  ${kind.padEnd(10)}${countText(coverage[kind])}`),
    '',
    ...part('Nothing was said about', gaps.filter(({ kind }) => kind !== 'method').map(gapLine)),
    ...part(
      'Not part of this protocol',
      coverage.outside.map((text) => `  ${text}`),
    ),
  ];
}

function countText({
  required,
  complete,
  partial,
  documented,
  carried,
  gaps,
}: CoverageCount): string {
  const takenOver = carried > 0 ? `, ${carried} taken over and not looked at again` : '';
  return `${complete} of ${required} examined as a whole, ${partial} in part, ${documented} said not to be done${takenOver}, ${gaps} open`;
}

const tables = {
  region: 'regions',
  method: 'regions',
  point: 'testPoints',
  test: 'testPoints',
  measure: 'measures',
} as const;

function gapLine({ kind, code, side, modality }: CoverageItem): string {
  const parts = [
    displayOf(tables[kind], code),
    side === undefined ? '' : sideText[side],
    modality === undefined ? '' : displayOf('modalities', modality),
  ];
  return `  ${kind.padEnd(9)}${parts.filter(Boolean).join(', ')}`;
}

function ruleLine({ id, severity, text }: RuleResult): string {
  return `  ${id} [${severity}] ${text}`;
}

function promptLines({ id, severity, text, inputsMissing, dismissed }: Prompt): string[] {
  return [
    `  ${id} [${severity}] ${text}`,
    ...(inputsMissing.length === 0 ? [] : [`      not known: ${inputsMissing.join('; ')}`]),
    ...(dismissed === undefined ? [] : [`      set aside: ${dismissed.reason}`]),
  ];
}

function missingLine({ id, title, inputsMissing }: RuleResult): string {
  return `  ${id} ${title}: ${inputsMissing.join('; ')}`;
}

function part(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [heading, ...lines, ''];
}
