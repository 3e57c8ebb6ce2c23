import {
  type CheckResult,
  checkExam,
  type Exam,
  finishExam,
  hasErrors,
  type Issue,
  type Outcome,
  recordPrompts,
  signExam,
  toBundle,
  toJson,
} from '../../../src/index.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { type OpenPlace, openPlaces } from './open-places.ts';
import { comparedWith, whyNotShown } from './prior.ts';
import { type Before, examinerKey, now, type Saved } from './saved.ts';
import { type Made, madeOf, type Remark, remarkText } from './statements.ts';

/** A remark with the place that it leads to; none where it is about the exam as a whole. */
export interface PlacedRemark extends Remark {
  readonly page: string;
  readonly field: string;
}

/** Everything that follows from the answers. Worked out anew after each change. */
export interface Reading extends Made {
  readonly open: readonly OpenPlace[];
  /** How many things the protocol asks for. */
  readonly total: number;
  readonly checked: CheckResult;
  /** By linkId. */
  readonly remarks: ReadonlyMap<string, readonly Remark[]>;
  readonly list: readonly PlacedRemark[];
  /** The exam before, where it can be compared with. */
  readonly before: Before | undefined;
}

export function readingOf(saved: Saved): Reading {
  const made = madeOf(saved);
  const { exam } = made.draft;
  const { before } = saved;
  const usable = before && whyNotShown(exam, before).length === 0 ? before : undefined;
  const checked = checkExam(exam, {
    ruleSets: saved.ruleSets,
    dismissals: saved.dismissals,
    ...(usable && comparedWith(usable)),
  });
  const finished = finishExam(made.draft, 'draft');
  const remarks = new Map(made.remarks);
  const list: PlacedRemark[] = [];
  const page = (field: string): string =>
    made.all.find(({ item }) => item.linkId === field)?.page.linkId ?? 'conclusion';
  for (const [field, all] of remarks) {
    for (const one of all) list.push({ ...one, page: page(field), field });
  }
  // An exam may stand without a conclusion; one that is signed here has it.
  if (exam.conclusion === undefined) {
    const one: Remark = { severity: 'error', text: 'Still needed here.' };
    remarks.set('conclusion:text', [one]);
    list.push({ ...one, page: 'conclusion', field: 'conclusion:text' });
  }
  const told = [...finished.issues, ...checked.issues];
  for (const found of told.filter(isForHere)) {
    const field = fieldOf(made, exam, found);
    const one: Remark = { severity: found.severity, text: remarkText(found) };
    const known = remarks.get(field) ?? [];
    if (known.some(({ text }) => text === one.text)) continue;
    remarks.set(field, [...known, one]);
    list.push({ ...one, page: page(field), field });
  }
  const { coverage } = checked;
  const open = coverage === undefined ? [] : openPlaces(made, coverage);
  const total = coverage?.items.length ?? 0;
  return { ...made, open, total, checked, remarks, list, before: usable };
}

/** What is open has a list of its own, and the exam before is told of where it is loaded. */
function isForHere({ code, path }: Issue): boolean {
  return code !== 'coverage-gap' && path[0] !== 'prior' && path[0] !== 'options';
}

function fieldOf(made: Made, exam: Exam, { path, statement }: Issue): string {
  const [part, at, ...below] = path;
  if (part === 'conclusion') return `conclusion:${at === 'concern' ? 'concern' : 'text'}`;
  const key =
    statement ??
    (part === 'statements' && typeof at === 'number' ? exam.statements[at]?.key : undefined);
  return (key !== undefined && made.fieldOf(key, below)) || 'conclusion';
}

export function errorsOf({ list }: Reading): readonly PlacedRemark[] {
  return list.filter(({ severity }) => severity === 'error');
}

/** The signed exam, with the prompts that were shown; it fails as long as there is an error. */
export function signed(reading: Reading): Outcome<Exam> {
  const at = now();
  const { draft, checked } = reading;
  const ended = { ...draft.exam, performed: { ...draft.exam.performed, end: at }, recorded: at };
  const finished = finishExam({ exam: ended }, 'draft');
  if (!finished.ok) return finished;
  return signExam(recordPrompts(finished.value, checked.prompts, at), { by: examinerKey, at });
}

/** The bundle of an exam as text, and what its validation found. */
export function bundleOf(exam: Exam): {
  readonly text: string;
  readonly valid: boolean;
  readonly resources: number;
  readonly issues: readonly Issue[];
} {
  const bundle = toBundle(exam);
  if (!bundle.ok) return { text: '', valid: false, resources: 0, issues: bundle.issues };
  const { valid, issues } = validateBundle(bundle.value);
  return {
    text: toJson(bundle.value, { pretty: true }),
    valid: valid && !hasErrors(bundle.issues),
    resources: bundle.value.entry?.length ?? 0,
    issues: [...bundle.issues, ...issues],
  };
}
