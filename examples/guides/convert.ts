import { fromCsv, type Mapping } from '../../src/convert/csv/index.ts';
import { issueText } from '../../src/index.ts';

const mapping: Mapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'csv', delimiter: ';' },
  exam: {
    id: { prefix: 'vineyard', from: ['check'] },
    status: { value: 'final' },
    subject: { identifiers: [{ from: 'worker', system: 'https://vineyard.example/workers' }] },
    performed: { start: 'day' },
    recorded: { value: '2024-03-01T08:00:00Z' },
    examiner: { name: 'doctor' },
    protocol: { id: 'full', version: '1.0.0' },
  },
  fields: {
    left_ear: { kind: 'finding', region: 'eac', side: 'left', words: 'canal' },
  },
  words: { canal: { clear: 'eac-clear', wax: 'eac-wax' } },
  noValue: { '': 'not-stated' },
  dates: { formats: ['YYYY-MM-DD'], zone: 'Europe/Lisbon' },
};

const table = `check;worker;day;doctor;left_ear
K-7;V0417;2024-02-05;M. Weinlaub;wax
K-8;V0418;2024-02-31;M. Weinlaub;clear
`;
const { exams, quarantine, issues, ledger } = fromCsv(table, mapping);
for (const issue of issues) console.log(issueText(issue));
for (const { exam } of exams) console.log(exam.id, exam.statements.length);
for (const { reason, at } of quarantine) console.log('set aside:', reason, at);
console.log(ledger.coded, 'of', ledger.fields, 'fields became codes');
