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
  readonly normal: string;
  readonly partial: string;
  readonly notExamined: string;
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
  readonly cautionHeading: string;
  readonly cautions: readonly string[];
}

export const englishWords: ReportWords = {
  title: 'Examination of face and neck',
  patient: 'Patient',
  born: 'born',
  examined: 'Examined',
  recorded: 'Recorded',
  by: 'By',
  protocol: 'Protocol',
  version: 'version',
  status: {
    draft: 'Draft: not released, may be incomplete and wrong',
    preliminary: 'Preliminary: not yet signed as final',
    final: 'Final',
    amended: 'Amended after it was final',
    corrected: 'Corrected after it was final',
    appended: 'Added to after it was final',
    cancelled: 'Cancelled: the examination was not completed',
    'entered-in-error': 'Withdrawn: entered in error, do not use',
  },
  conclusion: 'Conclusion',
  noConclusion: 'No conclusion is stated.',
  concern: 'Concern',
  worries: 'What worries',
  plan: 'Plan',
  due: 'due',
  safetyNet: 'Safety net',
  returnIf: 'Come back if',
  reviewBy: 'Review by',
  told: 'Told',
  prompts: 'Prompts for the clinician',
  urgent: 'Urgent',
  missing: 'Not known',
  source: 'Source',
  setAside: 'Set aside',
  map: 'Map of face and neck',
  mapNote:
    'Seen from the front: the right side of the patient is on the left of the drawing. Places at the back and inside stand in the table below it.',
  legend: 'Legend',
  everyRegion: 'Every region by side, as a table',
  marks: {
    sign: 'A sign is present',
    normal: 'Examined, no abnormality found',
    partial: 'Examined in part',
    'not-examined': 'Not examined, with a reason',
    said: 'Something was said, the region as a whole was not judged',
    silent: 'Nothing was said: not normal by silence',
  },
  positives: 'Signs present',
  suspected: 'Suspected',
  undecided: 'Looked for and not decided',
  negatives: 'Looked for and not found',
  usual: 'Usual appearances stated',
  normal: 'Examined, no abnormality found',
  partial: 'Examined in part',
  notExamined: 'Not examined',
  gaps: 'What the protocol asks for and nothing was said about',
  gapNote: 'This is silence, not normality.',
  noGaps: 'Something was said about everything that the protocol asks for.',
  unknownProtocol: 'The protocol is not known here, so what is missing can not be told.',
  outside: 'Not part of this examination',
  sensation: 'Sensation',
  compared: 'compared',
  tests: 'Movement and function',
  measures: 'Measurements',
  difference: 'Right less left',
  scores: 'Scales, as given by the examiner',
  symptoms: 'What the patient told',
  notes: "The examiner's notes",
  pictures: 'Pictures',
  change: 'Change since the last examination',
  noPrior: 'No earlier examination was given to compare with.',
  changes: {
    new: 'New',
    gone: 'Gone',
    changed: 'Changed',
    unchanged: 'Unchanged by measurement',
    same: 'Stated alike, not measured',
    'not-comparable': 'Not comparable',
  },
  days: 'days',
  circumstances: 'Circumstances',
  instruments: 'Instruments',
  record: 'Life of the record',
  columns: {
    what: 'What',
    where: 'Where',
    right: 'Right',
    left: 'Left',
    other: 'No side',
    detail: 'Details',
    result: 'Result',
    answer: 'Answer',
    before: 'Before',
    now: 'Now',
    change: 'Change',
    step: 'Step',
    when: 'When',
    who: 'Who',
    why: 'Why',
    reason: 'Reason',
  },
  carried: 'carried over from',
  cautionHeading: 'Cautions',
  cautions: [
    'This page supports a licensed clinician and replaces no judgement and no local rule.',
    'What is not named here was not spoken of. Silence is not a normal finding.',
    'Right and left are always those of the patient.',
  ],
};
