import { type Issue, issue } from '../issue.ts';
import type { Exam } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import type { Path } from '../path.ts';
import { createContext } from './context.ts';
import type { ExportOptions } from './options.ts';
import { type AnyResource, examResources } from './resources.ts';

/** Types of resources that say something of the patient and have a status to take it back by. */
const retractable: ReadonlySet<string> = new Set([
  'Observation',
  'ServiceRequest',
  'Media',
  'DocumentReference',
]);

/**
 * What an earlier version of the exam held and `current` no longer holds, as entered in error, with
 * the resources that it refers to and `current` has not. A transaction only writes; without these a
 * server would go on showing them.
 * @see https://hl7.org/fhir/R4/lifecycle.html
 */
export function withdrawnResources(
  current: readonly AnyResource[],
  previous: Exam,
  options: ExportOptions,
): AnyResource[] {
  const sent = examResources(createContext(previous, options), { document: false });
  const earlier = new Map(sent.map((resource) => [resource.id, resource]));
  const held = new Set(current.map(({ id }) => id));
  const taken = new Set<AnyResource>();
  const take = (resource: AnyResource): void => {
    if (taken.has(resource) || held.has(resource.id)) return;
    taken.add(resource);
    for (const id of referredTo(resource)) {
      const target = earlier.get(id);
      if (target !== undefined) take(target);
    }
  };
  for (const resource of earlier.values()) {
    if (retractable.has(resource.resourceType)) take(resource);
  }
  return [...taken].map(asError);
}

function asError(resource: AnyResource): AnyResource {
  if (!retractable.has(resource.resourceType)) return resource;
  // Each of these types has this status in all versions.
  return { ...resource, status: 'entered-in-error' } as AnyResource;
}

/** Ids of resources of the same bundle. */
function referredTo(resource: AnyResource): string[] {
  const text = JSON.stringify(resource);
  return [...text.matchAll(/"reference":"urn:uuid:([^"]+)"/g)].map(([, id = '']) => id);
}

/** Why an earlier version can not be used: it has faults, or is another exam. */
export function previousIssues(exam: Exam | undefined, options: ExportOptions): Issue[] {
  const { previous, catalogue, includeValues = false } = options;
  if (previous === undefined) return [];
  const settings = { ...(catalogue && { catalogue }), includeValues };
  const { value, issues } = parseExam(previous, settings);
  const found = issues
    .filter(({ severity }) => severity === 'error')
    .map((fault): Issue => ({ ...fault, path: inPrevious(fault.path) }));
  if (value === undefined || exam === undefined || value.id === exam.id) return found;
  const message = 'the version sent before is of another exam';
  return [
    ...found,
    issue('invalid-value', inPrevious(['id']), message, { expected: 'the same id' }),
  ];
}

function inPrevious(path: Path): Path {
  return ['previous', ...path];
}
