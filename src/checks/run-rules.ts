import { type Issue, issue, type Severity } from '../issue.ts';
import type { Path } from '../path.ts';
import type { CheckContext } from './context.ts';
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
  for (const rule of rules) {
    const found = rule.run(context);
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
