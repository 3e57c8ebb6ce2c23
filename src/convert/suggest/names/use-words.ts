import { termsOf } from '../../../find/fold.ts';
import type { HeadNames, ItemNames } from './head-names.ts';
import { wordsOf } from './name-parts.ts';

/*
 * What fields are called that have a use besides statements (common practice, no source): English,
 * German, and a few words of Spanish,
 * French and Dutch. Of several the first of a list is the likeliest.
 */

export type HeadUse = keyof HeadNames;
export type ItemUse = keyof Omit<ItemNames, 'kind' | 'display'>;

const numbers = ['id', 'no', 'nr', 'number', 'num', 'nummer', 'numero', 'kennung', 'code'];

/** `exam no`, `exam`, `no exam`, and in one word with the letter that joins: `Untersuchungsnr`. */
function numbered(nouns: readonly string[], bare: readonly string[]): readonly string[] {
  return [
    ...nouns.flatMap((noun) =>
      numbers.flatMap((number) => [
        `${noun} ${number}`,
        ...['', 's', 'n', 'en'].map((joint) => noun + joint + number),
      ]),
    ),
    ...bare,
  ];
}

const visits = ['exam', 'examination', 'visit', 'study', 'check', 'encounter', 'case', 'record'];
const visitsDe = ['untersuchung', 'fall', 'besuch', 'examen', 'onderzoek'];
const people = ['patient', 'worker', 'subject', 'person', 'employee', 'emp', 'staff', 'client'];
const peopleDe = ['mitarbeiter', 'personal', 'pers', 'pat', 'versicherten', 'proband'];

export const headWords: { readonly [Use in HeadUse]-?: readonly string[] } = {
  exam: numbered(
    [...visits, ...visitsDe],
    ['exam', 'visit', 'encounter', ...visitsDe, 'examination', 'check', 'study', 'case', 'visita'],
  ),
  status: ['record status', 'exam status', 'status'],
  subject: [
    ...numbered([...people, ...peopleDe], ['mrn', 'badge']),
    ...['patient', 'worker', 'subject', 'person', 'employee', 'staff', 'client', 'mitarbeiter'],
    'paciente',
  ],
  family: ['family name', 'last name', 'surname', 'familienname', 'nachname', 'zuname'],
  given: ['given name', 'first name', 'forename', 'vorname', 'rufname'],
  born: [
    ...['dob', 'date of birth', 'birth date', 'birthday', 'born'],
    ...['geburtsdatum', 'geb datum', 'geb dat', 'geburtstag', 'geboren am', 'geb'],
  ],
  gender: ['sex', 'gender', 'geschlecht', 'sexo'],
  performed: [
    ...['exam date', 'date of exam', 'date of examination', 'examination date', 'visit date'],
    ...['date of visit', 'check date', 'exam day', 'visit day', 'examined on', 'examined at'],
    ...['performed on', 'performed at', 'seen on', 'exam time', 'examined', 'performed'],
    ...['untersuchungsdatum', 'untersuchungstag', 'untersucht am', 'untersuchung am'],
    ...['datum der untersuchung', 'termin', 'besuchsdatum', 'datum', 'tag'],
    ...['date', 'day', 'when', 'fecha'],
  ],
  recorded: [
    ...['recorded at', 'recorded on', 'recorded', 'entered at', 'entered on', 'entered'],
    ...['written at', 'written on', 'created at', 'created on', 'created', 'record time'],
    ...['erfasst am', 'erfasst', 'eingegeben am', 'dokumentiert am', 'erstellt am'],
  ],
  examiner: [
    ...['examiner', 'examiner name', 'examined by', 'doctor', 'doctor name', 'clinician'],
    ...['physician', 'untersucher', 'untersucht von', 'arzt', 'arztin', 'behandler'],
  ],
};

export const itemWords: { readonly [Use in ItemUse]-?: readonly string[] } = {
  code: [
    ...['item', 'test', 'observation', 'finding', 'parameter'].flatMap((noun) => [
      noun,
      `${noun} code`,
      `${noun} name`,
    ]),
    ...['code', 'merkmal'],
  ],
  value: ['value', 'result', 'answer', 'ergebnis', 'wert', 'befund'],
  side: ['side', 'laterality', 'seite', 'lateralitat'],
  unit: ['unit', 'units', 'uom', 'einheit', 'masseinheit'],
  method: ['method', 'methods', 'methode'],
  note: [
    ...['note', 'notes', 'remark', 'remarks', 'comment', 'comments'],
    ...['kommentar', 'bemerkung', 'bemerkungen', 'anmerkung', 'notiz'],
  ],
};

/** Names of columns of free text. */
export const noteWords: readonly string[] = [
  ...itemWords.note,
  ...[
    'free text',
    'freetext',
    'freitext',
    'notizen',
    'anmerkungen',
    'observaciones',
    'remarque',
    'remarques',
    'opmerking',
  ],
];

/** Words of a phrase in any order. */
export function keyOf(terms: readonly string[]): string {
  return [...terms].sort().join(' ');
}

/** Every word of these lists, for the spelling of a name. */
export const useVocabulary: ReadonlySet<string> = new Set(
  [...Object.values(headWords), ...Object.values(itemWords), noteWords].flatMap((phrases) =>
    phrases.flatMap((phrase) => termsOf(phrase)),
  ),
);

/** Place of a name in a list of phrases, respelt or as it stands; -1 where it is none of them. */
export function placeIn(
  phrases: ReadonlyMap<string, number>,
  name: string,
  respell: (term: string) => string,
): number {
  const terms = termsOf(wordsOf(name).join(' '));
  return (
    phrases.get(keyOf(terms)) ??
    phrases.get(terms.join('')) ??
    phrases.get(keyOf(terms.map(respell))) ??
    -1
  );
}

/** Phrases by their key, with their place in the list. */
export function phraseKeys(phrases: readonly string[]): ReadonlyMap<string, number> {
  const keys = new Map<string, number>();
  phrases.forEach((phrase, at) => {
    const key = keyOf(termsOf(phrase));
    if (!keys.has(key)) keys.set(key, at);
  });
  return keys;
}
