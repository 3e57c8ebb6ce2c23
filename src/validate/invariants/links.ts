import { resolve } from '../bundles/resolve.ts';
import { has, hasPart, isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';
import { type Invariant, rules } from './invariant.ts';

/** Invariants of R5 that follow references. One that leads nowhere at hand is as good as absent. */
export const linkInvariants: readonly Invariant[] = [
  ...rules(
    ['R5'],
    [
      [
        'dgr-1',
        'an observation of the composition is not among the results',
        (it, scope) => !hasPart(it, 'composition') || resultsCoverComposition(it, scope),
      ],
      ['obs-9', 'a group that is a specimen can hold specimens only', specimensOnly],
      [
        'enc-2',
        'a participant that is a patient or group cannot have a type',
        (it, scope) => !isOneOf(target(it['actor'], scope), 'Patient', 'Group') || !has(it, 'type'),
      ],
      [
        'prov-1',
        'an agent cannot act for itself',
        (it, scope) => differ(who(it, scope), whom(it, scope)),
      ],
      [
        'prov-2',
        'an agent cannot act for itself',
        (it, scope) => {
          const onBehalf = whom(it, scope);
          if (!isOneOf(onBehalf, 'Practitioner')) return true;
          return differ(target(roleOf(who(it, scope))?.['practitioner'], scope), onBehalf);
        },
      ],
      [
        'prov-3',
        'an agent cannot act for itself',
        (it, scope) => {
          const agent = who(it, scope);
          if (!isOneOf(agent, 'Organization')) return true;
          return differ(agent, target(roleOf(whom(it, scope))?.['organization'], scope));
        },
      ],
    ],
  ),
  ...rules(
    ['R5'],
    [
      [
        'docRef-1',
        'the kind of facility stands in the encounter',
        (it, scope) => !hasPart(it, 'facilityType') || !hasEncounter(it, scope),
      ],
      [
        'docRef-2',
        'the practice setting stands in the encounter',
        (it, scope) => !hasPart(it, 'practiceSetting') || !hasEncounter(it, scope),
      ],
    ],
    'warning',
  ),
];

function referenceOf(value: unknown): string | undefined {
  return isObject(value) ? textOf(value['reference']) : undefined;
}

function target(value: unknown, scope: Scope): JsonObject | undefined {
  const reference = referenceOf(value);
  return reference === undefined ? undefined : resolve(reference, scope)?.resource;
}

function isOneOf(resource: JsonObject | undefined, ...types: readonly string[]): boolean {
  return types.some((type) => resource?.['resourceType'] === type);
}

function who(agent: JsonObject, scope: Scope): JsonObject | undefined {
  return target(agent['who'], scope);
}

function whom(agent: JsonObject, scope: Scope): JsonObject | undefined {
  return target(agent['onBehalfOf'], scope);
}

function roleOf(resource: JsonObject | undefined): JsonObject | undefined {
  return isOneOf(resource, 'PractitionerRole') ? resource : undefined;
}

function differ(one: JsonObject | undefined, other: JsonObject | undefined): boolean {
  return one === undefined || one !== other;
}

function hasEncounter(it: JsonObject, scope: Scope): boolean {
  return objectsOf(it['context']).some((each) => isOneOf(target(each, scope), 'Encounter'));
}

function resultsCoverComposition(it: JsonObject, scope: Scope): boolean {
  const composition = target(it['composition'], scope);
  const covered = new Set<string>();
  for (const result of objectsOf(it['result'])) {
    add(covered, result);
    for (const member of objectsOf(target(result, scope)?.['hasMember'])) add(covered, member);
  }
  return objectsOf(composition?.['section']).every((section) =>
    objectsOf(section['entry']).every((entry) => {
      const reference = referenceOf(entry);
      if (reference === undefined || !isOneOf(target(entry, scope), 'Observation')) return true;
      return covered.has(reference);
    }),
  );
}

function add(to: Set<string>, value: JsonObject): void {
  const reference = referenceOf(value);
  if (reference !== undefined) to.add(reference);
}

function specimensOnly(it: JsonObject, scope: Scope): boolean {
  const group = target(it, scope);
  if (!isOneOf(group, 'Group')) return true;
  return objectsOf(group?.['member']).every((member) => {
    const entity = target(member['entity'], scope);
    return entity === undefined || isOneOf(entity, 'Specimen');
  });
}
