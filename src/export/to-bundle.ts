import type { Bundle, BundleEntry, Identifier, Meta } from 'fhir/r4.js';
import type * as r4b from 'fhir/r4b.js';
import type * as r5 from 'fhir/r5.js';
import { append } from '../data/append.ts';
import { labelsOf } from '../fhir/filing.ts';
import { licenceIssues } from '../fhir/licence/licence-gate.ts';
import { fixedPolicy, snomedPolicyIssues } from '../fhir/licence/snomed-policy.ts';
import { resourceName } from '../fhir/names/resource-names.ts';
import { searchToken } from '../fhir/names/search-token.ts';
import { within } from '../issues/budget.ts';
import {
  failure,
  hasErrors,
  type Issue,
  issue,
  type Outcome,
  orThrow,
  success,
} from '../issues/issue.ts';
import { endedIssue } from '../issues/issue-list.ts';
import type { Exam } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import { callerCodingIssues } from './coding/caller-codings.ts';
import { codeMapRemark } from './coding/code-map-policy.ts';
import { inLanguageOf } from './coding/language-tags.ts';
import {
  type AnyResource,
  createContext,
  type ExportContext,
  type ExportSettings,
  exportSettings,
} from './context.ts';
import { notTakenBack, previousIssues, resourcesSent } from './history/previous.ts';
import { withdrawnResources } from './history/withdrawn.ts';
import { optionIssues } from './option-issues.ts';
import type { ExportOptions } from './options.ts';
import { examResources } from './resources/exam-resources.ts';
import { leftBehind, unnamedRecords } from './resources/existing.ts';
import { masterDataKindOf, masterDataMode } from './resources/master-data.ts';
import { claiming, fittedTo, targetIssues } from './target/claims.ts';
import { unfitting } from './unfitting.ts';
import { identityIssues, patientIssues } from './whose.ts';

/** A bundle of the version that was asked for. */
export type AnyBundle = Bundle | r4b.Bundle | r5.Bundle;

/**
 * Exports an exam as a FHIR bundle. The exam is checked first, as by `parseExam`. The same exam and
 * options give the same bytes once written with `toJson`.
 *
 * @param exam The exam to export.
 * @param options Version, bundle type, SNOMED CT policy and identifiers; see {@link ExportOptions}.
 * @returns The bundle, with warnings beside it. It fails where the exam has an error, where it is a
 *   draft and `allowDraft` is not set, and where a code would leave that the policy does not allow.
 * @example
 * const outcome = toBundle(exam, { fhirVersion: 'R5', bundleType: 'document' });
 * if (outcome.ok) console.log(toJson(outcome.value, { pretty: true }));
 * @see https://hl7.org/fhir/R4/bundle.html
 */
export function toBundle(
  exam: Exam,
  options?: ExportOptions & { readonly fhirVersion?: 'R4' },
): Outcome<Bundle>;
export function toBundle(
  exam: Exam,
  options: ExportOptions & { readonly fhirVersion: 'R4B' },
): Outcome<r4b.Bundle>;
export function toBundle(
  exam: Exam,
  options: ExportOptions & { readonly fhirVersion: 'R5' },
): Outcome<r5.Bundle>;
export function toBundle(exam: Exam, options?: ExportOptions): Outcome<AnyBundle>;
export function toBundle(exam: Exam, options: ExportOptions = {}): Outcome<AnyBundle> {
  const { value: exporter, issues } = prepareExport(options);
  return exporter === undefined ? failure(issues) : exporter(exam);
}

/** Exports one exam after another with the same options. */
export type Exporter = (exam: Exam) => Outcome<AnyBundle>;

/**
 * Prepares the export of many exams: the options are checked and what follows from them is made once.
 * Each exam is then exported as by {@link toBundle}, on its own, so that any number of them needs the
 * memory of one.
 *
 * @param options As for `toBundle`; later changes of the object change nothing.
 * @returns The exporter, which gives for each exam what `toBundle` gives. It fails where the options
 *   are not what they have to be.
 * @example
 * const toR5 = orThrow('prepare the export', prepareExport({ fhirVersion: 'R5' }));
 * function* lines(exams: Iterable<Exam>): Generator<string> {
 *   for (const one of exams) {
 *     const { value } = toR5(one);
 *     if (value !== undefined) yield `${toJson(value)}\n`;
 *   }
 * }
 * // In Node: await pipeline(lines(exams), createWriteStream('bundles.ndjson'));
 * for (const line of lines([exam])) console.log(line);
 */
export function prepareExport(options: ExportOptions = {}): Outcome<Exporter> {
  return prepared(options, { stored: options?.bundleType === 'transaction' });
}

/**
 * The same for exams that `parseExam` has just accepted by the same catalogue, such as converted ones:
 * they are not checked a second time, and the issues are those of the export alone.
 */
export function prepareCheckedExport(options: ExportOptions): Outcome<Exporter> {
  return prepared(options, { stored: options.bundleType === 'transaction', isChecked: true });
}

/** The same for a server that stores the resources by other ways than a transaction. */
export function prepareStoredCollection(options: ExportOptions): Outcome<Exporter> {
  return prepared({ ...options, bundleType: 'collection' }, { stored: true });
}

interface Circumstances {
  /** The bundle is for a server that stores it. */
  readonly stored: boolean;
  /** `parseExam` has accepted the exams. */
  readonly isChecked?: true;
}

function prepared(options: ExportOptions, circumstances: Circumstances): Outcome<Exporter> {
  if (typeof options !== 'object' || options === null) {
    return failure([issue('wrong-type', [], { reason: 'not-an-object' })]);
  }
  const budgeted = <Value>(call: () => Outcome<Value>): Outcome<Value> =>
    within('exam', options.budget, call, (why) => failure([endedIssue(why)]));
  return budgeted(() => {
    const misfits = optionIssues(options);
    if (misfits.length > 0) return failure(misfits);
    const settings = exportSettings({
      ...options,
      snomed: fixedPolicy(options.snomed ?? 'free-set'),
    });
    return success((exam) => budgeted(() => exported(exam, settings, circumstances)));
  });
}

function exported(
  exam: Exam,
  settings: ExportSettings,
  { stored, isChecked }: Circumstances,
): Outcome<AnyBundle> {
  const { options } = settings;
  const { catalogue, includeValues = false, snomed = 'free-set', freeSet } = options;
  const parsed = isChecked
    ? success(exam)
    : parseExam(exam, { ...(catalogue && { catalogue }), includeValues });
  const issues = [
    ...parsed.issues,
    ...snomedPolicyIssues(snomed),
    ...identityIssues(options, stored),
    ...(parsed.value === undefined ? [] : patientIssues(parsed.value, stored)),
    ...previousIssues(parsed.value, options),
    ...(parsed.value === undefined ? [] : unnamedRecords(parsed.value, options)),
    ...unfitting(exam, options),
  ];
  if (parsed.value === undefined || hasErrors(issues)) return failure(issues);
  const fitted = fittedTo(options.target, parsed.value);
  append(issues, fitted.issues);
  const context = createContext(fitted.exam, settings);
  if (options.target !== undefined) append(issues, targetIssues(context, options.target));
  if (hasErrors(issues)) return failure(issues);
  append(issues, leftOut(context));
  append(issues, leftBehind(context));
  append(issues, notTakenBack(parsed.value, options));
  append(issues, callerCodingIssues(parsed.value, settings.rules));
  append(issues, codeMapRemark(options.codes, options));
  const made = bundleOf(context, settings);
  append(issues, made.issues);
  // Looks at what leaves and at nothing before it, so that no way into the bundle goes around it.
  const leaks = licenceIssues(made.bundle, snomed, {
    includeValues,
    ...(freeSet !== undefined && { freeSet }),
  });
  return leaks.length > 0 ? failure([...issues, ...leaks]) : success(made.bundle, issues);
}

/**
 * Exports an exam like {@link toBundle} and throws where that fails.
 *
 * @param exam The exam to export.
 * @param options As for `toBundle`.
 * @returns The bundle. Warnings are not returned; `toBundle` gives them.
 * @throws {IssueError} Where there is no bundle; it holds all issues.
 * @example
 * const document = toBundleOrThrow(exam, { bundleType: 'document' });
 */
export function toBundleOrThrow(
  exam: Exam,
  options?: ExportOptions & { readonly fhirVersion?: 'R4' },
): Bundle;
export function toBundleOrThrow(
  exam: Exam,
  options: ExportOptions & { readonly fhirVersion: 'R4B' },
): r4b.Bundle;
export function toBundleOrThrow(
  exam: Exam,
  options: ExportOptions & { readonly fhirVersion: 'R5' },
): r5.Bundle;
export function toBundleOrThrow(exam: Exam, options?: ExportOptions): AnyBundle;
export function toBundleOrThrow(exam: Exam, options?: ExportOptions): AnyBundle {
  return orThrow('export the exam as FHIR', toBundle(exam, options));
}

function leftOut({ leftOut: count }: ExportContext): Issue[] {
  if (count === 0) return [];
  const severity = 'information';
  return [issue('not-exported', ['statements'], { reason: 'detail', count }, { severity })];
}

interface Made {
  readonly bundle: AnyBundle;
  readonly issues: readonly Issue[];
}

function bundleOf(context: ExportContext, settings: ExportSettings): Made {
  const { options } = settings;
  const type = options.bundleType ?? 'collection';
  const { exam } = context;
  const last = exam.history?.at(-1);
  const own = examResources(context, { document: type === 'document' });
  const sent =
    type === 'transaction' && options.previous !== undefined
      ? resourcesSent(options.previous, settings)
      : undefined;
  const made = sent === undefined ? own : [...own, ...withdrawnResources(own, sent.resources)];
  const tag = options.language?.tag;
  const told = tag === undefined ? made : made.map((one) => inLanguageOf(one, tag));
  const labels = labelsOf(context.filing);
  const isLabelled = Object.keys(labels).length > 0;
  const resources = told.map((one) =>
    claiming(isLabelled ? labelled(one, labels) : one, options.target),
  );
  const bundle: Bundle = {
    resourceType: 'Bundle',
    id: context.id(resourceName.bundle(type)),
    ...headMeta(type === 'document' ? context.profile('face-neck-document') : {}, labels),
    ...(tag !== undefined && { language: tag }),
    ...(type === 'document' && {
      identifier: {
        ...context.examIdentifier,
        value: `${exam.id}|document|${last?.version ?? 0}`,
      },
    }),
    type,
    timestamp: last?.at ?? exam.recorded,
    entry: resources.map((resource) => {
      const entry = { fullUrl: `urn:uuid:${resource.id}`, resource };
      // One structure for all versions; each resource was made in the version asked for.
      if (type !== 'transaction') return entry as BundleEntry;
      return withRequest(entry, options, context) as BundleEntry;
    }),
  };
  return { bundle, issues: sent?.issues ?? [] };
}

/** What is not ours to describe is not ours to label. */
function labelled(resource: AnyResource, labels: Meta): AnyResource {
  if (masterDataKindOf(resource.resourceType) !== undefined) return resource;
  // Labels are alike in all versions; their typings differ in Extension alone.
  return { ...resource, ...headMeta(resource as { readonly meta?: Meta }, labels) } as AnyResource;
}

function headMeta({ meta }: { readonly meta?: Meta }, labels: Meta): { readonly meta?: Meta } {
  const all = { ...meta, ...labels };
  return Object.keys(all).length === 0 ? {} : { meta: all };
}

interface Entry {
  readonly fullUrl: string;
  readonly resource: AnyResource;
}

/**
 * The request that stores a resource so that sending again does no harm: an update by our own id, or
 * by its identifier where the server gives the ids; for what the server may hold already, a creation
 * that does nothing where it does. What has no identifier keeps our id.
 * @see https://hl7.org/fhir/R4/http.html#cond-update and https://hl7.org/fhir/R4/http.html#ccreate
 */
function withRequest(
  entry: Entry,
  { transaction = 'put', masterData }: ExportOptions,
  { systems }: ExportContext,
): object {
  const { resource } = entry;
  const { resourceType, id, ...content } = resource;
  const identifier = firstIdentifier(resource);
  const kind = masterDataKindOf(resourceType);
  // What is identified within the exam is nobody else's.
  const shared = identifier !== undefined && identifier.system !== systems.statement;
  const match = shared && kind !== undefined && masterDataMode(masterData, kind) !== 'own';
  if (identifier === undefined || (transaction === 'put' && !match)) {
    return { ...entry, request: { method: 'PUT', url: `${resourceType}/${id}` } };
  }
  const withoutId = { resourceType, ...content };
  const condition = `identifier=${searchToken(identifier)}`;
  const request = match
    ? { method: 'POST', url: resourceType, ifNoneExist: condition }
    : { method: 'PUT', url: `${resourceType}?${condition}` };
  return { ...entry, resource: withoutId, request };
}

function firstIdentifier(resource: AnyResource): Pick<Identifier, 'system' | 'value'> | undefined {
  if (!('identifier' in resource) || !Array.isArray(resource.identifier)) return undefined;
  const [first] = resource.identifier;
  return first?.value === undefined ? undefined : first;
}
