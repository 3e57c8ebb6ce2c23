import type { Property } from '../elements/definitions.ts';
import { isObject, type JsonObject, listOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { Stage } from '../walk/stage.ts';
import type { BundleIndex, Entry, Link } from './bundle-index.ts';
import { isAbsolute, named, type Resolved, withoutHistory } from './resolve.ts';

/** The stage of references: what each leads to, and whether its element takes that. */
export const referenceStage: Stage = { objects: { Reference: checkReference } };

const page = 'https://hl7.org/fhir/R4/references.html';

function checkReference(value: JsonObject, scope: Scope, property: Property): void {
  const reference = textOf(value['reference']);
  const found = reference === undefined ? undefined : named(reference, scope);
  if (reference !== undefined) {
    if (found === undefined) checkUnresolved(reference, scope);
    else keepLink(found, scope);
    if (found?.loose && scope.index?.type === 'document') sayOtherUrl(scope, reference);
  }
  checkTarget(value, reference, found, scope, targetsOf(property, scope));
}

/** The targets of a CodeableReference stand with the element that has it. */
function targetsOf(property: Property, { trail }: Scope): readonly string[] | undefined {
  return property.path === 'CodeableReference.reference' ? trail.at(-2)?.to : property.to;
}

function keepLink({ entry }: Resolved, { index, entry: from, path }: Scope): void {
  if (entry === undefined || index === undefined) return;
  const link = { to: entry, path: [...path] };
  // Entry by entry, those that no rule follows would fill the memory.
  if (index.onlyIds !== undefined && index.type !== 'document' && !isMember(link)) return;
  index.entries[from]?.links.push(link);
}

function checkUnresolved(reference: string, scope: Scope): void {
  if (/\s/.test(reference)) {
    report(
      scope,
      'invalid-value',
      { reason: 'reference-space' },
      {
        rule: `${page}#literal`,
        value: reference,
      },
      ['reference'],
    );
  } else if (/^urn:(?:uuid|oid):/.test(reference)) {
    // Outside a bundle there is nothing that it could lead to, and the sender knows more.
    if (scope.index === undefined) return;
    report(
      scope,
      'unresolved-reference',
      { reason: 'full-url' },
      {
        rule: 'https://hl7.org/fhir/R4/bundle.html#references',
        value: reference,
      },
      ['reference'],
    );
  } else if (!reference.startsWith('#') && !isAbsolute(reference)) {
    checkRelative(reference, scope);
  }
  // `#` and the id of no contained resource is told by ref-1.
}

const relativeForm = /^[A-Z][A-Za-z]+\/[A-Za-z0-9\-.]{1,64}(?:#.*)?$/;

function checkRelative(reference: string, scope: Scope): void {
  const type = scope.index?.type;
  if (reference.includes('?') && type !== undefined && type !== 'batch') {
    // Only a transaction puts what the search finds in its place.
    const right = type === 'transaction' && isConditional(reference, scope);
    if (!right) sayMalformed(reference, scope, 'conditional-reference');
  } else if (!relativeForm.test(withoutHistory(reference))) {
    sayMalformed(reference, scope, 'relative-reference');
  } else if (scope.index?.byTypeAndId.has(withoutHistory(reference))) {
    sayOtherUrl(scope, reference);
  }
}

function sayMalformed(
  reference: string,
  scope: Scope,
  reason: 'relative-reference' | 'conditional-reference',
): void {
  const conditional = reason === 'conditional-reference';
  const rule = conditional ? 'https://hl7.org/fhir/R4/http.html#trules' : `${page}#literal`;
  const severity = conditional ? 'error' : 'warning';
  report(scope, 'invalid-value', { reason }, { severity, rule, value: reference }, ['reference']);
}

/** In a transaction: a search whose parameters each have a name and a value. */
function isConditional(reference: string, { resourceTypes }: Scope): boolean {
  const at = reference.indexOf('?');
  const parameters = reference.slice(at + 1).split('&');
  return (
    resourceTypes.has(reference.slice(0, at)) &&
    parameters.every((each) => /^[A-Za-z_][A-Za-z0-9_.:-]*=[^=?][^?]*$/.test(each))
  );
}

/** Type and id are those of an entry, but its fullUrl is not what the relative reference means. */
function sayOtherUrl(scope: Scope, reference: string): void {
  report(
    scope,
    'unresolved-reference',
    { reason: 'other-full-url' },
    {
      severity: scope.index?.type === 'document' ? 'error' : 'warning',
      rule: 'https://hl7.org/fhir/R4/bundle.html#references',
      value: reference,
    },
    ['reference'],
  );
}

function checkTarget(
  value: JsonObject,
  reference: string | undefined,
  found: Resolved | undefined,
  scope: Scope,
  to: readonly string[] | undefined,
): void {
  // Names of types are relative to this; other URLs name logical models.
  const said = textOf(value['type'])?.replace('http://hl7.org/fhir/StructureDefinition/', '');
  const actual = textOf(found?.resource['resourceType']) ?? typeInUrl(reference);
  if (actual !== undefined && to !== undefined && !to.includes(actual)) {
    report(
      scope,
      'wrong-target',
      { reason: 'type', types: to },
      {
        rule: `${page}#Reference`,
        value: actual,
      },
    );
  }
  if (said !== undefined && actual !== undefined && said !== actual) {
    report(
      scope,
      'contradiction',
      { reason: 'reference-type', type: actual },
      {
        rule: `${page}#Reference.type`,
        value: said,
      },
      ['type'],
    );
  } else if (said !== undefined && actual === undefined && !mayBe(said, to, scope)) {
    report(
      scope,
      'wrong-target',
      { reason: 'stated-type', types: to },
      {
        rule: `${page}#Reference.type`,
        value: said,
      },
      ['type'],
    );
  }
}

function mayBe(type: string, to: readonly string[] | undefined, { resourceTypes }: Scope): boolean {
  return to === undefined || to.includes(type) || !resourceTypes.has(type);
}

const typeAndId = /(?:^|\/)([A-Z][A-Za-z]+)\/[A-Za-z0-9\-.]{1,64}$/;

/** The type that a reference names itself: `Patient/1`, or the URL of one on a server. */
function typeInUrl(reference: string | undefined): string | undefined {
  if (reference === undefined || /^urn:|[?#]/.test(reference)) return undefined;
  return typeAndId.exec(withoutHistory(reference))?.[1];
}

/** Ids of contained resources are unique, or a reference could mean two. */
export function checkContainedIds(resource: JsonObject, scope: Scope): void {
  const seen = new Set<string>();
  listOf(resource['contained']).forEach((each, at) => {
    if (!isObject(each)) return;
    const id = textOf(each['id']);
    if (id === undefined) {
      report(
        scope,
        'missing-property',
        { reason: 'contained-id' },
        {
          rule: `${page}#contained`,
        },
        ['contained', at, 'id'],
      );
    } else if (seen.has(id)) {
      report(
        scope,
        'duplicate-id',
        { reason: 'contained' },
        {
          rule: `${page}#contained`,
          value: id,
        },
        ['contained', at, 'id'],
      );
    } else {
      seen.add(id);
    }
  });
}

/** A group of observations that is its own member, by whatever way. */
export function checkCircles(index: BundleIndex, scope: Scope): void {
  const state = new Map<Entry, 'open' | 'done'>();
  for (const start of index.entries) {
    if (state.has(start)) continue;
    const open: { entry: Entry; members: readonly Link[]; at: number }[] = [];
    const enter = (entry: Entry): void => {
      state.set(entry, 'open');
      open.push({ entry, members: entry.links.filter(isMember), at: 0 });
    };
    enter(start);
    for (let frame = open.at(-1); frame !== undefined; frame = open.at(-1)) {
      const link = frame.members[frame.at];
      frame.at += 1;
      if (link === undefined) {
        state.set(frame.entry, 'done');
        open.pop();
      } else if (state.get(link.to) === 'open') {
        sayCircle(link, scope);
      } else if (!state.has(link.to)) {
        enter(link.to);
      }
    }
  }
}

function isMember({ path }: Link): boolean {
  return path.at(-2) === 'hasMember' && path.at(-3) === 'resource';
}

function sayCircle({ path }: Link, scope: Scope): void {
  const below = path.slice(scope.path.length);
  report(
    scope,
    'circular-reference',
    { reason: 'group' },
    // The specification asks for it in no SHALL.
    { severity: 'warning', rule: 'https://hl7.org/fhir/R4/observation.html#obsgrouping' },
    below,
  );
}
