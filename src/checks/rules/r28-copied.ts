import { ruleTitles } from '../../issues/english/rules.ts';
import { isUnconfirmed } from '../../kinds/facets/base.ts';
import { measuredIn } from '../../kinds/measurement/check.ts';
import type { Measurement, Statement } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { whole } from '../figures/decimal.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when notes and figures repeat the prior exam word for word without being marked as carried. */
export const r28Copied: ConsistencyRule = {
  id: 'R28',
  title: ruleTitles.R28,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'copied-text',
  source: 'PSNet 2023; ECRI 2015; Berdahl CT et al. 2019, JAMA Netw Open e1911390',
  evidence: 'read',
  run: (context) => [...repeated(context), ...unconfirmed(context)],
};

function repeated(context: CheckContext): readonly RuleFinding[] {
  const limit = context.limit('copied-notes');
  if (limit === undefined || context.prior === undefined) return [];
  if (context.exam.statements.flatMap(wordsAt).length === 0) return [];
  const before = new Set(context.prior.exam.statements.flatMap(wordsAt));
  if (before.size === 0) {
    return [
      {
        outcome: 'not-evaluable',
        inputsUsed: [],
        inputsMissing: ['notes in the prior exam'],
        text: 'Whether notes repeat the prior exam cannot be told: it has none.',
      },
    ];
  }
  const copied = context.exam.statements.filter((statement) =>
    wordsAt(statement).some((words) => before.has(words)),
  );
  if (!limit.meets(whole(copied.length))) {
    return [
      {
        outcome: 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: `Notes that repeat the prior exam word for word: ${copied.length}.`,
      },
    ];
  }
  const figures = repeatedFigures(context);
  const keys = copied.map((statement) => statement.key);
  if (figures.differing) {
    return [
      {
        outcome: 'does-not-fire',
        inputsUsed: keys,
        inputsMissing: [],
        text: `${copied.length} notes repeat the prior exam word for word; the figures were taken anew.`,
      },
    ];
  }
  return [
    {
      outcome: 'fires',
      inputsUsed: [...keys, ...figures.same],
      inputsMissing: figures.same.length > 0 ? [] : ['a figure measured in both exams'],
      text: `${copied.length} notes${figures.same.length > 0 ? ` and all ${figures.same.length} figures` : ''} repeat the prior exam: mark them as carried over and confirmed, or state them anew.`,
    },
  ];
}

/** Words with the place they stand at, so that one short remark at two places is not a copy. */
function wordsAt(statement: Statement): readonly string[] {
  if (statement.carried !== undefined) return [];
  const region = 'region' in statement ? statement.region : '';
  const side = 'side' in statement ? statement.side : '';
  // A note's own text, and the note below any statement. Titles of pictures repeat by right.
  const texts = [statement.note, 'text' in statement ? statement.text : undefined];
  return texts.flatMap((text) =>
    text === undefined ? [] : [`${statement.kind} ${region} ${side} ${text.trim()}`],
  );
}

function repeatedFigures({ index, comparisons }: CheckContext): {
  readonly same: readonly string[];
  readonly differing: boolean;
} {
  const same: string[] = [];
  let differing = false;
  for (const { now, figures } of measuredIn(comparisons)) {
    if (now === undefined || figures === undefined) continue;
    if (isCarried(index.byKey.get(now))) continue;
    if (figures.before.value === figures.now.value && figures.before.unit === figures.now.unit) {
      same.push(now);
    } else {
      differing = true;
    }
  }
  return { same, differing };
}

function isCarried(statement: Statement | undefined): statement is Measurement {
  return statement?.carried !== undefined;
}

/** A value taken over and not looked at again is the prior exam's and not this one's. */
function unconfirmed({ exam }: CheckContext): readonly RuleFinding[] {
  return exam.statements.filter(isUnconfirmed).map((statement) => ({
    outcome: 'fires',
    on: statement.key,
    severity: 'information',
    inputsUsed: [statement.key],
    inputsMissing: [],
    text: 'Carried over from an earlier exam and not confirmed: it counts as said then, not as examined now.',
  }));
}
