import { spend } from '../../issues/budget.ts';
import {
  hasErrors,
  type Issue,
  issue as recordIssue,
  type SourcePosition,
} from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import type { ReadOutcome } from '../../read/options.ts';
import { readBundle } from '../../read/read-bundle.ts';
import type { ConvertedUnit } from '../exams/converted-unit.ts';
import type { FhirExam } from '../mapping/fhir-mapping.ts';
import type { RawUnit } from '../record/record.ts';
import { type GivenId, idOfForeign } from './exam-id.ts';
import { fieldsOf } from './fields.ts';
import { gapsIn, withCure } from './group/gaps.ts';
import type { FhirPlan } from './prepare.ts';
import { type BundleText, bundleOf, nodeAt } from './read-unit.ts';

/**
 * The exam of a bundle. With an error the bundle is set aside whole: what the reader could not take as it
 * stands may change what the rest of it means.
 */
export function convertBundle(unit: RawUnit, { mapping, read, systems }: FhirPlan): ConvertedUnit {
  spend(unit.raw.length);
  const { at } = unit;
  const text = bundleOf(unit, mapping.source);
  if (!('node' in text)) return { at, issues: text.issues, ledger: [], texts: () => [] };
  const found = readBundle(text.bundle, read);
  const { outcome, places } = found;
  const gaps = mapping.source.form === 'resources' ? gapsIn(text.node, systems) : [];
  const given = outcome.value && idOf(outcome.value, places?.own === true, text, mapping.exam);
  const problems = given !== undefined && 'problem' in given ? [given.problem] : [];
  const told = placed([...gaps, ...problems, ...outcome.issues], text, at).map(withCure);
  const issues = [...text.issues, ...told];
  const isSound = outcome.value !== undefined && !hasErrors(issues);
  const fields = fieldsOf(text, isSound ? found : { outcome: { ...outcome, ...none } });
  const ledger = fields.map(({ text: _, ...entry }) => entry);
  const texts = (): readonly string[] => fields.map((field) => field.text);
  if (outcome.value === undefined || !isSound || given === undefined || 'problem' in given) {
    return { at, issues, ledger, texts };
  }
  const exam = { ...outcome.value, id: given.id };
  return { at, exam, issues: [...issues, ...leftOver(outcome, text)], ledger, texts };
}

/** An exam of this library keeps its id. */
function idOf({ id }: Exam, own: boolean, text: BundleText, exam: FhirExam | undefined): GivenId {
  return own ? { id } : idOfForeign(id, text, exam);
}

const none = { ok: false, value: undefined } as const;

/** The issues with the place that their path leads to, where it is one in the bundle. */
function placed(issues: readonly Issue[], text: BundleText, at: SourcePosition): Issue[] {
  return issues.map((found) => {
    const isInBundle = found.path[0] === 'entry';
    return { ...found, source: isInBundle ? text.placeOf(nodeAt(text.node, found.path)) : at };
  });
}

/** One issue for each kind of part that is in no exam, at its first place: the ledger has all places. */
function leftOver({ remainder }: ReadOutcome, text: BundleText): Issue[] {
  const firsts = new Map<string, ReadOutcome['remainder'][number]>();
  for (const one of remainder) {
    if (one.kind === 'content' && !firsts.has(one.what)) firsts.set(one.what, one);
  }
  return [...firsts.values()].map(({ path, what }) => {
    const facts = { reason: 'part', property: what } as const;
    const source = text.placeOf(nodeAt(text.node, path));
    return recordIssue('not-in-exam', path, facts, { severity: 'warning', source });
  });
}
