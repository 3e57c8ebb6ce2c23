import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import { unkeyedFinding } from '../../kinds/finding/convert.ts';
import { statementConversion } from '../../kinds/registries/conversions.ts';
import type { Exam } from '../../model/exam.ts';
import { parseExam } from '../../model/parse-exam.ts';
import type { Note, Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { ExamHead } from '../head/exam-head.ts';
import type { TextDraft } from '../record/draft.ts';
import type { Field } from '../record/record.ts';
import { keyGiver } from '../record/statement-key.ts';
import { type Piece, pieceKey, statementOf, toText } from './assemble.ts';
import { keyPart } from './note.ts';

export interface Settled {
  /** None where the exam cannot stand even with all its statements as text. */
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
    append(told, located.filter(({ severity }) => severity === 'error').map(asWarning));
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

function asWarning({ received: _received, ...found }: Issue): Issue {
  return { ...found, severity: 'warning' };
}

interface Put {
  readonly exam: Exam;
  readonly statements: readonly Piece[];
  readonly conditions: readonly Piece[];
  readonly keys: ReadonlyMap<Piece, string>;
}

function put(head: ExamHead, pieces: readonly Piece[]): Put {
  const conditionPieces = pieces.filter(({ content }) => 'condition' in content);
  const conditions = conditionPieces.flatMap(({ content }) =>
    'condition' in content ? [content.condition] : [],
  );
  const keys = keysOf(pieces);
  const owners = findingsByGroup(keys);
  const statements = [...keys.keys()];
  const made = statements.map((piece) => statementWithKey(piece, keys.get(piece) ?? '', owners));
  const [first, ...more] = conditions;
  const exam: Exam = {
    ...head,
    ...(first !== undefined && { conditions: [first, ...more] }),
    statements: made,
  };
  return { exam, statements, conditions: conditionPieces, keys };
}

/** Keys of all pieces that become statements, in order. */
function keysOf(pieces: readonly Piece[]): Map<Piece, string> {
  const giveKey = keyGiver();
  const keys = new Map<Piece, string>();
  const texts = new Map<Field, Set<string>>();
  for (const piece of pieces) {
    const { content, fields, group } = piece;
    if ('condition' in content) continue;
    const unkeyed = statementOf(piece);
    const text = 'text' in content ? content.text : undefined;
    // Statements for two sides have one record behind them; its text is told once.
    if (text !== undefined && isTold(text.text, fields[0], texts)) continue;
    const name =
      unkeyed === undefined ? `text:${keyPart(text?.name ?? '')}` : pieceKey(unkeyed, group);
    keys.set(piece, giveKey(name));
  }
  return keys;
}

function isTold(text: string, field: Field | undefined, texts: Map<Field, Set<string>>): boolean {
  if (field === undefined) return true;
  const told = texts.get(field) ?? new Set();
  texts.set(field, told);
  const known = told.has(text);
  told.add(text);
  return known;
}

/** Key of the one present finding of each group; groups with none or several are left out. */
function findingsByGroup(keys: ReadonlyMap<Piece, string>): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const several = new Set<string>();
  for (const [piece, key] of keys) {
    const finding = unkeyedFinding(statementOf(piece));
    if (piece.group === undefined || finding?.presence !== 'present') continue;
    if (found.has(piece.group)) several.add(piece.group);
    found.set(piece.group, key);
  }
  for (const group of several) found.delete(group);
  return found;
}

/** The statement of a piece; one that measures the finding of its group says so. */
function statementWithKey(
  piece: Piece,
  key: string,
  owners: ReadonlyMap<string, string>,
): Statement {
  if ('text' in piece.content) return noteOf(piece.content.text, key);
  const unkeyed = statementOf(piece);
  const ofFinding = unkeyed !== undefined && statementConversion(unkeyed).ofFinding;
  const about = ofFinding ? owners.get(piece.group ?? '') : undefined;
  // An unkeyed statement with a key is a statement again; the union is not followed by TypeScript.
  return { key, ...unkeyed, ...(about !== undefined && { about }) } as Statement;
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
