import type { Issue } from '../../issues/issue.ts';
import type { Key } from '../../model/primitive.ts';
import { issue } from '../issue.ts';
import type { FhirExam } from '../mapping/fhir-mapping.ts';
import { textAt } from './group/piece.ts';
import { type BundleText, nodeAt } from './read-unit.ts';

/** Longest key of an exam. */
const LONGEST = 200;

/** An id for an exam, or why there can be none. */
export type GivenId = { readonly id: Key } | { readonly problem: Issue };

/**
 * The id of an exam that this library did not write: the name of the system, a full stop, and type and
 * id of the report, or of the first observation where there is no report. Without an id the resource is
 * known by the end of its `fullUrl`. Its place in the bundle is no id, since that of another person can
 * stand there the next time; neither is an id without the name of its system.
 * @param found Id by which the reader knows the exam: `Type/id`, or type and place of the resource.
 */
export function idOfForeign(found: Key, text: BundleText, exam: FhirExam = {}): GivenId {
  const { prefix } = exam;
  const name = nameOf(found, text);
  if (name === undefined) {
    return { problem: issue('missing-property', [], { reason: 'resource-id' }) };
  }
  if (prefix === undefined) {
    return { problem: issue('missing-property', [], { reason: 'system-name' }) };
  }
  const id = `${prefix}.${name}`;
  if (id.length <= LONGEST) return { id };
  return { problem: issue('too-large', [], { reason: 'exam-id' }) };
}

function nameOf(found: Key, { node }: BundleText): Key | undefined {
  const [, type, place] = /^([A-Za-z]+)\/entry\.(\d+)\.resource$/.exec(found) ?? [];
  if (type === undefined || place === undefined) return found;
  const entry = nodeAt(node, ['entry', Number(place)]);
  // A resource may have such an id.
  if (`${type}/${textAt(nodeAt(entry, ['resource']), 'id')}` === found) return found;
  const address = textAt(entry, 'fullUrl') ?? '';
  const [, id] = /(?:^urn:uuid:|\/)([A-Za-z0-9\-.]{1,64})$/.exec(address) ?? [];
  return id === undefined ? undefined : `${type}/${id}`;
}
