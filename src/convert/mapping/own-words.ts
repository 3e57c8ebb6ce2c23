import type { Side } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Problem, Unkeyed } from '../build/built.ts';

/**
 * Words for sides and negations in the display texts of codes, English and German (common practice,
 * no source). They only ever speak against a code; nothing is coded by them.
 */
const left = /\b(?:left|links|linke[mnrs]?)\b/i;
const right = /\b(?:right|rechts|rechte[mnrs]?)\b/i;
const negation =
  /\b(?:no|not|without|absent|never|nil|none|denies|negative|kein(?:e[mnrs]?)?|nicht|ohne|negativ)\b/i;
const affirmation = /\b(?:present|positive|yes|vorhanden|positiv|ja)\b/i;

type Lateral = 'left' | 'right';

/**
 * What is wrong with a code by the words that the sender put beside it: they name the other side, or
 * deny what the code says. Neither is to be preferred, so that the record is kept as text.
 */
export function ownWordsProblem(
  statements: readonly Unkeyed[],
  wordings: readonly string[],
  valueWordings: readonly string[],
  catalogue: Catalogue,
): Problem | undefined {
  if (wordings.length === 0 && valueWordings.length === 0) return undefined;
  const claimed = new Set(statements.flatMap((statement) => sidesOf(statement, catalogue)));
  const named = new Set(wordings.flatMap(sidesIn));
  // Of a value that is said of both sides each word names its own.
  const isBoth = named.size > 1 && claimed.size > 1;
  if (!isBoth && wordings.some((words) => namesOtherSide(words, claimed))) return wrongSide;
  const contradicted = statements.some((statement) =>
    valueWordings.some((words) => denies(words, statement, catalogue)),
  );
  return contradicted ? denied : undefined;
}

function namesOtherSide(words: string, claimed: ReadonlySet<Lateral>): boolean {
  const [only, other] = sidesIn(words);
  if (only === undefined || other !== undefined || claimed.size === 0) return false;
  return claimed.size > 1 || !claimed.has(only);
}

function denies(words: string, statement: Unkeyed, catalogue: Catalogue): boolean {
  if (!('presence' in statement)) return false;
  const own = catalogue.findings.get(statement.finding)?.display ?? '';
  const negated = negation.test(words);
  if (statement.presence === 'present') return negated && !negation.test(own);
  return statement.presence === 'absent' && !negated && affirmation.test(words);
}

const wrongSide: Problem = {
  problem: 'side-conflict',
  facts: { reason: 'own-words' },
};

const denied: Problem = {
  problem: 'contradiction',
  facts: { reason: 'own-words' },
};

function sidesIn(words: string): Lateral[] {
  return [
    ...(left.test(words) ? ['left' as const] : []),
    ...(right.test(words) ? ['right' as const] : []),
  ];
}

/** Sides that a statement speaks of: its own, or those in the name of its finding. */
function sidesOf(statement: Unkeyed, catalogue: Catalogue): Lateral[] {
  const side = 'side' in statement ? statement.side : undefined;
  if (side !== undefined) return lateral(side);
  if (!('finding' in statement)) return [];
  return sidesIn(catalogue.findings.get(statement.finding)?.display ?? '');
}

function lateral(side: Side): Lateral[] {
  if (side === 'both') return ['left', 'right'];
  if (side === 'left' || side === 'left-of-midline') return ['left'];
  return side === 'right' || side === 'right-of-midline' ? ['right'] : [];
}
