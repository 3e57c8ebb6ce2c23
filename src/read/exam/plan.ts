import { append } from '../../data/append.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import type { PlanItem } from '../../model/conclusion.ts';
import type { Key } from '../../model/primitive.ts';
import {
  claimEqual,
  dateOf,
  type Element,
  innerOf,
  innersOf,
  lookAt,
  textOf,
  wordOf,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, claimReferences } from '../bundle/reference.ts';
import { ownCode, ownTable, ownValue, ownWords } from '../observation/concept.ts';
import { byKey, filled } from '../observation/values.ts';
import { type ExamReading, otherIdentifiers } from '../reading.ts';

const kinds = ['review', 'referral', 'investigation', 'treatment'] as const;
const urgencies = ['routine', 'urgent', 'asap', 'stat'] as const;

/** The items of the plan that stand in ServiceRequests, in the order of the bundle; a search set has none. */
export function readRequests(
  reading: ExamReading,
  parts: ReadonlyMap<string, Entry>,
  bundleType: unknown,
): PlanItem[] {
  const prefix = partName.plan('');
  const found = [...parts].flatMap(([name, entry]) =>
    entry.type === 'ServiceRequest' && name.startsWith(prefix)
      ? (readRequest(reading, name.slice(prefix.length), entry) ?? [])
      : [],
  );
  return bundleType === 'searchset' ? found.sort(byKey) : found;
}

function readRequest(reading: ExamReading, key: Key, entry: Entry): PlanItem | undefined {
  const { resource } = entry;
  return resource.claims.attempt(() => {
    claimRequest(reading, key, entry);
    const [category] = innersOf(resource, 'category');
    const stated = ownValue(reading, category, 'plan');
    const kind = kinds.find((known) => known === stated);
    const text = textIn(resource);
    if (kind === undefined || text === undefined) return undefined;
    const urgency = wordOf(resource, 'priority', urgencies);
    const due = dateOf(resource, 'occurrenceDateTime');
    const reasons = filled(reasonsOf(reading, entry));
    const [note] = innersOf(resource, 'note');
    const guideline = note && textOf(note, 'text');
    return {
      key,
      kind,
      text,
      ...(urgency !== undefined && { urgency }),
      ...(due !== undefined && { due }),
      ...performerOf(reading, resource),
      ...(reasons && { reasons }),
      ...(guideline !== undefined && { guideline }),
    };
  });
}

function claimRequest(reading: ExamReading, key: Key, entry: Entry): void {
  const { resource } = entry;
  const { people, recorded } = reading;
  claimFrame(reading, entry, resourceName.plan(key));
  otherIdentifiers(reading, resource, partName.plan(key));
  claimEqual(
    resource,
    'status',
    reading.status === 'entered-in-error' ? 'entered-in-error' : 'active',
  );
  claimEqual(resource, 'intent', 'plan');
  if (recorded !== undefined) claimEqual(resource, 'authoredOn', recorded);
  const subject = lookAt(resource, 'subject');
  if (subject && people.isSubject(subject, entry)) claimReference(reading, resource, 'subject');
  const visit = lookAt(resource, 'encounter');
  if (visit && people.isEncounter(visit, entry)) claimReference(reading, resource, 'encounter');
  const requester = lookAt(resource, 'requester');
  const examiner = requester && people.examinerOf(requester, entry);
  if (examiner !== undefined && examiner === people.examiners[0]?.key) {
    claimReference(reading, resource, 'requester');
  }
}

/** `code` is a concept in R4, and a reference or concept in R5. */
function textIn(resource: Element): string | undefined {
  const code = innerOf(resource, 'code');
  return code && textOf(innerOf(code, 'concept') ?? code, 'text');
}

/** `reasonReference` in R4, `reason.reference` in R5. */
function reasonsOf(reading: ExamReading, entry: Entry): Key[] {
  const { resource } = entry;
  const known = (reference: Element): Key | undefined => reading.statementOf(reference, entry);
  const r4 = claimReferences(reading, resource, 'reasonReference', known);
  if (r4.length > 0) return r4;
  return innersOf(resource, 'reason').flatMap((reason) => {
    const reference = lookAt(reason, 'reference');
    const key = reference && known(reference);
    if (key === undefined) return [];
    claimReference(reading, reason, 'reference');
    return [key];
  });
}

function performerOf(reading: ExamReading, resource: Element): Pick<PlanItem, 'to' | 'service'> {
  const concept = innerOf(resource, 'performerType');
  if (concept === undefined) return {};
  const service = ownTable(reading, concept, ['services'])?.code;
  if (service === undefined) {
    const to = textOf(concept, 'text');
    return to === undefined ? {} : { to };
  }
  ownCode(reading, concept, 'services');
  const to = ownWords(concept, reading.catalogue.services.get(service)?.display);
  return { service, ...(to !== undefined && { to }) };
}

/** Advice knows its place in the plan; the requests fill the places left, in their order. */
export function planInOrder(
  advice: readonly { readonly at: number; readonly item: PlanItem }[],
  requests: readonly PlanItem[],
): PlanItem[] {
  const waiting = [...requests];
  const plan: PlanItem[] = [];
  for (const { at, item } of [...advice].sort((a, b) => a.at - b.at)) {
    append(plan, waiting.splice(0, at - plan.length));
    plan.push(item);
  }
  return [...plan, ...waiting];
}
