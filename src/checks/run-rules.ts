import { spend } from '../issues/budget.ts';
import { type Issue, issue, type Severity } from '../issues/issue.ts';
import type { Path } from '../issues/path.ts';
import type { CheckContext } from './context.ts';
import { indexWithUnconfirmed } from './exam-index.ts';
import type { Rule, RuleFinding, RuleResult, RuleSeverity } from './rule.ts';
import { ruleSet } from './rule-sets.ts';

const issueSeverity: { readonly [S in RuleSeverity]: Severity } = {
  information: 'information',
  check: 'warning',
  error: 'error',
  prompt: 'information',
  urgent: 'information',
};

const nothing: RuleFinding = {
  outcome: 'not-applicable',
  inputsUsed: [],
  inputsMissing: [],
  text: 'The exam states nothing that this rule is about.',
};

/** Results of the rules in their order, and the issues that consistency rules raise. */
export function runRules(
  context: CheckContext,
  rules: readonly Rule[],
): { readonly results: readonly RuleResult[]; readonly issues: readonly Issue[] } {
  const results: RuleResult[] = [];
  const issues: Issue[] = [];
  // What was taken over is read once more, only to say where a rule stays open for want of it.
  const asTakenOver = context.index.leftOut
    ? { ...context, index: indexWithUnconfirmed(context.exam) }
    : undefined;
  for (const rule of rules) {
    spend(context.exam.statements.length);
    const known = rule.run(context);
    const found =
      asTakenOver === undefined
        ? known
        : openFor(known, rule, rule.run(asTakenOver), context.words.phrases['taken-over']);
    const ids = new Map<string, number>();
    for (const one of found.length > 0 ? found : [nothing]) {
      results.push(resultOf(rule, one, ids));
      if (rule.kind === 'consistency' && one.outcome === 'fires') {
        issues.push(
          // The rule and not its text: an issue never carries what the exam says.
          issue(
            one.code ?? rule.code,
            pathOf(context, one),
            { reason: 'rule', ruleId: rule.id },
            {
              statement: one.inputsUsed.find((key) => context.index.position.has(key)),
              severity: issueSeverity[one.severity ?? rule.severity],
              rule: rule.id,
            },
          ),
        );
      }
    }
  }
  return { results, issues };
}

/**
 * What a rule found from what is known today, with that added to what it lacks wherever statements
 * that were taken over and not looked at again would have settled it.
 */
function openFor(
  known: readonly RuleFinding[],
  rule: Rule,
  takenOver: readonly RuleFinding[],
  notLookedAtAgain: string,
): readonly RuleFinding[] {
  const settled = takenOver.filter((one) =>
    rule.kind === 'consistency'
      ? one.outcome === 'fires'
      : one.outcome === 'fires' || one.outcome === 'does-not-fire',
  );
  const things = new Set(settled.map((one) => one.on));
  const answered = new Set(known.map((one) => one.on));
  return [
    ...known.map((one) =>
      one.outcome === 'not-evaluable' && things.has(one.on)
        ? { ...one, inputsMissing: [...one.inputsMissing, notLookedAtAgain] }
        : one,
    ),
    ...settled
      .filter((one) => !answered.has(one.on))
      .map(
        ({ on, side }): RuleFinding => ({
          outcome: 'not-evaluable',
          ...(on !== undefined && { on }),
          ...(side !== undefined && { side }),
          inputsUsed: [],
          inputsMissing: [notLookedAtAgain],
          text: 'Not told: it rests on what was taken over from an earlier exam and not looked at again.',
        }),
      ),
  ];
}

function resultOf(rule: Rule, found: RuleFinding, ids: Map<string, number>): RuleResult {
  const { code: _code, severity, ...finding } = found;
  const name = finding.on === undefined ? rule.id : `${rule.id}:${finding.on}`;
  const count = (ids.get(name) ?? 0) + 1;
  ids.set(name, count);
  const jurisdiction = rule.kind === 'prompt' ? ruleSet(rule.ruleSet)?.jurisdiction : undefined;
  return {
    // The same thing can fail in more than one way.
    id: count === 1 ? name : `${name}#${count}`,
    ruleId: rule.id,
    title: rule.title,
    kind: rule.kind,
    version: rule.version,
    ...(jurisdiction !== undefined && { jurisdiction }),
    severity: severity ?? rule.severity,
    source: rule.source,
    evidence: rule.evidence,
    ...finding,
  };
}

/** The first statement that the finding rests on; the exam itself where there is none. */
function pathOf({ index }: CheckContext, { inputsUsed }: RuleFinding): Path {
  for (const key of inputsUsed) {
    const at = index.position.get(key);
    if (at !== undefined) return ['statements', at];
  }
  return [];
}
