import { formOf } from '../../kinds/registries/forms.ts';
import type { ExamRule } from './rule.ts';

/** Attributes, grades, results and scores must be among those that their sign, test or scale has. */
export const allowedAnswers: ExamRule = (context) => {
  context.exam.statements.forEach((statement, at) => {
    formOf(statement).answers?.(statement, ['statements', at], context);
  });
  context.exam.conditions?.forEach((condition, at) => {
    const row = context.catalogue.conditions.get(condition.condition);
    if (row === undefined) return;
    const values = row.values ?? [];
    if (condition.value !== undefined && !values.some(({ code }) => code === condition.value)) {
      context.report(
        'unknown-code',
        ['conditions', at, 'value'],
        { reason: 'condition-value', codes: values.map(({ code }) => code) },
        { value: condition.value },
      );
    }
  });
};
