import { ruleTitles } from '../../issues/english/rules.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Phrases that call a whole system normal in one breath. */
const allNormal =
  /\b(?:all|everything|heent|ent|face and neck|head and neck)\s+(?:is\s+|are\s+|was\s+|were\s+)?(?:normal|unremarkable|clear)\b|\bno abnormalit(?:y|ies) detected\b|\bwithin normal limits\b/i;
/** NAD: "no abnormality detected", or "no acute distress"; WNL is as loose. */
const ambiguous = /\b(?:NAD|WNL|N\/E)\b/;

/** Fires when words call everything normal: they stay words, and cover no region. */
export const r29AllNormalWords: ConsistencyRule = {
  id: 'R29',
  title: ruleTitles.R29,
  kind: 'consistency',
  version: '1',
  severity: 'information',
  code: 'check-statement',
  source: 'HL7 C-CDA sample history and physical ("All normal to examination"); common practice',
  evidence: 'common-practice',
  run: ({ index, coverage }) => {
    const notes = index.all('note').filter((note) => note.region === undefined);
    if (notes.length === 0) return [];
    const gaps = coverage?.regions.gaps;
    const found = notes
      .filter((note) => allNormal.test(note.text) || ambiguous.test(note.text))
      .map((note): RuleFinding => {
        if (!allNormal.test(note.text)) return undecided(note.key);
        const open =
          gaps === undefined ? '' : ` ${gaps} region(s) of the protocol have no statement.`;
        return {
          outcome: 'fires',
          on: note.key,
          inputsUsed: [note.key],
          inputsMissing: gaps === undefined ? ['a known protocol'] : [],
          text: `A note calls everything normal. It is kept as words and covers no region.${open}`,
        };
      });
    if (found.length > 0) return found;
    return [
      {
        outcome: 'does-not-fire',
        inputsUsed: notes.map((note) => note.key),
        inputsMissing: [],
        text: 'No note calls everything normal.',
      },
    ];
  },
};

function undecided(key: string): RuleFinding {
  return {
    outcome: 'not-evaluable',
    on: key,
    inputsUsed: [key],
    inputsMissing: ['what the abbreviation stands for here'],
    text: 'A note holds an abbreviation with more than one meaning. It is kept as words and covers no region.',
  };
}
