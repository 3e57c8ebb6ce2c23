import {
  type AnyBundle,
  checkExam,
  fromJson,
  hasErrors,
  type Issue,
  parseExam,
  toBundle,
  toJson,
} from 'face-neck-fhir';
import { validateBundle } from 'face-neck-fhir/validate/r4';

/** Yours goes here: all ids follow from it. */
const identity = 'https://clinic.example/records';

export interface Accepted {
  readonly exam: string;
  /** A transaction in which each resource is put under an id that follows from the exam. */
  readonly bundle: string;
}

/**
 * The bundle of an exam that was sent as JSON, or everything that is wrong with it. What the
 * bundle `before` of the same exam held and the exam no longer holds, it takes back.
 */
export async function accept(
  text: string,
  before: (exam: string) => Promise<string | undefined>,
): Promise<{ accepted?: Accepted; issues: readonly Issue[] }> {
  const json = fromJson(text);
  if (hasErrors(json.issues)) return { issues: json.issues };
  const parsed = parseExam(json.value);
  if (parsed.value === undefined) return { issues: parsed.issues };
  const exam = parsed.value;
  const stored = await before(exam.id);
  // Our own bundle, as it was stored; `fromJson` keeps its decimals.
  const previous = stored === undefined ? undefined : (fromJson(stored).value as AnyBundle);
  const exported = toBundle(exam, {
    bundleType: 'transaction',
    identity,
    ...(previous && { previous }),
  });
  const issues = [...exported.issues, ...checkExam(exam).issues];
  if (exported.value === undefined || hasErrors(issues)) return { issues };
  const validated = validateBundle(exported.value);
  issues.push(...validated.issues);
  if (!validated.valid) return { issues };
  return { accepted: { exam: exam.id, bundle: toJson(exported.value) }, issues };
}
