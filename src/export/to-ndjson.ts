import { append } from '../append.ts';
import { toJson } from '../fhir/json/to-json.ts';
import { withReferences } from '../fhir/references.ts';
import type { Issue } from '../issue.ts';
import type { Exam } from '../model/exam.ts';
import type { ExportOptions } from './options.ts';
import { masterDataKindOf } from './resources/master-data.ts';
import { type AnyBundle, toBundle } from './to-bundle.ts';

/** The lines of one exam by type of resource, and what is to be said of it. */
export interface NdjsonPart {
  readonly exam: string;
  /** Lines without their ends, in order; none where the exam has an error. */
  readonly lines: ReadonlyMap<string, readonly string[]>;
  readonly issues: readonly Issue[];
}

export type NdjsonOptions = Omit<ExportOptions, 'bundleType' | 'transaction'>;

/**
 * The resources of exams for a bulk import, one line of JSON each, exam by exam so that any number of
 * them fits in memory. A person, place or device that several exams share is written once, as the
 * first exam of these has it. References name type and id, as they resolve on a server that keeps our ids.
 * The lines of one type, each with a line feed, make the file of that type.
 * @see https://hl7.org/fhir/uv/bulkdata/export.html#response---output-file-request
 */
export function* ndjsonParts(
  exams: Iterable<Exam>,
  options: NdjsonOptions = {},
): Generator<NdjsonPart, void, undefined> {
  const written = new Set<string>();
  for (const exam of exams) {
    const { value, issues } = toBundle(exam, { ...options, bundleType: 'collection' });
    const lines = value === undefined ? new Map<string, string[]>() : linesOf(value, written);
    yield { exam: exam.id, lines, issues };
  }
}

/** The same as one, with the lines of all exams by type; issues have the place of the exam before them. */
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
    add(lines, resource.resourceType, [toJson(withReferences(resource, (urn) => types.get(urn)))]);
  }
  return lines;
}

function add(all: Map<string, string[]>, type: string, lines: readonly string[]): void {
  const known = all.get(type);
  if (known === undefined) all.set(type, [...lines]);
  else for (const line of lines) known.push(line);
}
