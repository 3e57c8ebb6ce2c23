import {
  correctExam,
  fromBundleOrThrow,
  noted,
  orThrow,
  parseExamOrThrow,
  signExam,
  startExam,
  toBundleOrThrow,
} from '../../src/index.ts';

let draft = startExam({
  id: 'quay-2025-18',
  subject: { reference: 'Patient/418' },
  examiners: [{ key: 'nurse' }],
  performed: { start: '2025-05-06T08:00:00Z' },
  recorded: '2025-05-06T08:10:00Z',
  protocol: { id: 'neck-lump', version: '1.0.0' },
});
draft = noted(draft, 'Lump on the right, as before', { key: 'lump' });

const exam = parseExamOrThrow(draft.exam);
const signed = orThrow('sign', signExam(exam, { by: 'nurse', at: '2025-05-06T08:30:00Z' }));
const [lump] = signed.statements;
if (lump?.kind !== 'note') throw new Error('the note is gone');
const corrected = orThrow(
  'correct',
  correctExam(signed, {
    by: 'nurse',
    at: '2025-05-06T09:00:00Z',
    reason: 'wrong side',
    changes: { statements: [{ ...lump, text: 'Lump on the left, as before' }] },
  }),
);
const own = { identity: 'https://clinic.example/records' };
const bundle = toBundleOrThrow(corrected, {
  ...own,
  previous: signed,
  bundleType: 'transaction',
});
console.log(corrected.status, fromBundleOrThrow(bundle, own).status);
