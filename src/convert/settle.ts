import { type Issue, issue } from '../issue.ts';
import type { Exam, ExamCondition } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import type { Note, Statement } from '../model/statement.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import { type Piece, statementOf, toText } from './assemble.ts';
import type { TextDraft } from './draft.ts';
import type { ExamHead } from './head/exam-head.ts';
import { keyPart } from './note.ts';
import { keyGiver, subjectKey } from './statement-key.ts';

export interface Settled {
  /** None where the exam can not stand even with all its statements as text. */
  readonly exam?: Exam;
  readonly issues: readonly Issue[];
  /** Key of the statement of each piece; none for a condition. */
  readonly keys: ReadonlyMap<Piece, string>;
}

/** Rounds of turning refused statements into text: as they are, as text, as text without a place. */
const ROUNDS = 3;

/**
 * The exam of these pieces, held to the rules for exams. What the rules refuse is kept as text, and
 * the refusal told, so that one bad value does not cost an exam.
 */
export function settle(head: ExamHead, pieces: readonly Piece[], catalogue: Catalogue): Settled {
  const told: Issue[] = [];
  for (let round = 1; ; round += 1) {
    const { exam, statements, conditions, keys } = put(head, pieces);
    const { value, issues } = parseExam(exam, { catalogue });
    const located = issues.map((found) => withSource(found, statements, conditions));
    if (value !== undefined) return { exam: value, issues: [...told, ...located], keys };
    const refused = new Set<Piece>();
    for (const found of issues) {
      const piece = pieceAt(found, statements, conditions);
      if (found.severity !== 'error') continue;
      if (piece === undefined || round === ROUNDS) return { issues: [...told, ...located], keys };
      refused.add(piece);
    }
    told.push(...located.filter(({ severity }) => severity === 'error').map(asWarning));
    for (const piece of refused) demote(piece);
  }
}

/** Statement to text; text that is refused loses its place. */
function demote(piece: Piece): void {
  if (!('text' in piece.content)) {
    toText(piece);
    return;
  }
  const { text, name, fields } = piece.content.text;
  piece.content = { text: { text, name, fields } };
}

function asWarning(found: Issue): Issue {
  return issue(found.code, found.path, `${found.message}; it is kept as text`, {
    severity: 'warning',
    expected: found.expected,
    source: found.source,
  });
}

interface Put {
  readonly exam: Exam;
  readonly statements: readonly Piece[];
  readonly conditions: readonly Piece[];
  readonly keys: ReadonlyMap<Piece, string>;
}

function put(head: ExamHead, pieces: readonly Piece[]): Put {
  const giveKey = keyGiver();
  const keys = new Map<Piece, string>();
  const made: Statement[] = [];
  const conditions: ExamCondition[] = [];
  const conditionPieces: Piece[] = [];
  const statementPieces: Piece[] = [];
  for (const piece of pieces) {
    if ('condition' in piece.content) {
      conditions.push(piece.content.condition);
      conditionPieces.push(piece);
      continue;
    }
    const unkeyed = statementOf(piece);
    const text = 'text' in piece.content ? piece.content.text : undefined;
    // The second statement of a value said of both sides: its text stands with the first.
    if (text !== undefined && piece.fields.length === 0) continue;
    const key = giveKey(
      unkeyed === undefined ? `text:${keyPart(text?.name ?? '')}` : subjectKey(unkeyed),
    );
    keys.set(piece, key);
    statementPieces.push(piece);
    if (text !== undefined) made.push(noteOf(text, key));
    // An unkeyed statement with a key is a statement again; the union is not followed by TypeScript.
    else made.push({ key, ...unkeyed } as Statement);
  }
  const [first, ...more] = conditions;
  const exam: Exam = {
    ...head,
    ...(first !== undefined && { conditions: [first, ...more] }),
    statements: made,
  };
  return { exam, statements: statementPieces, conditions: conditionPieces, keys };
}

function noteOf({ text, region, side }: TextDraft, key: string): Note {
  return {
    key,
    kind: 'note',
    ...(region !== undefined && { region }),
    ...(region !== undefined && side !== undefined && { side }),
    text,
  };
}

function pieceAt(
  { path }: Issue,
  statements: readonly Piece[],
  conditions: readonly Piece[],
): Piece | undefined {
  const [list, at] = path;
  if (typeof at !== 'number') return undefined;
  if (list === 'statements') return statements[at];
  return list === 'conditions' ? conditions[at] : undefined;
}

/** An issue about a statement also tells where in the input the statement came from. */
function withSource(
  found: Issue,
  statements: readonly Piece[],
  conditions: readonly Piece[],
): Issue {
  const field = pieceAt(found, statements, conditions)?.fields[0];
  if (field === undefined) return found;
  return { ...found, source: field.at };
}
