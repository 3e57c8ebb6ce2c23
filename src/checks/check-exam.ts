import { append } from '../data/append.ts';
import { within } from '../issues/budget.ts';
import { type Issue, issue, issuesBelow } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import type { Exam } from '../model/exam.ts';
import type { Key } from '../model/primitive.ts';
import type { JudgementMade } from '../model/prompts.ts';
import { structureIssues } from '../model/schema-issues.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import type { Lean, Protocol } from '../terminology/types.ts';
import { compareExams } from './compare/compare-exams.ts';
import type { Comparison } from './compare/comparison.ts';
import { priorIssues } from './compare/usable-prior.ts';
import type { CheckContext } from './context.ts';
import { type Coverage, coverageGaps, coverExam } from './coverage/coverage.ts';
import { indexExam, listIn } from './exam-index.ts';
import { dismissalIssues, openPrompts, type Prompt, promptsOf } from './prompts/shown-prompts.ts';
import type { Rule, RuleResult } from './rule.ts';
import { rules } from './rules.ts';
import { runRules } from './run-rules.ts';
import type { CheckOptions, CheckSettings, Judgement } from './settings/check-settings.ts';
import { settingStructureIssues } from './settings/parse-settings.ts';
import { optionIssues, usableOptions } from './settings/setting-issues.ts';
import { type Limit, resolveLimit, type ThresholdId } from './settings/thresholds.ts';
import { englishChecks } from './words/english.ts';

/** Everything that the checks found; the exam itself is as it was. */
export interface CheckResult {
  /** Left out where the protocol is not known. */
  readonly coverage?: Coverage;
  /** What every rule concluded on everything it is about, in the order of the rules. */
  readonly results: readonly RuleResult[];
  /**
   * The prompts that fire, most urgent first, those that were set aside last. Empty without a chosen
   * rule set.
   */
  readonly prompts: readonly Prompt[];
  /** Against the prior exam; empty where there is none or it cannot be compared with. */
  readonly comparisons: readonly Comparison[];
  /**
   * Prompts that cannot be told although the exam states a part of what they are about: what is
   * worth asking or looking for now, most urgent first.
   */
  readonly openPrompts: readonly RuleResult[];
  /** The results that lack an input: no conclusion, and no negative. */
  readonly notEvaluable: readonly RuleResult[];
  /** What the consistency rules found, and what is wrong with the prior exam or the options. */
  readonly issues: readonly Issue[];
}

/**
 * Checks an exam: coverage of its protocol, consistency, computed values, change since the prior
 * exam, and prompts. Nothing in the exam is changed. No prompt is made unless `ruleSets` names a
 * rule set.
 *
 * @param exam An exam that `parseExam` accepts. One that only has the right structure gives results
 *   that may lack inputs.
 * @param options Protocol, limits, rule sets and the prior exam; see {@link CheckOptions}.
 * @returns Everything found, with the rules that could not be evaluated and why. Where `exam` does
 *   not have the structure of an exam, `issues` alone.
 * @example
 * const { prompts, comparisons } = checkExam(exam, { prior: before, ruleSets: ['horner-signs'] });
 * @see `src/checks/RULES.md` for every rule, its source and its evidence
 */
export function checkExam(exam: Exam, options: CheckOptions = {}): CheckResult {
  return within(
    'exam',
    options.budget,
    () => checked(exam, options),
    (why) => ({ ...nothingFound, issues: [endedIssue(why)] }),
  );
}

function checked(exam: Exam, options: CheckOptions): CheckResult {
  const misshapen = [
    ...structureIssues(exam),
    ...settingStructureIssues(options),
    ...(options.prior === undefined ? [] : issuesBelow(['prior'], structureIssues(options.prior))),
  ];
  if (misshapen.length > 0) return { ...nothingFound, issues: cutIssues(misshapen) };
  const catalogue = options.catalogue ?? builtInCatalogue;
  const usable = usableOptions(options);
  const issues: Issue[] = [...optionIssues(options, exam)];
  const index = indexExam(exam);
  const covered = coverageOf(exam, options, catalogue);
  append(issues, covered.issues);
  const limits = limitsOf(usable);
  const prior = priorOf(exam, options, issues);
  const comparisons =
    prior === undefined
      ? []
      : compareExams({ exam, index }, prior, catalogue, limits('skin-change'));
  const context: CheckContext = {
    exam,
    index,
    catalogue,
    words: options.words ?? englishChecks,
    features: featuresOf(catalogue),
    coverage: covered.coverage,
    prior,
    comparisons,
    limit: limits,
    judgements: judgementsOf(exam, options),
    settings: {
      sideDifferences: usable.sideDifferences ?? {},
      populations: options.populations,
      memoryValues: options.memoryValues ?? false,
      negatives: options.negatives,
      now: options.now,
    },
  };
  const ran = runRules(context, chosen(options.ruleSets ?? []));
  append(issues, ran.issues);
  const dismissals = options.dismissals ?? [];
  const prompts = promptsOf(context, ran.results, dismissals);
  append(issues, dismissalIssues(prompts, dismissals));
  return {
    ...(covered.coverage !== undefined && { coverage: covered.coverage }),
    results: ran.results,
    prompts,
    openPrompts: openPrompts(context, ran.results),
    comparisons,
    notEvaluable: ran.results.filter((one) => one.outcome === 'not-evaluable'),
    issues,
  };
}

const nothingFound = {
  results: [],
  prompts: [],
  openPrompts: [],
  comparisons: [],
  notEvaluable: [],
} as const;

/** The rules that run: a prompt only where its rule set was chosen. */
function chosen(sets: readonly string[]): readonly Rule[] {
  return rules.filter((rule) => rule.kind !== 'prompt' || sets.includes(rule.ruleSet));
}

function coverageOf(
  exam: Exam,
  options: CheckOptions,
  catalogue: Catalogue,
): { readonly coverage?: Coverage; readonly issues: readonly Issue[] } {
  const protocol = options.protocol ?? catalogue.protocols.get(exam.protocol.id);
  if (protocol === undefined) {
    const unknown = issue(
      'unknown-protocol',
      ['protocol', 'id'],
      { reason: 'coverage' },
      { severity: 'warning', rule: 'R01' },
    );
    return { issues: [unknown] };
  }
  const { coverage, issues } = coverExam(exam, protocol, catalogue);
  return {
    coverage,
    issues: [
      ...issuesBelow(['options'], issues),
      ...versionIssues(exam, protocol),
      ...gapIssues(coverage),
    ],
  };
}

function versionIssues(exam: Exam, protocol: Lean<Protocol>): readonly Issue[] {
  if (exam.protocol.id === protocol.code && exam.protocol.version === protocol.version) return [];
  return [
    issue(
      'unknown-protocol',
      ['protocol'],
      { reason: 'other', code: protocol.code, version: protocol.version },
      { severity: 'information', rule: 'R01' },
    ),
  ];
}

function gapIssues(coverage: Coverage): readonly Issue[] {
  const gaps = coverageGaps(coverage).length;
  if (gaps === 0) return [];
  return [
    issue(
      'coverage-gap',
      ['statements'],
      { reason: 'silent', count: gaps, total: coverage.items.length },
      { severity: 'information', rule: 'R01' },
    ),
  ];
}

function limitsOf(options: CheckOptions): (id: ThresholdId) => Limit | undefined {
  const resolved = new Map<ThresholdId, Limit | undefined>();
  return (id) => {
    if (!resolved.has(id)) {
      resolved.set(id, resolveLimit(id, options.thresholds ?? {}, options.memoryValues ?? false));
    }
    return resolved.get(id);
  };
}

function priorOf(exam: Exam, options: CheckOptions, issues: Issue[]): CheckContext['prior'] {
  const { prior } = options;
  if (prior === undefined) return undefined;
  const found = priorIssues(exam, prior, options.samePatient === 'assumed');
  append(issues, found);
  return found.length > 0 ? undefined : { exam: prior, index: indexExam(prior) };
}

function featuresOf(catalogue: Catalogue): ReadonlyMap<string, readonly string[]> {
  const features = new Map<string, string[]>();
  for (const { code, feature } of catalogue.findings.values()) {
    if (feature !== undefined) listIn(features, feature).push(code);
  }
  return features;
}

/** What was judged of each statement, in the record and then in the settings, which are newer. */
function judgementsOf(exam: Exam, options: CheckSettings): ReadonlyMap<Key, Judgement> {
  const found = new Map<Key, Judgement>();
  for (const { statement, judgement } of exam.judgements ?? []) {
    found.set(statement, { ...found.get(statement), statement, ...meaningOf[judgement] });
  }
  for (const one of options.judgements ?? []) {
    found.set(one.statement, { ...found.get(one.statement), ...one });
  }
  return found;
}

const meaningOf: Readonly<Record<JudgementMade['judgement'], Omit<Judgement, 'statement'>>> = {
  unexplained: { unexplained: true },
  explained: { unexplained: false },
  persistent: { persistent: true },
  'not-persistent': { persistent: false },
  infectious: { infectious: true },
  'not-infectious': { infectious: false },
};
