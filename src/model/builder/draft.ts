import type { Exam } from '../exam.ts';
import type { Statement } from '../statement.ts';

/** An exam being put together. Never changed: each builder function gives a new draft. */
export interface ExamDraft {
  readonly exam: Exam;
}

/** What is known when the exam begins. */
export type ExamStart = Omit<Exam, 'format' | 'status' | 'statements' | 'conclusion'>;

/**
 * Begins an exam. It has no statement: nothing in it is normal, absent or done until it is said.
 *
 * @param start Who was examined by whom, when, and by which protocol. Times carry an offset from
 *   UTC.
 * @returns A draft for the other functions of the builder, each of which gives a new one.
 * @example
 * let first = startExam({
 *   id: 'quay-17', subject: { reference: 'Patient/417' }, examiners: [{ key: 'nurse' }],
 *   performed: { start: '2025-05-06T08:00:00Z' }, recorded: '2025-05-06T08:20:00Z',
 *   protocol: { id: 'skin-lesion', version: '1.0.0' },
 * });
 */
export function startExam(start: ExamStart): ExamDraft {
  return { exam: { format: 'face-neck-exam/1', ...start, status: 'draft', statements: [] } };
}

/** Details that every statement can have besides what its function asks for. */
export type Details<S extends Statement> = Partial<
  Pick<S, 'key' | 'at' | 'examiner' | 'instruments' | 'note' | 'codings' | 'carried'>
>;

export type WithoutKey<S> = S extends Statement
  ? Omit<S, 'key'> & { readonly key?: string }
  : never;

/**
 * Adds a statement of any kind; the functions for each kind, such as {@link present}, call this
 * one. A statement without a key gets one made of its kind, code, place and side; a second one of
 * the same gets `.2`, and so on in the order added. Codes are plain strings here, so a sign can be
 * stated where the tables do not expect it; {@link entered} is for what comes from a form.
 *
 * @param draft The draft so far.
 * @param statement The statement, with or without its key.
 * @returns The draft with the statement at its end.
 * @example
 * draft = state(draft, { kind: 'note', text: 'Sat in the shade', key: 'shade' });
 */
export function state(draft: ExamDraft, statement: WithoutKey<Statement>): ExamDraft {
  const line = lineBehind(draft);
  const key = statement.key ?? freeKey(line, baseKey(statement));
  line.taken.add(key);
  // Key and kind are set; the callers are typed, and finishExam checks what they cannot.
  line.statements.push({ ...statement, key } as Statement);
  return nextDraft(line);
}

/**
 * What drafts made of each other share, so that a draft costs no copy of those before it: each holds
 * the first so many of the statements.
 */
interface Line {
  readonly start: Exam;
  readonly statements: Statement[];
  readonly taken: Set<string>;
  /** By the key that a statement would have: the number that the next one of the same gets. */
  readonly next: Map<string, number>;
}

const lines = new WeakMap<ExamDraft, { readonly line: Line; readonly length: number }>();

/** What is known of the exam besides what is said in it: who, when, by which protocol. */
export function headOf(draft: ExamDraft): Exam {
  const {
    conclusion: _c,
    prompts: _p,
    judgements: _j,
    history: _h,
    ...head
  } = lines.get(draft)?.line.start ?? draft.exam;
  return { ...head, statements: [] };
}

/** The line that goes on from a draft: its own where nothing has followed yet, else a new one. */
function lineBehind(draft: ExamDraft): Line {
  const known = lines.get(draft);
  if (known !== undefined && known.line.statements.length === known.length) return known.line;
  const statements = [...draft.exam.statements];
  const taken = new Set(statements.map(({ key }) => key));
  return { start: draft.exam, statements, taken, next: new Map() };
}

function nextDraft(line: Line): ExamDraft {
  const { length } = line.statements;
  let exam: Exam | undefined;
  const draft: ExamDraft = {
    get exam() {
      exam ??= { ...line.start, statements: line.statements.slice(0, length) };
      return exam;
    },
  };
  lines.set(draft, { line, length });
  return draft;
}

function freeKey({ taken, next }: Line, base: string): string {
  let count = next.get(base) ?? 1;
  let key = count === 1 ? base : `${base}.${count}`;
  while (taken.has(key)) {
    count += 1;
    key = `${base}.${count}`;
  }
  next.set(base, count + 1);
  return key;
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

/** The key that a statement gets where none is given and it is the first of its kind, code and place. */
export function baseKey(statement: WithoutKey<Statement>): string {
  const named = new Map<string, unknown>(Object.entries(statement));
  const parts = namingProperties.map((property) => named.get(property));
  return [statement.kind, ...parts.filter((part) => typeof part === 'string')].join('/');
}
