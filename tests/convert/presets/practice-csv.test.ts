import { expect, it } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import type { PresetMapping } from '../../../src/convert/mapping/mapping.ts';
import { checkLedger } from '../syntax-cases.ts';

/** What only the practice knows: its number space, its zone and how it writes dates. */
const mapping: PresetMapping = {
  format: 'face-neck-mapping/1',
  use: 'practice-csv',
  exam: {
    subject: { identifiers: [{ from: 'patient', system: 'https://practice.example/patients' }] },
  },
  dates: { zone: 'Europe/London', formats: ['DD/MM/YYYY'] },
};

const rows = [
  [
    '1001',
    'Rope',
    'Ada',
    '20/03/1962',
    'F',
    '05/02/2024',
    'Dr Berth',
    '246206008',
    'Number of lesions',
    '3',
    '',
    'cheek',
  ],
  [
    '1001',
    'Rope',
    'Ada',
    '20/03/1962',
    'F',
    '05/02/2024',
    'Dr Berth',
    '162673000',
    'General examination',
    '',
    '',
    'well',
  ],
  [
    '1002',
    'Knot',
    'Tom',
    '1958-07-01',
    'M',
    '2024-02-06',
    'Dr Berth',
    '162673000',
    'General examination',
    '',
    '',
    'well',
  ],
];

it.each([
  'Patient ID,Surname,Forename,DOB,Sex,Event Date,Clinician,SNOMED Code,Term,Value,Units,Free Text',
  'patient_number,Last Name,FIRST NAME,Date of Birth,Gender,Consultation Date,Entered By,SNOMED CT Code,Description,Result,Unit,Associated Text',
])('the preset for coded entries of a practice reads the headings %s', (heading) => {
  const result = fromCsv([heading, ...rows.map((row) => row.join(','))].join('\n'), mapping);
  expect(result.quarantine.flatMap(({ issues }) => issues)).toEqual([]);
  expect(result.exams.map(({ exam }) => [exam.subject.name, exam.subject.birthDate])).toEqual([
    [{ family: 'Rope', given: ['Ada'] }, '1962-03-20'],
    [{ family: 'Knot', given: ['Tom'] }, '1958-07-01'],
  ]);
  const [first] = result.exams;
  // Nothing says where the lesions are, so that their number can not be a measurement of a place.
  expect(JSON.stringify(first?.exam.statements)).toContain('cheek');
  checkLedger(result);
});
