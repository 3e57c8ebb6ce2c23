import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import { unkeyedFinding } from '../../kinds/finding/convert.ts';
import { statementConversion } from '../../kinds/registries/conversions.ts';
import type { ExamCondition } from '../../model/exam.ts';
import type { Attribute } from '../../model/statement.ts';
import type { Unkeyed } from '../build/built.ts';
import { type ConversionCode, type ConversionFacts, issue } from '../issue.ts';
import { type Draft, isText, type TextDraft } from '../record/draft.ts';
import type { Field } from '../record/record.ts';
import { subjectKey } from '../record/statement-key.ts';
import { keyPart } from './note.ts';

/** A piece of the exam in its final form, or text. */
export interface Piece {
  content: PieceContent;
  readonly fields: Field[];
  /** Fields whose text stands in the note of the statement. */
  readonly told: Field[];
  /** Make what to keep instead, if the piece cannot stand. */
  readonly fallback: (() => TextDraft)[];
  /** Which of several things of its kind at its place this is about. */
  readonly group?: string;
}

export type PieceContent =
  | { readonly statement: Unkeyed }
  | { readonly condition: ExamCondition }
  | { readonly text: TextDraft };

/** Joins what belongs together, and turns into text what contradicts itself. */
export function assemble(drafts: readonly (Draft | TextDraft)[], issues: Issue[]): Piece[] {
  const pieces: Piece[] = [];
  const attributes: Draft[] = [];
  for (const draft of drafts) {
    if (isText(draft))
      pieces.push({ content: { text: draft }, fields: [...draft.fields], told: [], fallback: [] });
    else if ('attribute' in draft.content) attributes.push(draft);
    else {
      const { content, fields, told, fallback, group } = draft;
      pieces.push({
        content,
        fields: [...fields],
        told: [...told],
        fallback: [fallback],
        ...(group !== undefined && { group }),
      });
    }
  }
  for (const draft of attributes) attach(draft, pieces, issues);
  return withoutRepeats(pieces, issues);
}

function attach(
  { content, fields, fallback, group }: Draft,
  pieces: Piece[],
  issues: Issue[],
): void {
  if (!('attribute' in content)) return;
  const { finding, region, side, value } = content.attribute;
  const owners = pieces.filter((piece) => {
    const owner = unkeyedFinding(statementOf(piece));
    return (
      owner?.finding === finding &&
      owner.region === region &&
      owner.side === side &&
      piece.group === group &&
      owner.presence === 'present'
    );
  });
  const [owner, other] = owners;
  const statement = owner && unkeyedFinding(statementOf(owner));
  if (
    owner === undefined ||
    other !== undefined ||
    statement === undefined ||
    has(statement.attributes, value)
  ) {
    const text = fallback();
    pieces.push({ content: { text }, fields: [...fields], told: [], fallback: [] });
    issues.push(warning('unattached-attribute', text, { reason: 'finding' }));
    return;
  }
  const [first = value, ...more] = [...(statement.attributes ?? []), value];
  owner.content = { statement: { ...statement, attributes: [first, ...more] } };
  append(owner.fields, fields);
  owner.fallback.push(fallback);
}

function has(attributes: readonly Attribute[] | undefined, value: Attribute): boolean {
  return attributes?.some(({ attribute }) => attribute === value.attribute) ?? false;
}

/** Pieces about one thing. */
interface Same {
  readonly pieces: Piece[];
  readonly first: Unkeyed;
  /** The piece that holds what a text says; made when there is a second piece, which is seldom. */
  byText?: Map<string, Piece>;
}

function withoutRepeats(pieces: readonly Piece[], issues: Issue[]): Piece[] {
  const result: Piece[] = [];
  const about = new Map<string, Same>();
  for (const piece of pieces) {
    const statement = statementOf(piece);
    if (statement === undefined || statementConversion(statement).repeats) {
      result.push(piece);
      continue;
    }
    const key = pieceKey(statement, piece.group);
    const same = about.get(key);
    if (same === undefined) about.set(key, { pieces: [piece], first: statement });
    else if (isHeld(piece, statement, same)) continue;
    result.push(piece);
  }
  for (const same of about.values()) if (same.pieces.length > 1) clash(same.pieces, issues);
  return result;
}

/** Whether an earlier piece says the same or could be completed; it then holds this one as well. */
function isHeld(piece: Piece, statement: Unkeyed, same: Same): boolean {
  const [first = piece] = same.pieces;
  same.byText ??= new Map([[JSON.stringify(same.first), first]]);
  const text = JSON.stringify(statement);
  const equal = same.byText.get(text);
  if (equal !== undefined) {
    join(equal, piece);
    return true;
  }
  const latest = same.pieces.at(-1);
  const isCompleted = latest !== undefined && completes(latest, piece);
  same.byText.set(text, isCompleted ? latest : piece);
  if (!isCompleted) same.pieces.push(piece);
  return isCompleted;
}

/** What a statement is about: its subject, and its group where there are several. */
export function pieceKey(statement: Unkeyed, group: string | undefined): string {
  const key = subjectKey(statement);
  return group === undefined ? key : `${key}:${keyPart(group)}`;
}

function join(first: Piece, second: Piece): void {
  append(first.fields, second.fields);
  append(first.told, second.told);
  append(first.fallback, second.fallback);
}

/** Joins a statement to an earlier one of the same thing, where the two complete each other. */
function completes(earlier: Piece, piece: Piece): boolean {
  const [first, second] = [statementOf(earlier), statementOf(piece)];
  // Both have one key, which begins with their kind.
  if (first === undefined || second === undefined) return false;
  const statement = statementConversion(first).join?.(first, second);
  if (statement === undefined) return false;
  earlier.content = { statement };
  join(earlier, piece);
  return true;
}

/** Several values of one measure can be several readings; any two other answers cannot both hold. */
function clash(same: readonly Piece[], issues: Issue[]): void {
  const [first, second] = same;
  const statement = first && statementOf(first);
  const fallback = second?.fallback[0]?.();
  if (statement === undefined || fallback === undefined) return;
  if (statementConversion(statement).several) {
    issues.push(warning('conflicting-fields', fallback, { reason: 'measure' }));
    return;
  }
  issues.push(warning('contradiction', fallback, { reason: 'answers' }));
  for (const piece of same) toText(piece);
}

/** Turns a piece into its fallback text. */
export function toText(piece: Piece): void {
  const [first, ...more] = piece.fallback.map((make) => make());
  if (first === undefined) return;
  const text = [first, ...more].map((one) => one.text).join('\n');
  piece.content = { text: { ...first, text } };
}

export function statementOf(piece: Piece): Unkeyed | undefined {
  return 'statement' in piece.content ? piece.content.statement : undefined;
}

function warning<Code extends ConversionCode>(
  code: Code,
  about: TextDraft,
  facts: ConversionFacts<Code>,
): Issue {
  const source = about.fields[0]?.at;
  return issue(code, [about.name], facts, { severity: 'warning', source });
}
