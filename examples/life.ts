import { isDeepStrictEqual } from 'node:util';
import {
  checkExam,
  correctExam,
  coverageGaps,
  type Exam,
  finishExamOrThrow,
  fromBundleOrThrow,
  measured,
  normal,
  orThrow,
  signExam,
  startExam,
  toBundleOrThrow,
} from '../src/index.ts';

function lidCheck(year: number, fissure: string): Exam {
  let draft = startExam({
    id: `quay-${year}`,
    subject: { reference: 'Patient/417' },
    examiners: [{ key: 'nurse', role: 'harbour nurse' }],
    performed: { start: `${year}-05-06T08:00:00+02:00` },
    recorded: `${year}-05-06T08:10:00+02:00`,
    protocol: { id: 'droopy-lid', version: '1.0.0' },
  });
  draft = normal(draft, [{ region: 'lid-upper', side: 'left', methods: ['inspection'] }]);
  const place = { region: 'lid-upper', side: 'left', methods: ['measurement'] } as const;
  draft = measured(draft, 'pfh', place, fissure, 'mm');
  return finishExamOrThrow(draft, 'draft');
}

const before = lidCheck(2024, '9.0');
const at = '2025-05-06T08:30:00+02:00';
const signed = orThrow('sign', signExam(lidCheck(2025, '6.0'), { by: 'nurse', at }));

// What was not said, what changed, what rules make of it. Nothing in the exam is altered.
const { coverage, comparisons } = checkExam(signed, { prior: before, ruleSets: ['horner-signs'] });
console.log(coverage && coverageGaps(coverage).length, 'gaps');
for (const { code, change, figures } of comparisons)
  console.log(code, change, figures?.delta ?? '');

// An error put right: the version before stays in the history, the report becomes corrected.
const statements = signed.statements.map((one) =>
  one.kind === 'measurement' ? { ...one, value: '8.0' } : one,
);
const step = { by: 'nurse', at: '2025-05-06T09:00:00+02:00', reason: 'Read the wrong line' };
const corrected = orThrow('correct', correctExam(signed, { ...step, changes: { statements } }));

// As a document in R5, and back: the same exam.
const bundle = toBundleOrThrow(corrected, { fhirVersion: 'R5', bundleType: 'document' });
console.log(corrected.status, isDeepStrictEqual(fromBundleOrThrow(bundle), corrected));
