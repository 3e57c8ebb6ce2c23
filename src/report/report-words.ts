/** The words of a page in one language; what the exam says comes from the tables and the exam. */
export interface ReportWords {
  readonly title: string;
  readonly patient: string;
  readonly born: string;
  readonly examined: string;
  readonly recorded: string;
  readonly by: string;
  readonly protocol: string;
  readonly version: string;
  readonly status: Readonly<Record<string, string>>;
  readonly conclusion: string;
  readonly noConclusion: string;
  readonly concern: string;
  readonly worries: string;
  readonly plan: string;
  readonly due: string;
  readonly safetyNet: string;
  readonly returnIf: string;
  readonly reviewBy: string;
  readonly told: string;
  readonly prompts: string;
  readonly urgent: string;
  readonly missing: string;
  readonly source: string;
  readonly setAside: string;
  readonly map: string;
  readonly mapNote: string;
  readonly legend: string;
  readonly everyRegion: string;
  readonly marks: Readonly<
    Record<'sign' | 'normal' | 'partial' | 'not-examined' | 'said' | 'silent', string>
  >;
  readonly positives: string;
  readonly suspected: string;
  readonly undecided: string;
  readonly negatives: string;
  readonly usual: string;
  readonly abnormal: string;
  readonly normal: string;
  readonly partial: string;
  readonly notExamined: string;
  readonly takenOver: string;
  readonly takenOverNote: string;
  readonly gaps: string;
  readonly gapNote: string;
  readonly noGaps: string;
  readonly unknownProtocol: string;
  readonly outside: string;
  readonly sensation: string;
  readonly compared: string;
  readonly tests: string;
  readonly measures: string;
  readonly difference: string;
  readonly scores: string;
  readonly symptoms: string;
  readonly notes: string;
  readonly pictures: string;
  readonly change: string;
  readonly noPrior: string;
  readonly changes: Readonly<Record<string, string>>;
  readonly days: string;
  readonly circumstances: string;
  readonly instruments: string;
  readonly record: string;
  readonly columns: Readonly<
    Record<
      | 'what'
      | 'where'
      | 'right'
      | 'left'
      | 'other'
      | 'detail'
      | 'result'
      | 'answer'
      | 'before'
      | 'now'
      | 'change'
      | 'step'
      | 'when'
      | 'who'
      | 'why'
      | 'reason',
      string
    >
  >;
  readonly carried: string;
  /** Heading of what a step changed or took out. */
  readonly corrected: string;
  /** In place of what now stands: the statement was withdrawn, or is new. */
  readonly withdrawn: string;
  readonly notBefore: string;
  readonly cautionHeading: string;
  readonly cautions: readonly string[];
}
