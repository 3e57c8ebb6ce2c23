/**
 * Sends the six examples and seeded exams to a real server, and reads them back; then two exams of one
 * person, of whom the server knows more. Prints a table, and ends with 1 where anything differs.
 * Run: npx tsx tests/reference/delivery/run-server.ts hapi-r4|hapi-r5|sqlite [EXAMS]
 */
import { examples } from '../../../examples/all-exams.ts';
import type { Exam } from '../../../src/index.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { storeExisting } from '../exam-store.ts';
import { changedFields, type FiledExam, fileExam, person, storeFuller } from '../filed-exams.ts';
import { type FhirServer, startServer } from '../server.ts';
import { buildSqliteServer, startSqliteServer } from './sqlite-server.ts';

const servers: Readonly<
  Record<string, { readonly fhirVersion: 'R4' | 'R5'; readonly start: () => Promise<FhirServer> }>
> = {
  'hapi-r4': { fhirVersion: 'R4', start: () => startServer({ fhirVersion: 'R4' }) },
  'hapi-r5': { fhirVersion: 'R5', start: () => startServer({ fhirVersion: 'R5' }) },
  sqlite: { fhirVersion: 'R4', start: async () => startSqliteServer(await buildSqliteServer()) },
};

const [, , name = '', given = '100'] = process.argv;
const chosen = Object.hasOwn(servers, name) ? servers[name] : undefined;
const count = Number(given);
if (chosen === undefined || !Number.isSafeInteger(count) || count < 0) {
  throw new TypeError(`cannot run: expected ${Object.keys(servers).join('|')} [EXAMS]`);
}
const MOST = 160;
const { fhirVersion } = chosen;

const server = await chosen.start();
const began = performance.now();
const rows: (readonly string[])[] = [['exam', 'entries', 'result', 'read back', 'patients']];
let failed = 0;
let entries = 0;
let equal = 0;

/** A line for an exam of its own; of seeded exams, for those that are not as they should be. */
async function file(exam: Exam, { told }: { readonly told: boolean }): Promise<FiledExam> {
  const filed = await fileExam(server.url, exam, { most: MOST, fhirVersion });
  entries += filed.entries;
  const good = filed.result === 'stored' && filed.equal && filed.patients <= 1;
  if (good) equal += 1;
  else failed += 1;
  const back = filed.equal ? 'equal' : 'differs';
  if (told || !good) {
    rows.push([filed.exam, String(filed.entries), filed.result, back, String(filed.patients)]);
  }
  return filed;
}

const ofPerson = (example: string): Exam => {
  const exam = examples.get(example);
  if (exam === undefined) throw new Error(`no example ${example}`);
  return { ...exam, id: `${exam.id}-known`, subject: { identifiers: [person], birthDate: '2001' } };
};

try {
  const known = ['skin-lesion', 'neck-lump'].map(ofPerson);
  const seeded = [...sampleExams(1, count)];
  await storeExisting(server.url, [...examples.values(), ...seeded, ...known], fhirVersion);
  for (const exam of examples.values()) await file(exam, { told: true });
  for (const [at, exam] of seeded.entries()) {
    await file(exam, { told: false });
    if ((at + 1) % 20 === 0) console.error(`${at + 1} seeded exams, ${failed} failed`);
  }
  const before = await storeFuller(server.url);
  const patients: number[] = [];
  for (const exam of known) {
    const filed = await fileExam(server.url, exam, { most: MOST, fhirVersion });
    patients.push(filed.patients);
    if (filed.result !== 'stored' || filed.patients !== 1) failed += 1;
  }
  const changed = await changedFields(server.url, before);
  if (changed.length > 0) failed += 1;
  const minutes = ((performance.now() - began) / 60_000).toFixed(1);
  for (const row of rows) console.log(row.join('\t'));
  console.log(`${count} seeded exams and the examples: ${equal} equal, ${failed} not`);
  console.log(`${entries} entries, ${minutes} minutes`);
  console.log(`two exams of one person: ${patients.at(-1)} Patient`);
  console.log(`the Patient whom the server knew better: ${changed.join(', ') || 'unchanged'}`);
} finally {
  await server.stop();
}
process.exitCode = failed > 0 ? 1 : 0;
