import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { targetConversion } from '../../kinds/registries/conversions.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { issue } from '../issue.ts';
import type { Mapping, Meaning, WordTable } from '../mapping/mapping.ts';
import type { Target } from '../mapping/target.ts';
import { clashingWords } from '../mapping/word-map.ts';
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
    return [issue('unresolved-key', at, { reason: 'word-table' })];
  }
  const { states, ...conversion } = targetConversion(target);
  const allowed = conversion.meanings(target, catalogue);
  return Object.entries(table).flatMap(([word, meaning]) => {
    if (isAllowed(meaning, allowed, states)) return [];
    // Named tables serve several targets; their words are told where the table stands.
    const place = typeof target.words === 'string' ? at : [...at, word];
    const codes = allowed.length > 40 ? ['a code of the table findings'] : allowed;
    const expected = [...codes, ...noValues, ...states.map((state) => `the state ${state}`)];
    return [
      issue('invalid-value', place, {
        reason: 'word-meaning',
        kind: target.kind,
        codes: expected,
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
    issue('ambiguous-mapping', [...path, word], { reason: 'word' }),
  );
}

/** Reasons of states must be known. */
export function reasonIssues(meaning: unknown, path: Path, catalogue: Catalogue): Issue[] {
  if (typeof meaning !== 'object' || meaning === null || !('reason' in meaning)) return [];
  if (catalogue.reasons.has(String(meaning.reason))) return [];
  return [issue('unknown-code', [...path, 'reason'], { reason: 'reason' })];
}

function isAllowed(
  meaning: Meaning,
  allowed: readonly string[],
  states: readonly string[],
): boolean {
  if (typeof meaning === 'object') return states.includes(meaning.state);
  return allowed.includes(meaning) || noValues.includes(meaning);
}
