import { isPlainObject, plainDataIssues } from '../data/plain-data.ts';
import { within } from '../issues/budget.ts';
import { failure, hasErrors, type Issue, issue, type Outcome, success } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { withShownPaths } from '../issues/shown-path.ts';
import type { ExamDraft, ExamStart } from '../model/builder/draft.ts';
import { finishExam } from '../model/builder/finish-exam.ts';
import { toFormDescription } from './describe.ts';
import type { FormDescription } from './form.ts';
import { changedForm } from './read/changed-form.ts';
import { collect, refuseModifiers } from './read/collect.ts';
import { newReading, type Reading } from './read/reading.ts';
import { atAnswer, draftOf } from './read/said-draft.ts';
import { takeAnswers } from './read/take.ts';
import { checkForm, checkSubject } from './read/which-form.ts';
import { canonicalOf, type QuestionnaireOptions } from './to-questionnaire.ts';

/** How a response is read: as its form was made, and what the answers do not say. */
export interface ResponseOptions extends QuestionnaireOptions {
  /** Which form it is; other options of the form are those that it was made with. */
  readonly protocol: string;
  /** Who was examined by whom, when: what `startExam` takes besides the protocol. */
  readonly exam: Omit<ExamStart, 'protocol'>;
  /** The Questionnaire that was filled in, where a clinic could have changed it. */
  readonly questionnaire?: unknown;
  /**
   * What a question means that the form needs an answer to and that has none: `tell` (default) gives a
   * warning, since a form may be half filled in; `refuse` an error. Where the answers beside it cannot
   * stand without it, it is always an error.
   */
  readonly unanswered?: 'tell' | 'refuse';
  /** Put the offending value into `received`. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
}

/**
 * Reads the answers of a form that `toQuestionnaire` made, whatever rendered it. What the renderer
 * says of the form is not relied on: whether an item is asked, what needs an answer and which figures
 * fit is worked out again, `status` says nothing but that the answers were withdrawn, and displays,
 * translations and metadata are passed over. What was not answered is not stated.
 *
 * @param response The QuestionnaireResponse as plain data, of R4, R4B or R5; figures keep their
 *   precision where it was parsed with `fromJson`.
 * @param options The protocol and the options that the form was made with, and the head of the exam;
 *   see {@link ResponseOptions}.
 * @returns A draft, to be finished by `finishExam`. It fails where anything cannot be taken as it
 *   stands. The path of an issue is the linkId of the item; one that begins with `exam` is about the
 *   head of the exam. An answer to something that the other answers leave unasked is a warning.
 * @example
 * const outcome = fromQuestionnaireResponse(resource, {
 *   protocol: 'droopy-lid',
 *   exam: {
 *     id: 'quay-18', subject: { reference: 'Patient/417' }, examiners: [{ key: 'nurse' }],
 *     performed: { start: '2025-05-06T08:00:00Z' }, recorded: '2025-05-06T08:20:00Z',
 *   },
 * });
 * if (!outcome.ok) console.log(outcome.issues.map(issueText).join('\n'));
 * @see https://hl7.org/fhir/R4/questionnaireresponse.html
 */
export function fromQuestionnaireResponse(
  response: unknown,
  options: ResponseOptions,
): Outcome<ExamDraft> {
  return within(
    'resource',
    options.budget,
    () => {
      const described = toFormDescription(options.protocol, options);
      return described.ok ? read(response, described.value, options) : described;
    },
    (why) => failure([endedIssue(why)]),
  );
}

function read(
  response: unknown,
  form: FormDescription,
  options: ResponseOptions,
): Outcome<ExamDraft> {
  const reading = newReading(options.includeValues ?? false);
  const unsafe = plainDataIssues(response);
  if (unsafe.length > 0) return failure(withShownPaths(cutIssues(unsafe), response));
  if (!isPlainObject(response) || response['resourceType'] !== 'QuestionnaireResponse') {
    reading.report('wrong-type', ['resourceType'], { reason: 'not-a-response' });
    return failure(reading.all());
  }
  if (response['status'] === 'entered-in-error') {
    reading.report('withdrawn-exam', ['status'], { reason: 'form' });
  }
  refuseModifiers(reading, response, ['modifierExtension']);
  if (response['implicitRules'] !== undefined) {
    reading.report('not-understood', ['implicitRules'], { reason: 'form' });
  }
  if (!isPlainObject(options.exam)) {
    return failure([issue('wrong-type', ['exam'], { reason: 'not-an-object' })]);
  }
  const given = givenForm(reading, form, options);
  const filled = collect({ reading, own: given.own }, form.items, response['item'], []);
  checkForm(reading, response, filled, { form, canonical: given.canonical });
  checkSubject(reading, response, options.exam.subject);
  const { said, lacking } = takeAnswers(reading, form.items, filled);
  const { unanswered = 'tell' } = options;
  for (const { path, isNeeded } of lacking) {
    const isError = isNeeded || unanswered === 'refuse';
    reading.tell(isError ? 'error' : 'warning')('missing-property', path, { reason: 'answer' });
  }
  const told = reading.all();
  if (hasErrors(told)) return failure(cutIssues(told));
  const made = draftOf({ ...options.exam, protocol: form.protocol }, said);
  const { catalogue, includeValues } = options;
  const checked = finishExam(made.draft, 'draft', {
    ...(catalogue && { catalogue }),
    ...(includeValues !== undefined && { includeValues }),
  });
  const issues: readonly Issue[] = cutIssues([
    ...told,
    ...checked.issues.map((found) => atAnswer(made, found)),
  ]);
  return checked.ok ? success(made.draft, issues) : failure(issues);
}

/** The canonical URL with version under which the form was filled in, and what a clinic added to it. */
function givenForm(
  reading: Reading,
  form: FormDescription,
  options: ResponseOptions,
): { readonly canonical: string; readonly own: ReadonlySet<string> } {
  const { questionnaire } = options;
  const canonical = `${canonicalOf(form, options)}|${form.protocol.version}`;
  if (questionnaire === undefined) return { canonical, own: new Set() };
  const unsafe = plainDataIssues(questionnaire);
  if (
    unsafe.length > 0 ||
    !isPlainObject(questionnaire) ||
    questionnaire['resourceType'] !== 'Questionnaire'
  ) {
    reading.report('wrong-type', ['questionnaire'], { reason: 'not-a-questionnaire' });
    return { canonical, own: new Set() };
  }
  const { url, version } = questionnaire;
  return {
    canonical:
      typeof url === 'string' && typeof version === 'string' ? `${url}|${version}` : canonical,
    own: changedForm(reading, form, questionnaire),
  };
}
