import { append } from '../data/append.ts';
import { toJson } from '../fhir/json/to-json.ts';
import type { Issue } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import type { ExportOptions } from './options.ts';
import { masterDataKindOf } from './resources/master-data.ts';
import { type AnyBundle, prepareStoredCollection } from './to-bundle.ts';

/** The lines of one exam by type of resource, and what is to be said of it. */
export interface NdjsonPart {
  /** Id of the exam. */
  readonly exam: string;
  /** Lines without their ends, in order; none where the exam has an error. */
  readonly lines: ReadonlyMap<string, readonly string[]>;
  readonly issues: readonly Issue[];
}

/** As of `toBundle`, without what only bundles have. */
export type NdjsonOptions = Omit<ExportOptions, 'bundleType' | 'transaction'>;

/**
 * Exports exams for a bulk import, exam by exam, so that any number of them fits in memory. Each
 * resource is one line of JSON. A person, place or device that several exams share is written once,
 * as the first of these exams has it. References name type and id, as they resolve on a server that
 * keeps our ids.
 *
 * @param exams The exams to export, in order.
 * @param options As for `toBundle`, without the bundle type; `identity` is needed.
 * @returns One part for each exam: its lines by resource type, and its issues. An exam that cannot
 *   be exported gives no lines.
 * @example
 * const identity = 'https://clinic.example/records';
 * for (const { lines } of ndjsonParts([exam], { identity })) {
 *   for (const line of lines.get('Observation') ?? []) console.log(line);
 * }
 * @see https://hl7.org/fhir/uv/bulkdata/export.html#response---output-file-request
 */
export function* ndjsonParts(
  exams: Iterable<Exam>,
  options: NdjsonOptions = {},
): Generator<NdjsonPart, void, undefined> {
  const written = new Set<string>();
  const prepared = prepareStoredCollection(options);
  for (const exam of exams) {
    const { value, issues } = prepared.ok ? prepared.value(exam) : prepared;
    const lines = value === undefined ? new Map<string, string[]>() : linesOf(value, written);
    yield { exam: exam.id, lines, issues };
  }
}

/**
 * Exports exams like {@link ndjsonParts}, with the lines of all of them in memory.
 *
 * @param exams One exam, or several in order.
 * @param options As for `toBundle`, without the bundle type; `identity` is needed.
 * @returns The lines of all exams by resource type, and their issues, whose paths begin with the
 *   place of the exam. An exam that cannot be exported gives no lines.
 * @example
 * const identity = 'https://clinic.example/records';
 * const observations = toNdjson(exam, { identity }).lines.get('Observation')?.join('\n');
 */
export function toNdjson(
  exams: Exam | Iterable<Exam>,
  options: NdjsonOptions = {},
): { readonly lines: ReadonlyMap<string, readonly string[]>; readonly issues: readonly Issue[] } {
  const all = new Map<string, string[]>();
  const issues: Issue[] = [];
  const list = Symbol.iterator in exams ? exams : [exams];
  let at = 0;
  for (const part of ndjsonParts(list, options)) {
    for (const [type, lines] of part.lines) add(all, type, lines);
    append(
      issues,
      part.issues.map((one) => ({ ...one, path: [at, ...one.path] })),
    );
    at += 1;
  }
  return { lines: all, issues };
}

/** @param written people, places and devices written so far, which several exams share */
function linesOf(bundle: AnyBundle, written: Set<string>): Map<string, string[]> {
  const lines = new Map<string, string[]>();
  const types = new Map<string, string>();
  const resources = (bundle.entry ?? []).flatMap(({ fullUrl, resource }) => {
    if (resource === undefined) return [];
    if (fullUrl !== undefined) types.set(fullUrl, `${resource.resourceType}/${resource.id}`);
    return [resource];
  });
  for (const resource of resources) {
    if (masterDataKindOf(resource.resourceType) !== undefined) {
      if (written.has(resource.id ?? '')) continue;
      written.add(resource.id ?? '');
    }
    add(lines, resource.resourceType, [withPlaces(toJson(resource), types)]);
  }
  return lines;
}

/**
 * JSON in which each reference to an entry of the bundle names type and id. In a text the quotes are
 * escaped, so that what stands between these quotes is a property of that name.
 */
function withPlaces(json: string, places: ReadonlyMap<string, string>): string {
  return json.replace(/([{,]"reference":")(urn:uuid:[^"]*)(?=")/g, (whole, property, urn) => {
    const place = places.get(urn);
    return place === undefined ? whole : `${property}${place}`;
  });
}

function add(all: Map<string, string[]>, type: string, lines: readonly string[]): void {
  const known = all.get(type);
  if (known === undefined) all.set(type, [...lines]);
  else for (const line of lines) known.push(line);
}
