/**
 * What a row says in one word. `present`, `suspected`, `absent` and `undecided` are of signs and
 * complaints; `normal`, `abnormal`, `partly-examined`, `not-examined` and `not-applicable` of regions,
 * points and tests; `value` and `no-value` of figures and scores; `unknown` of what was asked and not
 * answered; `not-asked` of a question left out; `kept` of words and pictures, from which nothing is taken.
 */
export type FlatState =
  | 'present'
  | 'suspected'
  | 'absent'
  | 'undecided'
  | 'normal'
  | 'abnormal'
  | 'partly-examined'
  | 'not-examined'
  | 'not-applicable'
  | 'value'
  | 'no-value'
  | 'unknown'
  | 'not-asked'
  | 'kept';

/** The columns of a row, in their order: name, and what stands in it. */
const table = {
  exam: 'id of the exam',
  version: 'version of the record; empty before the first step of its life',
  status: 'status of the record: count no row of an exam that is entered in error or cancelled',
  patient: 'the reference to the patient, or the first identifier as system|value',
  date: 'when the exam was performed, with the precision as stated',
  protocol: 'protocol and its version, as id|version',
  statement: 'key of the statement within the exam',
  part: 'the modality, where a statement has a result for each; with exam and statement it makes a row unique',
  kind: 'kind of the statement',
  section: 'part of the body under which it is told',
  region: 'code of the region, without its side',
  region_display: 'name of the region',
  side: 'side of the patient',
  place: 'where within the region, in the words of the examiner',
  table: 'table in which the code stands',
  code: 'code of the sign, region, point, test, measure, scale or complaint',
  display: 'name of that code',
  state: 'what is said of it, in one word',
  said: 'states, denies, open, or none: whether the thing is there. Only states says so',
  usual: 'yes, where what is stated is the usual appearance and no abnormality',
  answer: 'code of the result, grade, score or answer',
  answer_display: 'name of that code',
  value: 'decimal, with the digits as stated',
  comparator: '< and the like, where the value is only a bound',
  unit: 'UCUM code of the value and the readings',
  readings: 'every reading, in order',
  methods: 'codes of the methods used',
  reason: 'code of the reason why there is no answer, or only a part of one',
  reason_text: 'the reason in the words of the examiner',
  attributes: 'attributes of a sign, items of a score and conditions of a figure, as name=value',
  except: 'places below the region of which it is not said',
  tracking: 'identity of a lesion over exams',
  about: 'keys of the statements that it is about',
  seen: 'when it was seen, where that is not the time of the exam',
  examiner: 'key of the examiner',
  instruments: 'keys of the instruments',
  carried:
    'confirmed or unconfirmed, where it was taken over from an earlier exam; unconfirmed is not known today',
  note: 'the words of the examiner',
} as const;

export type FlatColumn = keyof typeof table;

/** One statement, or one result of a statement that has several, as one row of texts; an empty text is no value. */
export type FlatRow = { readonly [Name in FlatColumn]: string } & { readonly state: FlatState };

/** Each column and what stands in it, in the order of the table. */
export const flatColumns: Readonly<Record<FlatColumn, string>> = table;

/** Names of the columns, in their order. */
export const flatColumnNames = /*@__PURE__*/ Object.keys(table) as FlatColumn[]; // keys of a literal

/** Columns that hold somebody's words. */
export const wordColumns: readonly FlatColumn[] = ['place', 'reason_text', 'note'];
