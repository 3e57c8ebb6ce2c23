import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { BundleIndex } from './bundle-index.ts';

/** What the specification says of links of bundles and of the results of a search. */

/** Links between the pages of a search; each can lead to one page alone. */
const paging: ReadonlySet<string> = new Set([
  ...['self', 'first', 'previous', 'prev', 'next', 'last'],
]);

const pagingRule = 'https://hl7.org/fhir/R4/http.html#paging';
const searchRule = 'https://hl7.org/fhir/R4/bundle.html#searchset';

/** Links of pages stand in what has pages, and no page has two next ones. */
export function checkLinks(bundle: JsonObject, { type }: BundleIndex, scope: Scope): void {
  const paged = type === 'searchset' || type === 'history';
  const met = new Set<string>();
  listOf(bundle['link']).forEach((link, at) => {
    const relation = isObject(link) ? textOf(link['relation']) : undefined;
    if (relation === undefined || !paging.has(relation)) return;
    const below = ['link', at, 'relation'];
    if (!paged && relation !== 'self') {
      report(scope, 'contradiction', { reason: 'pages' }, { rule: pagingRule }, below);
    } else if (paged && met.has(relation)) {
      const facts = { reason: 'relation', code: relation } as const;
      report(scope, 'too-many', facts, { rule: pagingRule }, below);
    }
    met.add(relation);
  });
}

/** Entries of a search: each has a resource with an id, and a mode that fits it. */
export function checkSearchSet(bundle: JsonObject, index: BundleIndex, scope: Scope): void {
  const wanted = searchedType(bundle, scope);
  objectsOf(bundle['entry']).forEach((entry, at) => {
    const resource = index.entries[at]?.resource;
    // That there is none is told by bdl-5.
    if (resource === undefined) return;
    const mode = isObject(entry['search']) ? textOf(entry['search']['mode']) : undefined;
    checkResult(resource, mode, wanted, scope, ['entry', at, 'resource']);
  });
}

/** The type that the search asked for, by its own link; a search of all types has none. */
function searchedType(bundle: JsonObject, { resourceTypes }: Scope): string | undefined {
  const self = objectsOf(bundle['link']).find(({ relation }) => relation === 'self');
  const [path = ''] = (textOf(self?.['url']) ?? '').split(/[?#]/);
  const steps = path.split('/');
  // An operation such as `$everything` answers with what it will.
  if (path.includes('$')) return undefined;
  const last = steps.at(-1) === '_search' ? steps.at(-2) : steps.at(-1);
  return last !== undefined && resourceTypes.has(last) ? last : undefined;
}

function checkResult(
  resource: JsonObject,
  mode: string | undefined,
  wanted: string | undefined,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const type = textOf(resource['resourceType']);
  const isOutcome = type === 'OperationOutcome';
  const other = wanted !== undefined && wanted !== type;
  const said = { rule: searchRule };
  if (resource['id'] === undefined && mode !== 'outcome' && !isOutcome) {
    report(scope, 'missing-property', { reason: 'search-id' }, said, [...below, 'id']);
  }
  if (mode === 'outcome' && !isOutcome) {
    report(scope, 'contradiction', { reason: 'search-outcome' }, said, below);
  } else if (other && mode === 'match') {
    report(scope, 'contradiction', { reason: 'search-type', type: wanted }, said, below);
  } else if (other && mode === undefined && !isOutcome) {
    const mild = { ...said, severity: 'warning' } as const;
    report(scope, 'contradiction', { reason: 'search-mode' }, mild, below);
  }
}
