import type { Exam } from '../exam.ts';
import type { Statement } from '../statement.ts';

/** An exam being put together. Never changed: each builder function gives a new draft. */
export interface ExamDraft {
  readonly exam: Exam;
}

/** What is known when the exam begins. */
export type ExamStart = Omit<Exam, 'format' | 'status' | 'statements' | 'conclusion'>;

/** An exam without any statement: nothing in it is normal, absent or done until it is said. */
export function startExam(start: ExamStart): ExamDraft {
  return { exam: { format: 'face-neck-exam/1', ...start, status: 'draft', statements: [] } };
}

/** Details that every statement can have besides what its function asks for. */
export type Details<S extends Statement> = Partial<
  Pick<S, 'key' | 'at' | 'examiner' | 'instruments' | 'note' | 'codings' | 'carried'>
>;

type WithoutKey<S> = S extends Statement ? Omit<S, 'key'> & { readonly key?: string } : never;

/**
 * The draft with one more statement. Without a key of its own the statement gets one made of its
 * kind, code, place and side; a second one of the same gets `.2`, and so on, in the order added.
 */
export function state(draft: ExamDraft, statement: WithoutKey<Statement>): ExamDraft {
  const { exam } = draft;
  const key = statement.key ?? freeKey(exam, baseKey(statement));
  // Key and kind are set; the callers are typed, and finishExam checks what they cannot.
  const complete = { ...statement, key } as Statement;
  return { exam: { ...exam, statements: [...exam.statements, complete] } };
}

function freeKey({ statements }: Exam, base: string): string {
  const taken = new Set(statements.map(({ key }) => key));
  if (!taken.has(base)) return base;
  let count = 2;
  while (taken.has(`${base}.${count}`)) count++;
  return `${base}.${count}`;
}

/** Properties that say what a statement is about, in the order they stand in its key. */
const namingProperties = [
  'finding',
  'point',
  'test',
  'measure',
  'scale',
  'symptom',
  'modality',
  'region',
  'side',
] as const;

function baseKey(statement: WithoutKey<Statement>): string {
  const named = new Map<string, unknown>(Object.entries(statement));
  const parts = namingProperties.map((property) => named.get(property));
  return [statement.kind, ...parts.filter((part) => typeof part === 'string')].join('/');
}
