import { type Issue, issue } from '../../issue.ts';
import type { Path } from '../../path.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Mapping, Meaning, WordTable } from '../mapping.ts';
import type { Target } from '../target.ts';
import { clashingWords } from '../word-map.ts';
import { tableOf } from './make-plan.ts';

/** Meanings that every field can have. */
const noValues: readonly string[] = ['not-stated', 'text'];

/** Words whose meaning the target does not have, and a table that it names and is not there. */
export function targetWordIssues(
  target: Target,
  path: Path,
  mapping: Mapping,
  catalogue: Catalogue,
): Issue[] {
  if (!('words' in target) || target.words === undefined) return [];
  const at = [...path, 'words'];
  const table = tableOf(target.words, mapping);
  if (table === undefined) {
    return [issue('unresolved-key', at, 'the mapping has no word table of this name')];
  }
  const allowed = meaningsOf(target, catalogue);
  const states = statesOf(target);
  return Object.entries(table).flatMap(([word, meaning]) => {
    if (isAllowed(meaning, allowed, states)) return [];
    // Named tables serve several targets; their words are told where the table stands.
    const place = typeof target.words === 'string' ? at : [...at, word];
    const codes = allowed.length > 40 ? ['a code of the table findings'] : allowed;
    const expected = [...codes, ...noValues, ...states.map((state) => `the state ${state}`)];
    return [
      issue('invalid-value', place, `a word has a meaning that a ${target.kind} does not have`, {
        expected: expected.join(', '),
      }),
    ];
  });
}

/** Words that differ only in white space, or in case where case does not count. */
export function clashIssues(
  table: WordTable | { readonly [word: string]: unknown } | undefined,
  path: Path,
  mapping: Mapping,
): Issue[] {
  return clashingWords(table ?? {}, mapping.ignoreCase ?? false).map((word) =>
    issue('ambiguous-mapping', [...path, word], 'this word matches another of the table'),
  );
}

/** Reasons of states must be known. */
export function reasonIssues(meaning: unknown, path: Path, catalogue: Catalogue): Issue[] {
  if (typeof meaning !== 'object' || meaning === null || !('reason' in meaning)) return [];
  if (catalogue.reasons.has(String(meaning.reason))) return [];
  return [issue('unknown-code', [...path, 'reason'], 'the table reasons does not hold this code')];
}

function isAllowed(
  meaning: Meaning,
  allowed: readonly string[],
  states: readonly string[],
): boolean {
  if (typeof meaning === 'object') return states.includes(meaning.state);
  return allowed.includes(meaning) || noValues.includes(meaning);
}

/** States with a reason that the target can tell. */
function statesOf({ kind }: Target): readonly string[] {
  switch (kind) {
    case 'region-state':
    case 'finding':
      return ['not-examined', 'not-applicable', 'partial'];
    case 'sensation':
    case 'sensation-comparison':
    case 'movement':
    case 'function-test':
    case 'measurement':
      return ['not-examined', 'not-applicable'];
    default:
      return [];
  }
}

/** Meanings that a word of the target can have, besides those of all fields. */
export function meaningsOf(target: Target, catalogue: Catalogue): readonly string[] {
  switch (target.kind) {
    case 'finding':
      if (target.finding === undefined) return [...catalogue.findings.keys()];
      return ['present', 'absent', 'indeterminate', 'suspected', 'confirmed'];
    case 'region-state':
      return ['normal', 'abnormal'];
    case 'sensation':
      return [...catalogue.sensationResults.values()]
        .filter((row) => !row.untested)
        .map(({ code }) => code);
    case 'sensation-comparison':
      return ['equal', 'right-less', 'left-less'];
    case 'movement':
    case 'function-test':
      return (catalogue.testPoints.get(target.test)?.results ?? []).filter(
        (code) => !catalogue.testResults.get(code)?.untested,
      );
    case 'scale-score':
      return (catalogue.scales.get(target.scale)?.grades ?? []).map(({ code }) => code);
    case 'symptom':
      return ['yes', 'no', 'unsure', 'declined', 'not-asked'];
    case 'attribute': {
      const row = catalogue.attributes.get(target.attribute);
      return row?.type === 'boolean' ? ['yes', 'no'] : (row?.values ?? []).map(({ code }) => code);
    }
    case 'condition': {
      const values = catalogue.conditions.get(target.condition)?.values ?? [];
      return values.length === 0 ? ['yes'] : values.map(({ code }) => code);
    }
    default:
      return [];
  }
}
