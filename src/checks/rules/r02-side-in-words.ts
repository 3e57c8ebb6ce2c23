import { ruleTitles } from '../../issues/english/rules.ts';
import { wordsIn } from '../../kinds/registries/checks.ts';
import type { Statement } from '../../model/statement.ts';
import { sideNamed } from '../places/side-words.ts';
import { sideText } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when the words of a statement name only the side opposite to the coded one. */
export const r02SideInWords: ConsistencyRule = {
  id: 'R02',
  title: ruleTitles.R02,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'side-conflict',
  source: 'common practice, no source; wrong side is a recognised error in records',
  evidence: 'common-practice',
  run: ({ exam }) => {
    let compared = 0;
    const found: RuleFinding[] = [];
    for (const statement of exam.statements) {
      const named = sideNamed(wordsOf(statement));
      if (named === undefined || named === 'both') continue;
      const side = codedSide(statement);
      if (side === 'unsaid') found.push(noSideCoded(statement, named));
      if (side === 'unsaid' || side === 'not-one') continue;
      compared += 1;
      if (named === side) continue;
      found.push({
        outcome: 'fires',
        on: statement.key,
        side,
        inputsUsed: [statement.key],
        inputsMissing: [],
        text: `Coded ${sideText(side)}, and the words name the ${named} only: check the side.`,
      });
    }
    if (compared === 0 || found.some((one) => one.outcome === 'fires')) return found;
    return [
      ...found,
      {
        outcome: 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: `The side words of ${compared} statement(s) agree with the coded sides.`,
      },
    ];
  },
};

/** The one side that is coded; `unsaid` where a place is coded without its side. */
function codedSide(statement: Statement): 'right' | 'left' | 'unsaid' | 'not-one' {
  const side = 'side' in statement ? statement.side : undefined;
  if (side === 'right' || side === 'right-of-midline') return 'right';
  if (side === 'left' || side === 'left-of-midline') return 'left';
  const placed = 'region' in statement && statement.region !== undefined;
  return side === undefined && placed ? 'unsaid' : 'not-one';
}

function noSideCoded(statement: Statement, named: 'right' | 'left'): RuleFinding {
  return {
    outcome: 'not-evaluable',
    on: statement.key,
    inputsUsed: [statement.key],
    inputsMissing: ['the coded side'],
    text: `The words name the ${named}, and no side is coded.`,
  };
}

function wordsOf(statement: Statement): string {
  const words: (string | undefined)[] = [...wordsIn(statement)];
  if ('reason' in statement) words.push(statement.reason?.text);
  if ('limit' in statement) words.push(statement.limit.text);
  return words.filter((text) => text !== undefined).join('\n');
}
