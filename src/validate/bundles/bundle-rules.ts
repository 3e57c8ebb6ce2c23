import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { report, type Said, type Scope } from '../walk/scope.ts';
import type { Stage } from '../walk/stage.ts';
import type { BundleIndex, Entry, Link } from './bundle-index.ts';
import { checkCircles } from './references.ts';
import { entryOf, isAbsolute } from './resolve.ts';
import { checkLinks, checkSearchSet } from './search-sets.ts';

/** The stage of bundles: what the specification says in words of entries and of their whole. */
export const bundleStage: Stage = {
  objects: {
    'Bundle.entry': checkEntry,
    Bundle: checkBundle,
  },
};

const page = 'https://hl7.org/fhir/R4/bundle.html';

function checkEntry(entry: JsonObject, scope: Scope): void {
  const { fullUrl } = entry;
  const type = scope.index?.type;
  const resource = isObject(entry['resource']) ? entry['resource'] : undefined;
  if (typeof fullUrl === 'string') {
    checkFullUrl(fullUrl, resource, scope);
  } else if (resource !== undefined && type !== undefined && !withoutUrls.has(type)) {
    report(
      scope,
      'missing-property',
      { reason: 'full-url' },
      {
        rule: `${page}#bundle-unique`,
      },
      ['fullUrl'],
    );
  }
  if (isObject(entry['request']) && (type === 'transaction' || type === 'batch')) {
    checkRequest(entry['request'], resource, scope);
  }
}

/** In these an entry need not say where its resource stands. */
const withoutUrls: ReadonlySet<string> = new Set([
  'transaction',
  'batch',
  'transaction-response',
  'batch-response',
]);

const restUrl = /^https?:\/\/\S+\/([A-Z][A-Za-z]+)\/([A-Za-z0-9\-.]{1,64})$/;

function checkFullUrl(fullUrl: string, resource: JsonObject | undefined, scope: Scope): void {
  if (!isAbsolute(fullUrl)) {
    report(
      scope,
      'invalid-value',
      { reason: 'full-url' },
      {
        rule: `${page}#bundle-unique`,
        value: fullUrl,
      },
      ['fullUrl'],
    );
    return;
  }
  const [, type, id] = restUrl.exec(fullUrl) ?? [];
  if (type === undefined || resource === undefined) return;
  if (type === resource['resourceType'] && id === resource['id']) return;
  // The last two steps of any URL can look so; those of a server begin with a type that FHIR has.
  if (!scope.resourceTypes.has(type)) return;
  report(
    scope,
    'contradiction',
    {
      reason: 'full-url',
      type: textOf(resource['resourceType']) ?? '',
    },
    {
      rule: 'https://hl7.org/fhir/R4/bundle-definitions.html#Bundle.entry.fullUrl',
      value: fullUrl,
    },
    ['fullUrl'],
  );
}

/** A request must name what it sends: the type and id of an update, the type of a creation. */
function checkRequest(request: JsonObject, resource: JsonObject | undefined, scope: Scope): void {
  const method = textOf(request['method']);
  const url = textOf(request['url']);
  if (url === undefined || resource === undefined || url.includes('$')) return;
  const [path = '', query] = url.split('?');
  const steps = path.split('/');
  const conditional = query !== undefined;
  const { resourceType, id } = resource;
  if (
    method === 'PUT' &&
    !namesResource(steps, conditional ? [resourceType] : [resourceType, id])
  ) {
    report(
      scope,
      'contradiction',
      { reason: 'request-update' },
      {
        rule: 'https://hl7.org/fhir/R4/http.html#update',
        value: url,
      },
      ['request', 'url'],
    );
  } else if (method === 'POST' && !namesResource(steps, [resourceType])) {
    report(
      scope,
      'contradiction',
      { reason: 'request-create', type: knownType(resourceType, scope) },
      {
        rule: 'https://hl7.org/fhir/R4/http.html#create',
        value: url,
      },
      ['request', 'url'],
    );
  }
}

/** A type that there is; any other text is the data's own. */
function knownType(type: unknown, { resourceTypes }: Scope): string | undefined {
  const name = textOf(type);
  return name !== undefined && resourceTypes.has(name) ? name : undefined;
}

/** Whether a URL ends in these steps. */
function namesResource(steps: readonly string[], wanted: readonly unknown[]): boolean {
  return wanted.every((step, at) => steps[steps.length - wanted.length + at] === step);
}

function checkBundle(bundle: JsonObject, scope: Scope): void {
  const { index } = scope;
  if (index?.bundle !== bundle) return;
  checkCircles(index, scope);
  if (index.type === 'transaction') checkIdentities(index, scope);
  if (index.type === 'document') checkDocument(index, scope);
  checkLinks(bundle, index, scope);
  if (index.type === 'searchset') checkSearchSet(bundle, index, scope);
}

/** No resource may be changed twice in one transaction. */
function checkIdentities({ entries, bundle }: BundleIndex, scope: Scope): void {
  const seen = new Set<string>();
  const holders = listOf(bundle['entry']);
  for (const { number } of entries) {
    const holder = holders[number];
    const request = isObject(holder) && isObject(holder['request']) ? holder['request'] : undefined;
    const method = textOf(request?.['method']);
    const url = textOf(request?.['url']);
    if (url === undefined || (method !== 'PUT' && method !== 'PATCH' && method !== 'DELETE'))
      continue;
    if (seen.has(url)) {
      report(
        scope,
        'duplicate-key',
        { reason: 'transaction' },
        {
          rule: 'https://hl7.org/fhir/R4/http.html#transaction',
          value: url,
        },
        ['entry', number, 'request', 'url'],
      );
    }
    seen.add(url);
  }
}

const documents = 'https://hl7.org/fhir/R4/documents.html#content';

function checkDocument(index: BundleIndex, scope: Scope): void {
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

function checkReferences(
  value: unknown,
  index: BundleIndex,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  objectsOf(value).forEach((each, number) => {
    const reference = textOf(
      isObject(each['reference']) ? each['reference']['reference'] : each['reference'],
    );
    // Those of urn: are told by the stage of references.
    if (reference === undefined || /^(?:urn:|#)/.test(reference)) return;
    // The composition is the first entry; what stands under another URL is told with the reference.
    if (entryOf(reference, index, 0) || index.byTypeAndId.has(reference)) return;
    const place = Array.isArray(value) ? [...below, number] : below;
    const said: Said = {
      rule: documents,
      value: reference,
    };
    report(scope, 'unresolved-reference', { reason: 'document' }, said, [...place, 'reference']);
  });
}
