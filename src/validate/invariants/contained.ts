import { fhirVersions } from '../../fhir/version.ts';
import { containedById } from '../bundles/resolve.ts';
import { has, hasPart, isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';
import { type Invariant, rules } from './invariant.ts';

/** Invariants on contained resources and on references to them. */
export const containedInvariants: readonly Invariant[] = [
  ...rules(fhirVersions, [
    [
      'dom-2',
      'a contained resource contains another',
      (it) => objectsOf(it['contained']).every((inner) => !hasPart(inner, 'contained')),
    ],
    [
      'dom-3',
      'a contained resource that nothing refers to',
      (it, { definitions }) =>
        !hasPart(it, 'contained') || allReferredTo(it, definitions.fhirVersion === 'R4B'),
    ],
    [
      'dom-4',
      'a contained resource has a version or time of its own',
      (it) =>
        metaOfContained(it).every((meta) => !has(meta, 'versionId') && !has(meta, 'lastUpdated')),
    ],
    [
      'dom-5',
      'a contained resource has a security label of its own',
      (it) => metaOfContained(it).every((meta) => !hasPart(meta, 'security')),
    ],
  ]),
  ...rules(
    fhirVersions,
    [
      [
        'dom-6',
        'no narrative for people to read',
        // A contained resource is read with the one around it.
        (it, scope) => scope.root !== it || (isObject(it['text']) && has(it['text'], 'div')),
      ],
    ],
    'warning',
  ),
  ...rules(fhirVersions, [
    [
      'ref-1',
      'a local reference to no contained resource',
      // R4's expression forgot `#` for the resource around; R4B and R5 have it.
      (it, scope) =>
        resolvesInside(it, scope) || (it['reference'] === '#' && scope.root !== scope.resource),
    ],
  ]),
  {
    key: 'dom-r4b',
    versions: ['R4B'],
    severity: 'warning',
    says: 'a resource that is new in R4B, in one that R4 has too',
    holds: (value, scope) => !isObject(value) || isNew(scope.resource) || !isNew(value),
  },
];

function metaOfContained(it: JsonObject): JsonObject[] {
  return objectsOf(it['contained']).flatMap((inner) => objectsOf(inner['meta']));
}

function resolvesInside({ reference }: JsonObject, scope: Scope): boolean {
  if (typeof reference !== 'string' || !reference.startsWith('#')) return true;
  return containedById(scope).has(reference.slice(1));
}

/**
 * Each is named by a `#id` elsewhere, or itself refers to the resource around it. The published
 * expression takes a resource that names itself alone; its words, and HL7's validator, do not.
 */
function allReferredTo(it: JsonObject, needsId: boolean): boolean {
  const { contained, ...around } = it;
  const outside = new Set<string>();
  collectLocal(around, outside);
  const within = objectsOf(contained).map((inner) => {
    const names = new Set<string>();
    collectLocal(inner, names);
    return { id: textOf(inner['id']), names };
  });
  const naming = new Map<string, number>();
  for (const { names } of within) {
    for (const name of names) naming.set(name, (naming.get(name) ?? 0) + 1);
  }
  return within.every(({ id, names }) => {
    if (names.has('#')) return true;
    // In R4 and R5 a resource without id escapes the expression; that it needs one is told elsewhere.
    if (id === undefined) return !needsId;
    const others = (naming.get(`#${id}`) ?? 0) - (names.has(`#${id}`) ? 1 : 0);
    return outside.has(`#${id}`) || others > 0;
  });
}

/** Properties whose text is prose or an id, and never a link. */
const prose: ReadonlySet<string> = new Set(['id', 'display', 'text', 'title', 'data']);
const linkInDiv = /(?:src|href)\s*=\s*["'](#[^"']*)["']/g;

function collectLocal(value: unknown, into: Set<string>): void {
  if (Array.isArray(value)) {
    for (const item of value) collectLocal(item, into);
  } else if (isObject(value)) {
    for (const name of Object.keys(value)) collectNamed(name, value[name], into);
  } else if (typeof value === 'string' && value.startsWith('#')) {
    into.add(value);
  }
}

function collectNamed(name: string, value: unknown, into: Set<string>): void {
  if (name === 'div' && typeof value === 'string') {
    // A picture may be contained for the narrative alone.
    for (const [, link = ''] of value.matchAll(linkInDiv)) into.add(link);
  } else if (typeof value === 'object' || !prose.has(name)) {
    collectLocal(value, into);
  }
}

/**
 * Types of resources that R4 has not, or not in this form.
 * @see https://hl7.org/fhir/R4B/domainresource.html, dom-r4b
 */
export const newInR4b: readonly string[] = [
  'Citation',
  'Evidence',
  'EvidenceReport',
  'EvidenceVariable',
  'MedicinalProductDefinition',
  'PackagedProductDefinition',
  'AdministrableProductDefinition',
  'Ingredient',
  'ClinicalUseDefinition',
  'RegulatedAuthorization',
  'SubstanceDefinition',
  'SubscriptionStatus',
  'SubscriptionTopic',
];

const isNewType: ReadonlySet<unknown> = new Set(newInR4b);

function isNew(resource: JsonObject): boolean {
  return isNewType.has(resource['resourceType']);
}
