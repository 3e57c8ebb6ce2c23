import { isObject, type JsonObject, listOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { Stage } from '../walk/stage.ts';
import type { BundleIndex } from './bundle-index.ts';
import { checkDocument } from './documents.ts';
import { checkMessage } from './messages.ts';
import { checkCircles } from './references.ts';
import { isAbsolute } from './resolve.ts';
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
  if (index.type === 'message') checkMessage(index, scope);
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
