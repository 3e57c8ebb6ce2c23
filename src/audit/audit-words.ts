/** The words of the page of an audit. */
export type AuditWords = Readonly<
  Record<
    | 'title'
    | 'caution'
    | 'exams'
    | 'protocols'
    | 'regions'
    | 'reasons'
    | 'findings'
    | 'concerns'
    | 'statuses'
    | 'prompts'
    | 'corrections'
    | 'agreement'
    | 'digits'
    | 'what'
    | 'count'
    | 'required'
    | 'complete'
    | 'partial'
    | 'documented'
    | 'gaps'
    | 'fired'
    | 'open'
    | 'steps'
    | 'sides'
    | 'pairs'
    | 'kappa'
    | 'limits'
    | 'mean'
    | 'between'
    | 'zeroOrFive',
    string
  >
>;
