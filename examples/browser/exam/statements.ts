import type { FormItem, FormTarget } from '../../../src/forms/index.ts';
import {
  builtInCatalogue,
  type Conclusion,
  conclude,
  type EnteredStatement,
  type ExamDraft,
  entered,
  type Issue,
  type Statement,
  startExam,
  state,
} from '../../../src/index.ts';
import { type Placed, placed } from './asked.ts';
import { pagesOf } from './questions.ts';
import { type Answers, answered, type Saved, startOf } from './saved.ts';

/** What is wrong or unusual at one question. */
export interface Remark {
  readonly severity: Issue['severity'];
  readonly text: string;
}

/** A statement with the questions that it is answered by. */
interface Group {
  readonly beginning: Extract<FormTarget, { readonly part: 'statement' }>['statement'];
  readonly items: Placed[];
}

export interface Made {
  readonly draft: ExamDraft;
  readonly pages: readonly FormItem[];
  readonly all: readonly Placed[];
  /** By linkId. */
  readonly remarks: ReadonlyMap<string, readonly Remark[]>;
  /** LinkId of the question that a path below a statement leads to. */
  readonly fieldOf: (key: string, path: Issue['path']) => string | undefined;
}

/** The exam that the answers make; a statement with an error is told at its question and left out. */
export function madeOf(saved: Saved): Made {
  const { answers } = saved;
  const pages = pagesOf(saved);
  const all = placed(pages, answers);
  const remarks = new Map<string, Remark[]>();
  const remark = (linkId: string, one: Remark): void => {
    remarks.set(linkId, [...(remarks.get(linkId) ?? []), one]);
  };
  const groups = groupsOf(all, answers);
  const byKey = new Map<string, Group>();
  let draft = startExam(startOf(saved));
  for (const group of groups.values()) {
    const { issues, statement, next } = takenUp(draft, saved.head.id, group, answers);
    for (const found of issues) {
      const { severity } = found;
      remark(fieldIn(group, found.path), { severity, text: remarkText(found) });
    }
    if (statement === undefined) continue;
    draft = next;
    byKey.set(statement.key, group);
    for (const { item } of group.items) unusual(item, answers, remark);
  }
  return {
    draft: withConclusion(draft, all, answers),
    pages,
    all,
    remarks,
    fieldOf: (key, path) => {
      const group = byKey.get(key);
      return group && fieldIn(group, path);
    },
  };
}

interface TakenUp {
  readonly issues: readonly Issue[];
  /** None where it has an error. */
  readonly statement: Statement | undefined;
}

/** Statements of the open exam that were held to the rules before, so that an answer costs one of them. */
const known = new Map<string, TakenUp>();
let knownOf = '';
/** Each letter of a note makes another one. */
const most = 5000;

function takenUp(
  draft: ExamDraft,
  exam: string,
  group: Group,
  answers: Answers,
): TakenUp & { readonly next: ExamDraft } {
  if (knownOf !== exam || known.size > most) known.clear();
  knownOf = exam;
  const given = statementOf(group, answers);
  const text = JSON.stringify(given);
  const before = known.get(text);
  if (before !== undefined) {
    const { statement } = before;
    return { ...before, next: statement === undefined ? draft : state(draft, statement) };
  }
  const outcome = entered(draft, given);
  const next = outcome.ok ? outcome.value : draft;
  const { issues } = outcome;
  const taken = { issues, statement: outcome.ok ? next.exam.statements.at(-1) : undefined };
  // The key of one that can stand several times depends on those before it.
  if (group.items.every(({ item }) => !item.linkId.includes('#'))) known.set(text, taken);
  return { ...taken, next };
}

/** Answered questions by the statement that they belong to, in the order of the form. */
function groupsOf(all: readonly Placed[], answers: Answers): ReadonlyMap<string, Group> {
  const groups = new Map<string, Group>();
  const said = new Set<string>();
  for (const one of all) {
    const { says, linkId } = one.item;
    if (says?.part !== 'statement' || !one.isAsked) continue;
    const group = groups.get(says.key) ?? { beginning: says.statement, items: [] };
    groups.set(says.key, group);
    group.items.push(one);
    if (answered(answers, linkId).length > 0) said.add(says.key);
  }
  return new Map([...groups].filter(([key]) => said.has(key)));
}

type Members = Record<string, unknown>;

function statementOf({ beginning, items }: Group, answers: Answers): EnteredStatement {
  const statement: Members = { ...beginning };
  for (const { item } of items) {
    const values = answered(answers, item.linkId);
    if (values.length === 0 || item.says?.part !== 'statement') continue;
    const chosen = values.map((value) => item.options?.find(({ code }) => code === value));
    const told = values.map((value, at) => saidValue(item, chosen[at]?.value ?? value.trim()));
    put(statement, item.says.member, item.repeats === true ? told : told[0]);
    for (const one of chosen) Object.assign(statement, one?.also);
  }
  // Put together from what the form says of its answers; `entered` holds it to the rules.
  return statement as unknown as EnteredStatement;
}

function put(holder: Members, [first = '', ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    holder[first] = value;
    return;
  }
  // What stands on the way was put there by an answer before.
  const inner = (holder[first] ?? {}) as Members;
  holder[first] = inner;
  put(inner, rest, value);
}

function saidValue({ says }: FormItem, text: string): unknown {
  if (says?.part !== 'statement') return text;
  const [member, code = ''] = says.member;
  if (says.as === 'number') return /^\d+$/.test(text) ? Number(text) : text;
  const attribute = member === 'attributes' ? builtInCatalogue.attributes.get(code) : undefined;
  if (attribute?.type === 'boolean') return text === 'true';
  if (attribute?.type === 'count') return /^\d+$/.test(text) ? Number(text) : text;
  if (attribute?.type === 'quantity') return { value: text, unit: attribute.unit };
  return text;
}

/** The question whose member the path leads into furthest; else the first of the statement. */
function fieldIn({ items }: Group, path: Issue['path']): string {
  const steps = path.map(String);
  const likeness = ({ item: { says } }: Placed): number => {
    const member = says?.part === 'statement' ? says.member : [];
    const length = member.findIndex((step, at) => steps[at] !== step);
    return length === -1 ? member.length : length;
  };
  let best: Placed | undefined;
  for (const one of items) {
    if (likeness(one) > (best === undefined ? 0 : likeness(best))) best = one;
  }
  return (best ?? items[0])?.item.linkId ?? '';
}

/** What is missing is told in the words of whoever fills in the form. */
export function remarkText({ code, message, expected }: Issue): string {
  if (code === 'missing-property' || code === 'missing-reason') return 'Still needed here.';
  const sentence = message.slice(0, 1).toUpperCase() + message.slice(1);
  return `${sentence}${expected === undefined ? '' : ` (expected ${expected})`}.`;
}

function unusual(
  { linkId, usual, unit }: FormItem,
  answers: Answers,
  remark: (linkId: string, one: Remark) => void,
): void {
  const [text] = answered(answers, linkId);
  if (usual === undefined || text === undefined) return;
  const figure = Number(text);
  if (figure >= usual.minimum && figure <= usual.maximum) return;
  const span = `${usual.minimum} to ${usual.maximum} ${unit ?? ''}`.trim();
  remark(linkId, {
    severity: 'warning',
    text: `Unusual: mostly ${span}. Look again at the decimal point.`,
  });
}

function withConclusion(draft: ExamDraft, all: readonly Placed[], answers: Answers): ExamDraft {
  const members: Members = {};
  for (const { item } of all) {
    const [value] = answered(answers, item.linkId);
    if (item.says?.part !== 'conclusion' || value === undefined) continue;
    const chosen = item.options?.find(({ code }) => code === value);
    members[item.says.member[0]] = chosen?.value ?? value;
  }
  // Half of a conclusion is none: finishing tells which half is missing.
  return Object.keys(members).length === 0
    ? draft
    : conclude(draft, members as unknown as Conclusion);
}
