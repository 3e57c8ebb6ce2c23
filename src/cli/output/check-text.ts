import type { CheckResult } from '../../checks/check-exam.ts';
import {
  type Coverage,
  type CoverageCount,
  type CoverageItem,
  coverageGaps,
} from '../../checks/coverage/coverage.ts';
import type { Prompt } from '../../checks/prompts/shown-prompts.ts';
import type { RuleResult } from '../../checks/rule.ts';
import { type CheckWords, cautionText, missingText } from '../../checks/words/check-words.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { sideText } from '../../terminology/sides.ts';
import { compareText, displayOf } from './compare-text.ts';

/** What the checks found, for people: coverage, what rules say, prompts, what could not be told. */
export function checkText(result: CheckResult, words: CheckWords, catalogue: Catalogue): string {
  const { coverage, results, prompts, comparisons } = result;
  const fired = results.filter(({ kind, outcome }) => kind !== 'prompt' && outcome === 'fires');
  return [
    ...(coverage === undefined ? [] : coverageLines(coverage, words, catalogue)),
    ...part('Rules', fired.map(ruleLine)),
    ...part(
      words.headings.prompts,
      prompts.flatMap((prompt) => promptLines(prompt, words)),
    ),
    ...part(words.headings.open, openLines(result, words)),
    ...(comparisons.length === 0
      ? []
      : ['Compared with the earlier exam', '', compareText(comparisons, catalogue)]),
    ...words.cautions,
    '',
  ].join('\n');
}

const kinds = ['regions', 'methods', 'points', 'tests', 'measures'] as const;

function coverageLines(coverage: Coverage, words: CheckWords, catalogue: Catalogue): string[] {
  const gaps = coverageGaps(coverage);
  return [
    `Coverage of ${coverage.protocol.display}, version ${coverage.protocol.version}`,
    ...kinds.map((kind) => `  ${kind.padEnd(10)}${countText(coverage[kind])}`),
    '',
    ...part(
      'Nothing was said about',
      gaps.filter(({ kind }) => kind !== 'method').map((gap) => gapLine(gap, catalogue)),
    ),
    ...part(
      'Not part of this protocol',
      coverage.outside.map((text) => `  ${text}`),
    ),
    ...part(
      words.headings.mind,
      coverage.cautions.map((id) => `  ${cautionText(words, id)}`),
    ),
  ];
}

function countText({
  required,
  complete,
  partial,
  derived,
  documented,
  carried,
  gaps,
}: CoverageCount): string {
  const takenOver = carried > 0 ? `, ${carried} taken over and not looked at again` : '';
  const byTests = derived > 0 ? `, ${derived} only by tests made there` : '';
  return `${complete} of ${required} examined as a whole, ${partial} in part${byTests}, ${documented} documented as not done${takenOver}, ${gaps} open`;
}

const tables = {
  region: 'regions',
  method: 'regions',
  point: 'testPoints',
  test: 'testPoints',
  measure: 'measures',
} as const;

function gapLine({ kind, code, side, modality }: CoverageItem, catalogue: Catalogue): string {
  const parts = [
    displayOf(catalogue, tables[kind], code),
    side === undefined ? '' : sideText[side],
    modality === undefined ? '' : displayOf(catalogue, 'modalities', modality),
  ];
  return `  ${kind.padEnd(9)}${parts.filter(Boolean).join(', ')}`;
}

function ruleLine({ id, severity, text }: RuleResult): string {
  return `  ${id} [${severity}] ${text}`;
}

function promptLines(
  { id, severity, text, inputsMissing, dismissed }: Prompt,
  words: CheckWords,
): string[] {
  const { headings } = words;
  return [
    `  ${id} [${severity}] ${text}`,
    ...(inputsMissing.length === 0
      ? []
      : [`      ${headings.missing}: ${missingText(words, inputsMissing)}`]),
    ...(dismissed === undefined ? [] : [`      ${headings.setAside}: ${dismissed.reason}`]),
  ];
}

/** Prompts that something in the exam points to, and how many other results lack an input. */
function openLines({ openPrompts, notEvaluable }: CheckResult, words: CheckWords): string[] {
  const others = notEvaluable.length - openPrompts.length;
  return [
    ...openPrompts.map(
      ({ text, inputsMissing }) =>
        `  ${text} ${words.headings.missing}: ${missingText(words, inputsMissing)}`,
    ),
    ...(others > 0 ? [`  ${others} other results lack an input; --to json lists them`] : []),
  ];
}

function part(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [heading, ...lines, ''];
}
