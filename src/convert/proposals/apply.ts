import { append } from '../../data/append.ts';
import { plainDataIssues } from '../../data/plain-data.ts';
import { type BudgetOption, within } from '../../issues/budget.ts';
import { failure, hasErrors, type Issue, type Outcome, success } from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import { isNote } from '../../kinds/note/convert.ts';
import type { Exam } from '../../model/exam.ts';
import { appendExam, releaseExam } from '../../model/life/steps.ts';
import { parseExam } from '../../model/parse-exam.ts';
import type { Examiner } from '../../model/people.ts';
import type { Finding } from '../../model/statement.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { issue } from '../issue.ts';
import { keyGiver, subjectKey } from '../record/statement-key.ts';
import { proposalIssues } from './form.ts';
import type { Confirmation, Proposal, ProposedFinding } from './proposal.ts';

/** How confirmed proposals are taken into an exam. */
export interface ConfirmOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take. */
  readonly budget?: BudgetOption;
}

/**
 * Takes the proposals that a person has confirmed into their exam, as findings with the sentence as their
 * note. Who confirmed them and when stands in the history of the exam, with the keys of the statements; what
 * stood in it before stays as it was. What is not confirmed changes nothing.
 *
 * @param exam The exam of which the proposals were made.
 * @param proposals Proposals, confirmed or not; those of other exams are passed over.
 * @param options The catalogue; see {@link ConfirmOptions}.
 * @returns The exam with the statements; the exam as it was where none is confirmed. It fails where a
 *   confirmed proposal leaves something open, its sentence no longer stands where it stood, or the exam
 *   can not take the statement.
 * @example
 * const proposals = orThrow('propose', proposeFindings(exam));
 * const confirmed = { by: 'Nell Berth', at: '2025-09-02T09:00:00+02:00' };
 * const sure = proposals.filter(({ open }) => open.length === 0);
 * confirmFindings(exam, sure.map((proposal) => ({ ...proposal, confirmed })));
 */
export function confirmFindings(
  exam: Exam,
  proposals: readonly Proposal[],
  options: ConfirmOptions = {},
): Outcome<Exam> {
  return within(
    'exam',
    options.budget,
    () => withConfirmed(exam, proposals, options.catalogue ?? builtInCatalogue),
    (why) => failure([endedIssue(why)]),
  );
}

type Confirmed = Proposal & { readonly confirmed: Confirmation };

function withConfirmed(
  given: Exam,
  proposals: readonly Proposal[],
  catalogue: Catalogue,
): Outcome<Exam> {
  const parsed = parseExam(given, { catalogue });
  if (parsed.value === undefined) return parsed;
  const unfit = plainDataIssues(proposals);
  if (unfit.length > 0) return failure(cutIssues(unfit));
  const exam = parsed.value;
  const mine: Confirmed[] = [];
  const issues: Issue[] = [];
  proposals.forEach((one, at) => {
    if (one?.exam !== exam.id || one.confirmed === undefined) return;
    const found = [...proposalIssues(one, [at]), ...staleIssues(one, at, exam)];
    append(issues, found);
    if (found.length === 0) mine.push(one as Confirmed); // its confirmation is there
  });
  if (hasErrors(issues)) return failure(cutIssues(issues));
  if (mine.length === 0) return success(given);
  let changed = exam;
  for (const [confirmation, group] of byConfirmation(mine)) {
    const outcome = added(changed, confirmation, group, catalogue);
    if (outcome.value === undefined) return outcome;
    changed = outcome.value;
  }
  return success(changed);
}

/** The sentence must stand where it was found: another text may say something else there. */
function staleIssues({ note, start, end, text }: Proposal, at: number, exam: Exam): Issue[] {
  const statement = exam.statements.find(({ key }) => key === note);
  const isThere = isNote(statement) && statement.text.slice(start, end) === text;
  return isThere ? [] : [issue('unresolved-key', [at, 'note'], { reason: 'proposal' })];
}

/** Groups of one person and moment, the earliest first. */
function byConfirmation(
  proposals: readonly Confirmed[],
): readonly (readonly [Confirmation, readonly Confirmed[]])[] {
  const groups = new Map<string, [Confirmation, Confirmed[]]>();
  for (const one of proposals) {
    const { by, at } = one.confirmed;
    const key = JSON.stringify([by, at]);
    const group = groups.get(key) ?? [one.confirmed, []];
    groups.set(key, group);
    group[1].push(one);
  }
  return [...groups.values()].sort(([one], [other]) => Date.parse(one.at) - Date.parse(other.at));
}

function added(
  exam: Exam,
  { by, at }: Confirmation,
  proposals: readonly Confirmed[],
  catalogue: Catalogue,
): Outcome<Exam> {
  const step = {
    by: personOf(exam, by),
    at,
    reason: 'Confirmed as coded statements of what the notes say',
    changes: { statements: findingsOf(exam, proposals) },
  };
  const isIssued = exam.status !== 'draft' && exam.status !== 'preliminary';
  return isIssued ? appendExam(exam, step, { catalogue }) : releaseExam(exam, step, { catalogue });
}

/** Findings with keys that the exam does not have; the same said twice is one, with both sentences. */
function findingsOf(exam: Exam, proposals: readonly Confirmed[]): Finding[] {
  const keyOf = keyGiver();
  for (const { key } of exam.statements) keyOf(key);
  const findings = new Map<string, { statement: ProposedFinding; texts: string[] }>();
  for (const { statement, text } of proposals) {
    const same = JSON.stringify(statement);
    const known = findings.get(same) ?? { statement, texts: [] };
    findings.set(same, known);
    if (!known.texts.includes(text)) known.texts.push(text);
  }
  return [...findings.values()].map(({ statement, texts }): Finding => {
    // All but the side is there, or `proposalIssues` has told; the side is held to its place by the exam.
    const unkeyed = { ...statement, note: texts.join('\n') } as Omit<Finding, 'key'>;
    return { ...unkeyed, key: keyOf(subjectKey(unkeyed)) };
  });
}

/** An examiner of the exam by name, or one who joins it. */
function personOf(exam: Exam, by: string): string | Examiner {
  const known = exam.examiners.find(({ name }) => name?.text === by);
  if (known !== undefined) return known.key;
  const keys = new Set<string>(exam.examiners.map(({ key }) => key));
  let count = 1;
  while (keys.has(`confirmer-${count}`)) count += 1;
  return { key: `confirmer-${count}`, name: { text: by }, role: 'confirmed coded statements' };
}
