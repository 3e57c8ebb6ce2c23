import type { Catalogue } from '../../../terminology/catalogue.ts';
import type { PresetMapping } from '../mapping.ts';
import { snomedWords, ucumUnits } from './published-codes.ts';

/** Headings that mean one column, by the usual English names (common practice, no source). */
const headings = {
  visit: ['Consultation ID', 'Consultation', 'Encounter ID', 'Encounter', 'Visit ID', 'Visit'],
  patient: ['Patient ID', 'Patient Number', 'Patient No', 'Patient Reference', 'MRN'],
  surname: ['Surname', 'Family Name', 'Last Name'],
  forename: ['Forename', 'Forenames', 'First Name', 'Given Name', 'Given Names'],
  born: ['Date of Birth', 'DOB', 'Birth Date'],
  sex: ['Sex', 'Gender'],
  date: ['Event Date', 'Consultation Date', 'Encounter Date', 'Visit Date', 'Date'],
  recorded: ['Date Recorded', 'Recorded Date', 'Entered Date', 'Date Entered'],
  clinician: ['Clinician', 'Clinician Name', 'Consulter', 'Entered By', 'Doctor', 'Examiner'],
  code: ['SNOMED Code', 'SNOMED CT Code', 'SNOMED Concept ID', 'Concept ID'],
  term: ['Term', 'Code Term', 'Description', 'Rubric'],
  value: ['Value', 'Result', 'Numeric Value'],
  unit: ['Unit', 'Units', 'Unit of Measure'],
  side: ['Side', 'Laterality'],
  text: ['Free Text', 'Associated Text', 'Notes', 'Comment', 'Comments'],
};

/**
 * Coded entries of a general practice, a row each: the rows of one patient and visit are one exam.
 * Patient numbers are taken where the mapping states their name space, dates in ISO 8601 or the forms
 * that it states. A number is a measurement where the SNOMED CT code of its row means one measure; any
 * other row is one text, since such an export does not say where a code was found.
 */
export function practiceCsv(catalogue: Catalogue): Omit<PresetMapping, 'format' | 'use'> {
  const measures = snomedWords('measures', catalogue);
  return {
    source: { syntax: 'csv', headings, groupBy: ['patient', 'date'], rows: 'anywhere' },
    exam: {
      id: { prefix: 'practice', from: ['patient', 'date'], also: ['visit'] },
      status: { value: 'final' },
      subject: {
        family: 'surname',
        given: 'forename',
        birthDate: 'born',
        gender: {
          from: 'sex',
          words: { F: 'female', Female: 'female', M: 'male', Male: 'male' },
        },
      },
      performed: { start: 'date' },
      recorded: { from: { from: ['recorded', 'date'] }, timeOfDay: '00:00' },
      examiner: { name: 'clinician', fixed: { name: 'the practice' } },
      protocol: { id: 'full', version: '1.0.0' },
    },
    items: [
      {
        kind: 'row',
        code: ['code'],
        value: 'value',
        unit: 'unit',
        note: 'text',
        side: 'side',
        map: Object.fromEntries(
          Object.entries(measures).map(([code, measure]) => [
            code,
            { kind: 'measurement', measure },
          ]),
        ),
      },
    ],
    sides: { Left: 'left', Right: 'right', Both: 'both', Bilateral: 'both' },
    units: ucumUnits(catalogue),
    text: ['term'],
  } as Omit<PresetMapping, 'format' | 'use'>; // words are codes of the catalogue
}
