import { fhirVersions } from '../../fhir/version.ts';
import { has, hasPart, isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import { beforeR5, type Invariant, rules } from './invariant.ts';

/** Invariants of Bundle and its entries. */
export const bundleInvariants: readonly Invariant[] = [
  ...rules(fhirVersions, [
    [
      'bdl-1',
      'a total stands only in search sets and histories',
      (it) => !has(it, 'total') || isType(it, 'searchset', 'history'),
    ],
    [
      'bdl-2',
      'search stands only in search sets',
      (it) => isType(it, 'searchset') || everyEntry(it, (entry) => !hasPart(entry, 'search')),
    ],
    [
      'bdl-5',
      'an entry needs a resource, a request or a response',
      (it) => hasPart(it, 'resource') || hasPart(it, 'request') || hasPart(it, 'response'),
    ],
    [
      'bdl-7',
      'two entries have the same fullUrl and version',
      (it) => isType(it, 'history') || urlsDiffer(it),
    ],
    [
      'bdl-8',
      'a fullUrl cannot name a version',
      (it) => !textOf(it['fullUrl'])?.includes('/_history/'),
    ],
    [
      'bdl-9',
      'a document needs an identifier with system and value',
      (it) => holdsOf(it, ['document'], () => isIdentified(it)),
    ],
    [
      'bdl-10',
      'a document needs a timestamp',
      (it) => holdsOf(it, ['document'], () => typeof it['timestamp'] === 'string'),
    ],
    [
      'bdl-11',
      'the first entry of a document must be a Composition',
      (it) => begins(it, 'document', 'Composition'),
    ],
    [
      'bdl-12',
      'the first entry of a message must be a MessageHeader',
      (it) => begins(it, 'message', 'MessageHeader'),
    ],
  ]),
  ...rules(beforeR5, [
    [
      'bdl-3',
      'requests stand in every entry of a batch, transaction or history, and nowhere else',
      (it) => {
        const wanted = isType(it, 'batch', 'transaction', 'history');
        return everyEntry(it, (entry) => isTyped(it) && hasPart(entry, 'request') === wanted);
      },
    ],
    [
      'bdl-4',
      'responses stand in every entry of a response or history, and nowhere else',
      (it) => {
        const wanted = isType(it, 'batch-response', 'transaction-response', 'history');
        return everyEntry(it, (entry) => isTyped(it) && hasPart(entry, 'response') === wanted);
      },
    ],
  ]),
  ...rules(
    ['R5'],
    [
      [
        'bdl-3a',
        'entries of this type of bundle have a resource, no request and no response',
        (it) =>
          holdsOf(it, ['document', 'message', 'searchset', 'collection'], () =>
            everyEntry(
              it,
              (entry) =>
                hasPart(entry, 'resource') &&
                !hasPart(entry, 'request') &&
                !hasPart(entry, 'response'),
            ),
          ),
      ],
      [
        'bdl-3b',
        'entries of a history have a request and a response, and a resource where the method sends one',
        (it) =>
          holdsOf(it, ['history'], () =>
            everyEntry(
              it,
              (entry) =>
                hasPart(entry, 'request') &&
                hasPart(entry, 'response') &&
                sends(entry) === hasPart(entry, 'resource'),
            ),
          ),
      ],
      [
        'bdl-3c',
        'entries of a batch or transaction have a request, and a resource where the method sends one',
        (it) =>
          holdsOf(it, ['transaction', 'batch'], () =>
            everyEntry(
              it,
              (entry) =>
                methodOf(entry) !== undefined && sends(entry) === hasPart(entry, 'resource'),
            ),
          ),
      ],
      [
        'bdl-3d',
        'entries of a response have a response',
        (it) =>
          holdsOf(it, ['transaction-response', 'batch-response'], () =>
            everyEntry(it, (entry) => hasPart(entry, 'response')),
          ),
      ],
      [
        'bdl-13',
        'the first entry of a subscription notification must be a SubscriptionStatus',
        (it) => begins(it, 'subscription-notification', 'SubscriptionStatus'),
      ],
      [
        'bdl-14',
        'a history holds no PATCH',
        (it) => holdsOf(it, ['history'], () => hasOtherThanPatch(it)),
      ],
      [
        'bdl-15',
        'every entry needs a fullUrl, unless it is posted',
        (it) =>
          isType(it, 'transaction', 'transaction-response', 'batch', 'batch-response') ||
          everyEntry(it, (entry) => has(entry, 'fullUrl') || methodOf(entry) === 'POST'),
      ],
      ['bdl-16', 'issues of a bundle are information or warnings', issuesAreMild],
      [
        'bdl-17',
        'a document holds no issues',
        (it) => holdsOf(it, ['document'], () => !hasPart(it, 'issues')),
      ],
      [
        'bdl-18',
        'a search set needs a link to itself',
        (it) =>
          holdsOf(it, ['searchset'], () =>
            objectsOf(it['link']).some((link) => link['relation'] === 'self' && has(link, 'url')),
          ),
      ],
    ],
  ),
];

function isType(bundle: JsonObject, ...types: readonly string[]): boolean {
  const type = textOf(bundle['type']);
  return type !== undefined && types.includes(type);
}

function isTyped(bundle: JsonObject): boolean {
  return textOf(bundle['type']) !== undefined;
}

/**
 * What must be true of bundles of these types. Without a type the published `type = … implies …` is
 * true only where the rest is.
 */
function holdsOf(bundle: JsonObject, types: readonly string[], holds: () => boolean): boolean {
  return (isTyped(bundle) && !isType(bundle, ...types)) || holds();
}

function everyEntry(bundle: JsonObject, holds: (entry: JsonObject) => boolean): boolean {
  return objectsOf(bundle['entry']).every(holds);
}

function urlsDiffer(bundle: JsonObject): boolean {
  const seen = new Set<string>();
  return everyEntry(bundle, ({ fullUrl, resource }) => {
    if (typeof fullUrl !== 'string') return true;
    const meta = isObject(resource) ? resource['meta'] : undefined;
    const version = isObject(meta) ? (textOf(meta['versionId']) ?? '') : '';
    const key = fullUrl + version;
    const known = seen.has(key);
    seen.add(key);
    return !known;
  });
}

function isIdentified({ identifier }: JsonObject): boolean {
  return isObject(identifier) && has(identifier, 'system') && has(identifier, 'value');
}

function begins(bundle: JsonObject, type: string, resourceType: string): boolean {
  return holdsOf(bundle, [type], () => {
    const [first] = objectsOf(bundle['entry']);
    return isObject(first?.['resource']) && first['resource']['resourceType'] === resourceType;
  });
}

function methodOf({ request }: JsonObject): string | undefined {
  return isObject(request) ? textOf(request['method']) : undefined;
}

function sends(entry: JsonObject): boolean {
  const method = methodOf(entry);
  return method === 'POST' || method === 'PATCH' || method === 'PUT';
}

/** The published expression compares a list with one word: it fails for a single PATCH and for none. */
function hasOtherThanPatch(bundle: JsonObject): boolean {
  const methods = objectsOf(bundle['entry']).flatMap((entry) => methodOf(entry) ?? []);
  return methods.length > 1 || (methods.length === 1 && methods[0] !== 'PATCH');
}

function issuesAreMild({ issues }: JsonObject): boolean {
  if (issues === undefined) return true;
  const severities = isObject(issues)
    ? objectsOf(issues['issue']).map(({ severity }) => severity)
    : [];
  return (
    severities.length === 1 && (severities[0] === 'information' || severities[0] === 'warning')
  );
}
