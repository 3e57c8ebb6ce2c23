import { isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import { report, type Said, type Scope } from '../walk/scope.ts';
import type { BundleIndex, Entry, Link } from './bundle-index.ts';
import { entryOf } from './resolve.ts';

const documents = 'https://hl7.org/fhir/R4/documents.html#content';

/** What a document says of its entries: that its composition leads to them, and they are there. */
export function checkDocument(index: BundleIndex, scope: Scope): void {
  const [first] = index.entries;
  if (first?.resource?.['resourceType'] !== 'Composition') return;
  checkNamed(first.resource, index, scope);
  const forward = reachable(first, ({ links }) => links);
  const anyWay = reachableAnyWay(index, forward);
  for (const entry of index.entries) {
    if (forward.has(entry) || entry.resource === undefined) continue;
    const below = ['entry', entry.number];
    if (!anyWay.has(entry)) {
      sayOrphan(scope, below, 'error');
    } else if (entry.resource['resourceType'] !== 'Provenance') {
      // Only what refers to the content of the document may come along without being referred to.
      sayOrphan(scope, below, 'warning');
    }
  }
}

function sayOrphan(
  scope: Scope,
  below: readonly (string | number)[],
  severity: 'error' | 'warning',
): void {
  report(
    scope,
    'unreachable-entry',
    { reason: 'composition' },
    {
      severity,
      rule: documents,
    },
    below,
  );
}

function reachable(start: Entry, linksOf: (entry: Entry) => readonly Link[]): Set<Entry> {
  const found = new Set([start]);
  const open = [start];
  for (let entry = open.pop(); entry !== undefined; entry = open.pop()) {
    for (const { to } of linksOf(entry)) {
      if (found.has(to)) continue;
      found.add(to);
      open.push(to);
    }
  }
  return found;
}

/** Entries that lead to one of the document, or are led to by such an entry. */
function reachableAnyWay({ entries }: BundleIndex, from: ReadonlySet<Entry>): Set<Entry> {
  const back = new Map<Entry, Entry[]>();
  for (const entry of entries) {
    for (const { to } of entry.links) {
      const list = back.get(to);
      if (list === undefined) back.set(to, [entry]);
      else list.push(entry);
    }
  }
  const found = new Set(from);
  const open = [...from];
  for (let entry = open.pop(); entry !== undefined; entry = open.pop()) {
    const near = [...(back.get(entry) ?? []), ...entry.links.map(({ to }) => to)];
    for (const next of near) {
      if (found.has(next)) continue;
      found.add(next);
      open.push(next);
    }
  }
  return found;
}

/** Elements of a Composition whose targets must come with the document. */
const named = ['subject', 'encounter', 'author', 'custodian'] as const;

function checkNamed(composition: JsonObject, index: BundleIndex, scope: Scope): void {
  const at = ['entry', 0, 'resource'];
  for (const name of named) checkReferences(composition[name], index, scope, [...at, name]);
  objectsOf(composition['attester']).forEach((attester, number) => {
    checkReferences(attester['party'], index, scope, [...at, 'attester', number, 'party']);
  });
  objectsOf(composition['event']).forEach((event, number) => {
    checkReferences(event['detail'], index, scope, [...at, 'event', number, 'detail']);
  });
  checkSections(composition['section'], index, scope, [...at, 'section']);
}

function checkSections(
  sections: unknown,
  index: BundleIndex,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  objectsOf(sections).forEach((section, number) => {
    const place = [...below, number];
    checkReferences(section['entry'], index, scope, [...place, 'entry']);
    checkReferences(section['focus'], index, scope, [...place, 'focus']);
    checkSections(section['section'], index, scope, [...place, 'section']);
  });
}

/** Whether what stands in the first entry leads to entries of the bundle. */
export function checkReferences(
  value: unknown,
  index: BundleIndex,
  scope: Scope,
  below: readonly (string | number)[],
  reason: 'document' | 'message' = 'document',
  rule: string = documents,
): void {
  objectsOf(value).forEach((each, number) => {
    const reference = textOf(
      isObject(each['reference']) ? each['reference']['reference'] : each['reference'],
    );
    // Those of urn: are told by the stage of references.
    if (reference === undefined || /^(?:urn:|#)/.test(reference)) return;
    // What refers is the first entry; what stands under another URL is told with the reference.
    if (entryOf(reference, index, 0) || index.byTypeAndId.has(reference)) return;
    const place = Array.isArray(value) ? [...below, number] : below;
    const said: Said = { rule, value: reference };
    report(scope, 'unresolved-reference', { reason }, said, [...place, 'reference']);
  });
}
