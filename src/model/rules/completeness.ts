import type { Path } from '../../issues/path.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import type { Statement } from '../statement.ts';
import type { ExamRule, RuleContext } from './rule.ts';

/** What a statement must carry to be understood: reasons, values, units. */
export const completeStatements: ExamRule = (context) => {
  context.exam.statements.forEach((statement, at) => {
    const path = ['statements', at];
    checkReasons(statement, path, context);
    formOf(statement).complete?.(statement, path, context);
  });
  checkOrganization(context);
  checkSteps(context);
  checkPrompts(context);
};

/** A prompt that is set aside without a reason reads as one that nobody saw. */
function checkPrompts({ exam, report }: RuleContext): void {
  exam.prompts?.forEach(({ answer }, at) => {
    if (answer?.answer === 'dismissed' && answer.reason === undefined) {
      report('missing-reason', ['prompts', at, 'answer', 'reason'], { reason: 'dismissal' });
    }
  });
}

/** @see https://hl7.org/fhir/R4/organization.html constraint org-1 */
function checkOrganization({ exam: { organization }, report }: RuleContext): void {
  if (organization === undefined) return;
  const { reference, identifiers, name } = organization;
  if (reference === undefined && identifiers === undefined && name === undefined) {
    report('empty-value', ['organization'], { reason: 'organization' });
  }
}

/** An untested result has its reason; without one it would read like silence. A result has none. */
function checkReasons(statement: Statement, path: Path, { said, report }: RuleContext): void {
  const reasons = formOf(statement).reasons?.(statement);
  if (reasons === undefined) return;
  said(statement).forEach(({ polarity }, i) => {
    const { reason, path: below = [] } = reasons[i] ?? {};
    const at = [...path, ...below, 'reason'];
    if (polarity === 'none' && reason === undefined) {
      report('missing-reason', at, { reason: 'state' });
    } else if (polarity !== 'none' && reason !== undefined) {
      report('contradiction', at, { reason: 'reason-with-result' });
    }
  });
}

/** Steps that change a signed record say why. */
function checkSteps({ exam, report }: RuleContext): void {
  const needsReason = new Set(['amend', 'correct', 'cancel', 'retract']);
  exam.history?.forEach((event, at) => {
    if (needsReason.has(event.action) && event.reason === undefined) {
      report('missing-reason', ['history', at, 'reason'], { reason: 'state' });
    }
  });
}
