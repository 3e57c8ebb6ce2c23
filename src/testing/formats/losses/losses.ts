import type { StatementKind } from '../../../model/statement.ts';
import type { LegacyFormatName } from '../format.ts';

/** What an exam loses, or says in another way, when it goes through a format and its mapping. */
export interface Loss {
  readonly id: string;
  readonly formats: readonly LegacyFormatName[];
  /** What does not arrive as it was. */
  readonly what: string;
  readonly why: string;
  /** Properties that are left out; losses without are changes of another kind. */
  readonly leavesOut?: { readonly of: LossPlace; readonly properties: readonly string[] };
}

/** Parts of an exam that lose properties. `statement` is every kind; `reason` stands in many. */
export type LossPlace =
  | 'exam'
  | 'indication'
  | 'conclusion'
  | 'name'
  | 'identifier'
  | 'statement'
  | 'reason'
  | StatementKind;

const all = ['csv', 'hl7v2', 'xml', 'cda'] as const;

const oneForAll = 'a mapping states this once for a whole export';
const noField = 'a mapping has no field for it';
const noTarget = 'no field or item can mean it';

/** Every loss of the built-in formats. The test of the format circle fails where this is not all. */
export const formatLosses: readonly Loss[] = [
  {
    id: 'exam-id',
    formats: all,
    what: 'the id of the exam has the prefix of the mapping before it',
    why: 'ids of two exporting systems must never meet',
  },
  {
    id: 'organization-and-encounter',
    formats: all,
    what: 'the organisation and the visit are left out',
    why: oneForAll,
    leavesOut: { of: 'exam', properties: ['organization', 'encounter'] },
  },
  {
    id: 'protocol',
    formats: all,
    what: 'the protocol is that of the mapping',
    why: oneForAll,
  },
  {
    id: 'other-examiners',
    formats: all,
    what: 'only the first examiner arrives, with one number and the name as one text',
    why: 'a mapping reads one examiner, by number and name',
  },
  {
    id: 'statement-examiner',
    formats: all,
    what: 'who made a single statement is left out',
    why: 'a mapping reads one examiner, by number and name',
    leavesOut: { of: 'statement', properties: ['examiner'] },
  },
  {
    id: 'circumstances',
    formats: all,
    what: 'consents, instruments, prompts, judgements and the history of the record are left out',
    why: noField,
    leavesOut: {
      of: 'exam',
      properties: ['consents', 'instruments', 'prompts', 'judgements', 'history'],
    },
  },
  {
    id: 'instruments-used',
    formats: all,
    what: 'the instruments of a statement are left out',
    why: noField,
    leavesOut: { of: 'statement', properties: ['instruments'] },
  },
  {
    id: 'indication-details',
    formats: all,
    what: 'of the indication only its text arrives',
    why: 'a mapping reads the indication as one text',
    leavesOut: { of: 'indication', properties: ['visit', 'urgency', 'question', 'background'] },
  },
  {
    id: 'conclusion-details',
    formats: all,
    what: 'of the conclusion the text and the level of concern arrive',
    why: 'a mapping reads these two; plans are kept by an export in other places than exams',
    leavesOut: {
      of: 'conclusion',
      properties: ['worries', 'codings', 'basedOn', 'plan', 'safetyNet', 'told'],
    },
  },
  {
    id: 'head-space',
    formats: ['csv', 'hl7v2', 'xml'],
    what: 'white space around texts of the head is left out',
    why: 'fixed-width exports fill their fields with spaces',
  },
  {
    id: 'other-numbers',
    formats: all,
    what: 'numbers of the worker of other systems, and other references, are left out',
    why: 'a mapping names the system of each number that it reads',
  },
  {
    id: 'identifier-use',
    formats: all,
    what: 'the use of a number is left out',
    why: noField,
    leavesOut: { of: 'identifier', properties: ['use'] },
  },
  {
    id: 'name-prefix',
    formats: all,
    what: 'the prefix of the name of the worker is left out',
    why: noField,
    leavesOut: { of: 'name', properties: ['prefix'] },
  },
  {
    id: 'given-names',
    formats: all,
    what: 'several given names arrive as one',
    why: 'a mapping reads the given names from one field',
  },
  {
    id: 'name-text-v2',
    formats: ['hl7v2'],
    what: 'the name as one text is left out',
    why: 'the data type XPN has only the parts of a name',
    leavesOut: { of: 'name', properties: ['text'] },
  },
  {
    id: 'name-text-cda',
    formats: ['cda'],
    what: 'the name as one text is left out where its parts are given',
    why: 'a name element holds parts or one text',
  },
  {
    id: 'second-number-cda',
    formats: ['cda'],
    what: 'the second number of the worker is left out',
    why: 'the ids of a patientRole have one path, and only their roots tell them apart',
  },
  {
    id: 'gender-cda',
    formats: ['cda'],
    what: 'the gender unknown is left out',
    why: 'the code system has no code for it, and a nullFlavor is no code',
  },
  {
    id: 'zone',
    formats: ['hl7v2', 'cda'],
    what: 'the zone Z arrives as +00:00',
    why: 'times of these formats have offsets only',
  },
  {
    id: 'line-ends',
    formats: ['hl7v2'],
    what: 'line ends of other kinds arrive as line feeds',
    why: 'the format has one line break, and a carriage return ends a segment',
  },
  {
    id: 'space-cda',
    formats: ['cda'],
    what: 'white space around texts is left out',
    why: 'documents are indented, so that space around the text of an element means nothing',
  },
  {
    id: 'condition-regions',
    formats: all,
    what: 'a condition of several regions arrives as one condition for each',
    why: 'an item is about one region',
  },
  {
    id: 'condition-value',
    formats: all,
    what: 'a condition that has a list of values and is stated without one is left out',
    why: 'an item states a condition by one of its values',
  },
  {
    id: 'images',
    formats: all,
    what: 'pictures are left out',
    why: noTarget,
  },
  {
    id: 'exceptions',
    formats: all,
    what: 'what is said of a group of regions with exceptions is left out',
    why: 'an item has no field for exceptions, and without them it would say more than was examined',
  },
  {
    id: 'unconfirmed',
    formats: all,
    what: 'what was taken over from an earlier exam and not looked at again is left out',
    why: 'an item has no field for it, and without one it would say that it was examined now',
  },
  {
    id: 'about',
    formats: all,
    what: 'a reference to what was measured arrives only where that is a finding that is present and arrives',
    why: 'an item names the finding by its group',
  },
  {
    id: 'codings-and-origin',
    formats: all,
    what: 'codes of other systems, and that a statement was taken over and looked at again, are left out',
    why: noField,
    leavesOut: { of: 'statement', properties: ['codings', 'carried'] },
  },
  {
    id: 'place',
    formats: all,
    what: 'the place within a region is left out',
    why: noField,
    leavesOut: { of: 'statement', properties: ['place'] },
  },
  {
    id: 'tracking',
    formats: all,
    what: 'the identity of a lesion over the years is left out',
    why: noField,
    leavesOut: { of: 'finding', properties: ['tracking'] },
  },
  {
    id: 'reason-text',
    formats: all,
    what: 'the words beside the code of a reason are left out',
    why: 'a reason is the meaning of a word, which is the same in every exam',
    leavesOut: { of: 'reason', properties: ['text'] },
  },
  {
    id: 'eyes-closed',
    formats: all,
    what: 'that the eyes were closed is left out',
    why: noTarget,
    leavesOut: { of: 'sensation', properties: ['eyesClosed'] },
  },
  {
    id: 'synkinesis',
    formats: all,
    what: 'synkinesis is left out',
    why: noTarget,
    leavesOut: { of: 'movement', properties: ['synkinesis'] },
  },
  {
    id: 'unable',
    formats: all,
    what: 'what the patient was unable to do arrives as not tested, with its reason',
    why: 'a word for no result says the reason only',
  },
  {
    id: 'readings',
    formats: all,
    what: 'single readings, how the value came from them, and that it was estimated are left out',
    why: noField,
    leavesOut: { of: 'measurement', properties: ['readings', 'convention', 'estimated'] },
  },
  {
    id: 'unusable-unit',
    formats: all,
    what: 'a measurement without a value has the usual unit of the measure',
    why: 'the unit stands beside a number',
  },
  {
    id: 'methods-csv',
    formats: ['csv'],
    what: 'only the first method and the first condition of a measurement arrive',
    why: 'a cell holds one word',
  },
  {
    id: 'scale-items',
    formats: all,
    what: 'the items of a score are left out',
    why: noTarget,
    leavesOut: { of: 'scale-score', properties: ['items'] },
  },
  {
    id: 'symptom-details',
    formats: all,
    what: 'of a symptom the answer, who gave it, the place and the note arrive',
    why: noTarget,
    leavesOut: {
      of: 'symptom',
      properties: ['onset', 'durationText', 'duration', 'course', 'severity', 'trigger'],
    },
  },
];
