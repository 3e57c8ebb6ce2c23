import { hasErrors, type Issue } from '../../../issues/issue.ts';
import type { Path } from '../../../issues/path.ts';
import { issue } from '../../issue.ts';
import type { Validation } from '../../validate-bundle.ts';
import { isObject, objectsOf, textOf } from '../../walk/json.ts';
import type { Unchecked } from '../../walk/scope.ts';
import type { CodeAnswer, Terminology } from './client.ts';

/**
 * Asks a terminology server about the codes that a validation could not judge. A code outside its
 * value set becomes an issue, one inside it is no longer unchecked, and one that the server does
 * not answer stays unchecked with the reason.
 *
 * @param bundle What was validated.
 * @param validation The verdict on it.
 * @param terminology From `createTerminology`.
 * @returns The verdict with the answers. A server that is down changes no verdict.
 * @example
 * const terminology = createTerminology({ baseUrl: 'https://tx.clinic.example/fhir', fetch });
 * const { valid } = await withTerminology(bundle, validation, terminology);
 */
export async function withTerminology(
  bundle: unknown,
  validation: Validation,
  terminology: Terminology,
): Promise<Validation> {
  const asked = await Promise.all(
    validation.unchecked.map(async (open) => ({
      open,
      answer: await answered(open, bundle, terminology),
    })),
  );
  const unchecked = asked.flatMap(({ open, answer }) => {
    if (answer === undefined) return [open];
    return answer.answer === 'not-checked' ? [{ ...open, why: `${open.why}: ${answer.why}` }] : [];
  });
  const found = asked.flatMap(({ open, answer }) =>
    answer?.answer === 'not-in' ? [outside(open)] : [],
  );
  const left = new Set(unchecked.map(({ rule }) => rule));
  const settled = new Set(
    asked.flatMap(({ open: { rule, valueSet } }) =>
      valueSet === undefined || left.has(rule) ? [] : [rule],
    ),
  );
  const kept = validation.issues.filter(
    ({ code, rule = '' }) => code !== 'unchecked-rule' || !settled.has(rule),
  );
  const issues = [...kept, ...found];
  return { ...validation, valid: !hasErrors(issues), issues, unchecked };
}

function outside({ path, rule, valueSet, strength }: Unchecked): Issue {
  const required = strength === 'required';
  const reason = required ? 'required-set' : 'extensible-set';
  const facts = { reason, url: valueSet ?? '' } as const;
  return issue('unknown-code', path, facts, { severity: required ? 'error' : 'warning', rule });
}

/** One code of the value set is enough; `undefined` for what no terminology server is asked about. */
async function answered(
  { valueSet, path }: Unchecked,
  bundle: unknown,
  terminology: Terminology,
): Promise<CodeAnswer | undefined> {
  if (valueSet === undefined) return undefined;
  const codings = codingsOf(valueAt(bundle, path));
  if (codings.length === 0) return { answer: 'not-checked', why: 'no code stands there' };
  const answers = await Promise.all(
    codings.map((coding) => terminology.validateCode({ valueSet, ...coding })),
  );
  const isIn = answers.find(({ answer }) => answer === 'in');
  return isIn ?? answers.find(({ answer }) => answer === 'not-checked') ?? answers[0];
}

function valueAt(bundle: unknown, path: Path): unknown {
  let value: unknown = bundle;
  for (const step of path) {
    const holds = (isObject(value) || Array.isArray(value)) && Object.hasOwn(value, step);
    value = holds ? Reflect.get(value as object, step) : undefined;
  }
  return value;
}

/** Of a code, Coding, Quantity, CodeableConcept or CodeableReference. */
function codingsOf(value: unknown): { system: string | undefined; code: string }[] {
  if (typeof value === 'string') return [{ system: undefined, code: value }];
  if (!isObject(value)) return [];
  if (isObject(value['concept'])) return codingsOf(value['concept']);
  const list = 'coding' in value ? objectsOf(value['coding']) : [value];
  return list.flatMap(({ system, code }) =>
    typeof code === 'string' ? [{ system: textOf(system) ?? '', code }] : [],
  );
}
