import type { Change } from '../../checks/compare/comparison.ts';
import type { CheckWords } from '../../checks/words/check-words.ts';
import type { Exam } from '../../model/exam.ts';
import type { Subject } from '../../model/people.ts';
import type { RegionState, Symptom } from '../../model/statement.ts';
import type { DateWords } from '../dates.ts';
import type { ViewName } from '../drawing/view.ts';
import type { Negatives } from './negatives.ts';

/** The words of a page in one language; what the exam says comes from the tables and the exam. */
export interface ReportWords {
  readonly title: string;
  /** What prompts say. */
  readonly checks: CheckWords;
  readonly dates: DateWords;
  readonly patient: string;
  readonly noName: string;
  readonly born: string;
  readonly years: string;
  readonly sex: Readonly<Record<NonNullable<Subject['gender']>, string>>;
  readonly examined: string;
  readonly recorded: string;
  readonly by: string;
  readonly clinic: string;
  readonly why: string;
  readonly question: string;
  readonly background: string;
  readonly protocol: string;
  readonly version: string;
  /** Before the number of a printed page, and between it and the number of pages. */
  readonly pageNumber: { readonly page: string; readonly of: string };
  readonly status: Readonly<Record<Exam['status'], string>>;
  /** The status in a word or two, at the top of every printed page. */
  readonly statusShort: Readonly<Record<Exam['status'], string>>;
  readonly conclusion: string;
  readonly noConclusion: string;
  readonly concern: string;
  /** Between the step of the concern and the number of steps. */
  readonly ofSteps: string;
  readonly worries: string;
  readonly plan: string;
  readonly noPlan: string;
  readonly due: string;
  readonly safetyNet: string;
  readonly returnIf: string;
  readonly reviewBy: string;
  readonly owner: string;
  readonly told: string;
  readonly prompts: string;
  readonly urgentPrompts: string;
  readonly urgent: string;
  readonly missing: string;
  readonly source: string;
  readonly setAside: string;
  readonly map: string;
  readonly mapNote: string;
  readonly views: Readonly<Record<ViewName, string>>;
  /** Heading of what no view shows. */
  readonly wholes: string;
  readonly noPlace: string;
  readonly priorMark: string;
  readonly scaleNote: string;
  readonly legend: string;
  readonly everyRegion: string;
  readonly marks: Readonly<
    Record<'sign' | 'normal' | 'partial' | 'not-examined' | 'said' | 'silent', string>
  >;
  readonly abnormal: string;
  readonly noAbnormal: string;
  /** Before a sign: it is suspected; it was looked for and left open. */
  readonly suspectedAs: string;
  readonly undecidedAs: string;
  /** What became of a region, before its name. */
  readonly states: Readonly<Record<RegionState['state'], string>>;
  /** Before a sign that is not there, where `denials` has no words for it. */
  readonly notFound: string;
  readonly denials: Negatives;
  /** Words for complaints that were asked about and denied. */
  readonly deniedComplaints: Negatives;
  /** Behind a complaint that was denied: that it was asked about. */
  readonly whenAsked: string;
  /** What was answered to a question, before what was asked about. */
  readonly answers: Readonly<Record<Symptom['answer'], string>>;
  /** Names of regions in lines that tell many of them, by code. */
  readonly shortPlaces: Readonly<Record<string, string>>;
  /** A run of the levels of lymph nodes: `levels IB to VB`. */
  readonly levels: { readonly one: string; readonly several: string; readonly to: string };
  readonly undecided: string;
  readonly negatives: string;
  readonly usual: string;
  readonly normal: string;
  readonly notExamined: string;
  readonly allExamined: string;
  readonly takenOver: string;
  readonly takenOverNote: string;
  /** Before what an unconfirmed statement said when it was made. */
  readonly asSeenThen: string;
  readonly gaps: string;
  readonly gapNote: string;
  /** Before a method or test of which nothing was said. */
  readonly gapOf: string;
  readonly noGaps: string;
  readonly unknownProtocol: string;
  readonly outside: string;
  readonly sensation: string;
  readonly tests: string;
  readonly measures: string;
  readonly difference: string;
  readonly scores: string;
  readonly symptoms: string;
  readonly notes: string;
  readonly pictures: string;
  readonly change: string;
  readonly noPrior: string;
  readonly changes: Readonly<Record<Change, string>>;
  /** Where nothing compared is told to have changed. */
  readonly noChange: string;
  /** Before the smallest step that the instrument of a difference can show. */
  readonly readsTo: string;
  readonly before: string;
  readonly days: string;
  readonly withinResolution: string;
  /** Units for which there is a word, by their UCUM code. */
  readonly units: Readonly<Record<string, string>>;
  readonly course: string;
  /** Before figures that are alike in every exam. */
  readonly steady: string;
  /** Heading of what the checks found not to agree. */
  readonly disagree: string;
  readonly circumstances: string;
  readonly instruments: string;
  readonly record: string;
  /** Heading of all that does not stand on the first pages, where it is an appendix. */
  readonly appendix: string;
  readonly columns: Readonly<
    Record<
      | 'what'
      | 'where'
      | 'right'
      | 'left'
      | 'other'
      | 'detail'
      | 'before'
      | 'now'
      | 'change'
      | 'reason'
      | 'todo'
      | 'whom'
      | 'when',
      string
    >
  >;
  /** Heading of what a step changed or took out. */
  readonly corrected: string;
  /** Heading of the prompts that were shown, and of what was judged. */
  readonly warnings: string;
  /** In place of what now stands: the statement was withdrawn, or is new. */
  readonly withdrawn: string;
  readonly notBefore: string;
  readonly carried: string;
  readonly confirmed: string;
  readonly cautionHeading: string;
  readonly cautions: readonly string[];
}

/** The word for a code; the code itself where there is none, such as one that every object inherits. */
export function wordOf<Code extends string>(
  words: Readonly<Record<Code, string>>,
  code: Code,
): string {
  return Object.hasOwn(words, code) ? words[code] : code;
}
