/**
 * Sends the six examples and seeded exams to a server in Rust on SQLite, and reads them back; then two
 * exams of one person, and one of a person whom the server knows better. Prints a table, and ends with
 * 1 where anything differs. Run: npx tsx tests/reference/delivery/run-sqlite.ts [EXAMS]
 */
import { examples } from '../../../examples/all-exams.ts';
import type { Exam } from '../../../src/index.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { storeExisting } from '../exam-store.ts';
import { changedFields, type FiledExam, fileExam, person, storeFuller } from '../filed-exams.ts';
import { buildSqliteServer, startSqliteServer } from './sqlite-server.ts';

const count = Number(process.argv[2] ?? 100);
if (!Number.isSafeInteger(count) || count < 0) {
  throw new TypeError('cannot run: expected a number of seeded exams');
}
const MOST = 160;
const fhirVersion = 'R4';

const server = await startSqliteServer(await buildSqliteServer());
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

const ofPerson = (name: string): Exam => {
  const exam = examples.get(name);
  if (exam === undefined) throw new Error(`no example ${name}`);
  return { ...exam, id: `${exam.id}-known`, subject: { identifiers: [person], birthDate: '2001' } };
};

try {
  const known = ['skin-lesion', 'neck-lump'].map(ofPerson);
  const seeded = [...sampleExams(1, count)];
  await storeExisting(server.url, [...examples.values(), ...seeded, ...known]);
  for (const exam of examples.values()) await file(exam, { told: true });
  for (const exam of seeded) await file(exam, { told: false });
  const seededLine = `${count} seeded exams`;
  const before = await storeFuller(server.url);
  const patients: number[] = [];
  for (const exam of known) {
    const filed = await fileExam(server.url, exam, { most: MOST, fhirVersion });
    patients.push(filed.patients);
    if (filed.result !== 'stored' || filed.patients !== 1) failed += 1;
  }
  const changed = await changedFields(server.url, before);
  if (changed.length > 0) failed += 1;
  for (const row of rows) console.log(row.join('\t'));
  console.log(`${seededLine} and the examples: ${equal} equal, ${failed} not, ${entries} entries`);
  console.log(`two exams of one person: ${patients.at(-1)} Patient`);
  console.log(`the Patient whom the server knew better: ${changed.join(', ') || 'unchanged'}`);
} finally {
  await server.stop();
}
process.exitCode = failed > 0 ? 1 : 0;
