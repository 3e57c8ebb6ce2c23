import type * as r4 from 'fhir/r4.js';
import {
  failure,
  hasErrors,
  type Issue,
  issue,
  issuesBelow,
  type Outcome,
  success,
} from '../issues/issue.ts';
import { cutIssues } from '../issues/issue-list.ts';
import type { Exam } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import { toFormDescription } from './describe.ts';
import type { FormItem } from './form.ts';
import { lastTimeTexts } from './last-time.ts';
import { canonicalOf, type QuestionnaireOptions } from './to-questionnaire.ts';

/** What a form begins with. */
export interface StartingOptions extends QuestionnaireOptions {
  /** The exam before, of the same person: what it says is shown beside the questions. */
  readonly prior?: Exam;
  /** Whose form it is, as the response names it: `Patient/417`. */
  readonly subject?: string;
}

/**
 * Makes the response that a form begins with: which form it is and, where the form has items for it
 * (`lastTime`), what was said last time. No question is answered in it.
 *
 * @param protocol As for `toQuestionnaire`.
 * @param options Those that the form was made with, and the exam before. Whether that is of the same
 *   person is for the caller to know.
 * @returns A QuestionnaireResponse, whose form is the same in R4, R4B and R5. It fails where there is
 *   no such form, or the exam before has errors or was withdrawn. What that exam says and the form
 *   has no place for is not shown.
 * @example
 * const start = startingResponse('droopy-lid', { lastTime: true, prior: before });
 */
export function startingResponse(
  protocol: string,
  options: StartingOptions = {},
): Outcome<r4.QuestionnaireResponse> {
  const described = toFormDescription(protocol, options);
  if (!described.ok) return described;
  const form = described.value;
  const { prior, subject } = options;
  const issues = prior === undefined ? [] : priorIssues(prior, options);
  if (hasErrors(issues)) return failure(cutIssues(issues));
  const texts = prior === undefined ? new Map<string, string>() : lastTimeTexts(form.items, prior);
  return success(
    {
      resourceType: 'QuestionnaireResponse',
      questionnaire: `${canonicalOf(form, options)}|${form.protocol.version}`,
      status: 'in-progress',
      ...(subject !== undefined && { subject: { reference: subject } }),
      item: begun(form.items, texts),
    },
    issues,
  );
}

function priorIssues(prior: Exam, { catalogue }: StartingOptions): Issue[] {
  const parsed = parseExam(prior, { ...(catalogue && { catalogue }) });
  const { value, issues } = parsed;
  const isWithdrawn = value?.status === 'cancelled' || value?.status === 'entered-in-error';
  return [
    ...issuesBelow(['prior'], issues),
    ...(isWithdrawn ? [issue('withdrawn-exam', ['prior', 'status'], { reason: 'prior' })] : []),
  ];
}

/** What is there before anybody answers: which form it is, and what was said last time. */
function begun(
  items: readonly FormItem[],
  texts: ReadonlyMap<string, string>,
): r4.QuestionnaireResponseItem[] {
  return items.flatMap(({ linkId, value, items: below = [] }): r4.QuestionnaireResponseItem[] => {
    const text = value ?? texts.get(linkId);
    if (text !== undefined) return [{ linkId, answer: [{ valueString: text }] }];
    const inner = begun(below, texts);
    return inner.length === 0 ? [] : [{ linkId, item: inner }];
  });
}
