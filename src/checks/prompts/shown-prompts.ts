import { type Issue, issue } from '../../issues/issue.ts';
import { sayingsOf } from '../../kinds/registries/meanings.ts';
import type { Exam } from '../../model/exam.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { CheckContext } from '../context.ts';
import type { RuleResult } from '../rule.ts';
import { type RuleSet, type RuleSetId, ruleSet } from '../rule-sets.ts';
import { rules } from '../rules.ts';
import type { Dismissal } from '../settings/check-settings.ts';
import { pictures } from '../tables/pictures.ts';
import { urgencies } from './urgency.ts';

/** A prompt that fires, with the advice it is taken from and what goes with every prompt. */
export interface Prompt extends RuleResult {
  /** The advice that it is taken from. */
  readonly ruleSet: RuleSet;
  /** Sentences to be shown beside it. */
  readonly cautions: readonly string[];
  /** Set where the clinician set the prompt aside; it stays in the list. */
  readonly dismissed?: Omit<Dismissal, 'prompt'>;
}

const setOfRule: ReadonlyMap<string, RuleSetId> = /*@__PURE__*/ new Map(
  rules.flatMap((rule) => (rule.kind === 'prompt' ? [[rule.id, rule.ruleSet] as const] : [])),
);

/** The prompts that fire, most urgent first, those that were set aside last. */
export function promptsOf(
  { exam, words: { cautions } }: CheckContext,
  results: readonly RuleResult[],
  dismissals: readonly Dismissal[],
): readonly Prompt[] {
  const byPrompt = new Map([...dismissedIn(exam), ...dismissals].map((one) => [one.prompt, one]));
  const prompts = results.flatMap((result): Prompt[] => {
    const set = ruleSet(setOfRule.get(result.ruleId) ?? '');
    if (result.kind !== 'prompt' || result.outcome !== 'fires' || set === undefined) return [];
    const dismissal = byPrompt.get(result.id);
    if (dismissal === undefined || dismissal.reason.trim() === '') {
      return [{ ...result, ruleSet: set, cautions }];
    }
    const { prompt: _prompt, ...dismissed } = dismissal;
    return [{ ...result, ruleSet: set, cautions, dismissed }];
  });
  return prompts.sort(
    (a, b) =>
      Number(a.dismissed !== undefined) - Number(b.dismissed !== undefined) || byUrgency(a, b),
  );
}

/** Prompts keep the order of the rules within one urgency. */
function byUrgency(a: RuleResult, b: RuleResult): number {
  return urgencies.indexOf(a.urgency ?? 'routine') - urgencies.indexOf(b.urgency ?? 'routine');
}

/**
 * Prompts that cannot be told although something points to them. Something present, told or weak points to them; an age or a negative alone does not. Of a picture
 * the anchor holds wherever it gives a result that cannot be told.
 */
export function openPrompts(
  { catalogue, index }: CheckContext,
  results: readonly RuleResult[],
): readonly RuleResult[] {
  const points = (key: string): boolean => {
    const statement = index.byKey.get(key);
    return statement !== undefined && isPointer(statement, catalogue);
  };
  return results
    .filter((one) => one.kind === 'prompt' && one.outcome === 'not-evaluable')
    .filter((one) => Object.hasOwn(pictures, one.ruleId) || one.inputsUsed.some(points))
    .sort(byUrgency);
}

/** A sign that is there or suspected, a complaint, a movement or sensation that is not as usual. */
function isPointer(statement: Statement, catalogue: Catalogue): boolean {
  return sayingsOf(statement, catalogue).some(({ polarity, usual, of }) => {
    if (usual === true || !pointing.has(of.table)) return false;
    return polarity === 'states' || (polarity === 'open' && of.table === 'findings');
  });
}

const pointing: ReadonlySet<string> = new Set(['findings', 'symptoms', 'testPoints']);

/** What is wrong with the dismissals of the settings: no reason, or no prompt of that id. */
export function dismissalIssues(
  prompts: readonly Prompt[],
  dismissals: readonly Dismissal[],
): readonly Issue[] {
  const ids = new Set(prompts.map((one) => one.id));
  return dismissals.flatMap((one, at) => {
    const path = ['options', 'dismissals', at];
    if (one.reason.trim() === '') {
      return [issue('missing-reason', [...path, 'reason'], { reason: 'dismissal' })];
    }
    if (ids.has(one.prompt)) return [];
    return [
      issue(
        'unused-dismissal',
        [...path, 'prompt'],
        { reason: 'id' },
        {
          severity: 'information',
        },
      ),
    ];
  });
}

/** Prompts that the record says were set aside, as of when they were shown last. */
function dismissedIn(exam: Exam): readonly Dismissal[] {
  const last = new Map((exam.prompts ?? []).map((one) => [one.prompt, one]));
  return [...last.values()].flatMap(({ prompt, answer }) => {
    if (answer?.answer !== 'dismissed' || answer.reason === undefined) return [];
    const { by, at, reason } = answer;
    return [{ prompt, by, at, reason }];
  });
}
