import type {
  Attribute,
  Finding,
  RegionState,
  ScaleScore,
  Statement,
  Symptom,
} from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Comparable } from './comparable.ts';
import type { Comparison } from './comparison.ts';

type Verdict = Pick<Comparison, 'change' | 'reason' | 'values'>;

const alike = 'stated alike in both; unchanged is said of measurements alone';

/** Change of something stated by a code. Both are of one kind: they share an identity. */
export function codedChange(a: Comparable, b: Comparable, catalogue: Catalogue): Verdict {
  const [now, before] = [a.statement, b.statement];
  if (now.kind === 'finding' && before.kind === 'finding') return findingChange(now, before);
  if (now.kind === 'region-state' && before.kind === 'region-state') {
    return stateChange(now, before);
  }
  if (now.kind === 'symptom' && before.kind === 'symptom') return symptomChange(now, before);
  if (now.kind === 'scale-score' && before.kind === 'scale-score') {
    return scoreChange(now, before);
  }
  return resultChange(resultOf(now, a), resultOf(before, b), catalogue);
}

function findingChange(now: Finding, before: Finding): Verdict {
  if (now.presence === 'indeterminate' || before.presence === 'indeterminate') {
    return { change: 'not-comparable', reason: 'it could not be decided in one of the exams' };
  }
  if (now.presence !== before.presence) {
    if (!methodsMeet(now, before)) return { change: 'not-comparable', reason: 'methods differ' };
    return { change: now.presence === 'present' ? 'new' : 'gone' };
  }
  const values = { before: attributesText(before), now: attributesText(now) };
  if (values.before !== values.now) return { change: 'changed', values };
  return { change: 'same', reason: alike };
}

/** What one method finds another may miss; unsaid methods are taken to meet. */
function methodsMeet(a: Finding | RegionState, b: Finding | RegionState): boolean {
  if (a.methods === undefined || b.methods === undefined) return true;
  return a.methods.some((method) => b.methods?.includes(method));
}

function attributesText(finding: Finding): string {
  return (finding.attributes ?? []).map(attributeText).sort().join('; ');
}

function attributeText({ attribute, value }: Attribute): string {
  const text =
    typeof value === 'object'
      ? `${value.comparator ?? ''}${value.value} ${value.unit}`
      : String(value);
  return `${attribute} ${text}`;
}

function stateChange(now: RegionState, before: RegionState): Verdict {
  const done = (one: RegionState): boolean =>
    one.state === 'normal' || one.state === 'abnormal' || one.state === 'partial';
  if (!done(now) || !done(before)) {
    return { change: 'not-comparable', reason: 'the region was not examined in both' };
  }
  if (!methodsMeet(now, before)) return { change: 'not-comparable', reason: 'methods differ' };
  if (now.state === before.state) return { change: 'same', reason: alike };
  return { change: 'changed', values: { before: before.state, now: now.state } };
}

function symptomChange(now: Symptom, before: Symptom): Verdict {
  const clear = (one: Symptom): boolean => one.answer === 'yes' || one.answer === 'no';
  if (!clear(now) || !clear(before)) {
    return { change: 'not-comparable', reason: 'there is no clear answer in one of the exams' };
  }
  if (now.answer !== before.answer) return { change: now.answer === 'yes' ? 'new' : 'gone' };
  if (
    now.severity !== undefined &&
    before.severity !== undefined &&
    now.severity !== before.severity
  ) {
    const values = { before: String(before.severity), now: String(now.severity) };
    return { change: 'changed', values };
  }
  return { change: 'same', reason: alike };
}

function scoreChange(now: ScaleScore, before: ScaleScore): Verdict {
  if (now.version !== before.version) {
    return { change: 'not-comparable', reason: 'the versions of the scale differ' };
  }
  if (now.score === before.score) return { change: 'same', reason: alike };
  return { change: 'changed', values: { before: String(before.score), now: String(now.score) } };
}

/** Code of the result, and which table says whether it is one at all. */
function resultOf(
  statement: Statement,
  { modality }: Comparable,
): { readonly code: string; readonly table: 'sensationResults' | 'testResults' } | undefined {
  switch (statement.kind) {
    case 'sensation': {
      const result = statement.results.find((one) => one.modality === modality)?.result;
      return result === undefined ? undefined : { code: result, table: 'sensationResults' };
    }
    case 'sensation-comparison':
      return statement.result === 'not-compared'
        ? undefined
        : { code: statement.result, table: 'testResults' };
    case 'movement':
      return { code: statement.grade, table: 'testResults' };
    case 'function-test':
      return { code: statement.result, table: 'testResults' };
    default:
      return undefined;
  }
}

function resultChange(
  now: ReturnType<typeof resultOf>,
  before: ReturnType<typeof resultOf>,
  catalogue: Catalogue,
): Verdict {
  const tested = (one: typeof now): boolean =>
    one !== undefined && catalogue[one.table].get(one.code)?.untested !== true;
  if (now === undefined || before === undefined || !tested(now) || !tested(before)) {
    return { change: 'not-comparable', reason: 'it was not tested in both' };
  }
  if (now.code === before.code) return { change: 'same', reason: alike };
  return { change: 'changed', values: { before: before.code, now: now.code } };
}
