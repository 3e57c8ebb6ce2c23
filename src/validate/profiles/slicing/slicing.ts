import { isSame } from '../../../data/plain-data.ts';
import { type Resolved, resolve } from '../../bundles/resolve.ts';
import { isObject, type JsonObject, textOf } from '../../walk/json.ts';
import type { Scope } from '../../walk/scope.ts';
import type { ProfileNode } from '../compile.ts';
import type { Look } from '../look.ts';
import type { Member } from '../members.ts';
import { structureBase, typeName } from '../structure.ts';
import { type DiscriminatorStep, type Found, follow, stepsOf } from './discriminator-path.ts';
import { fitsPattern } from './match.ts';

/**
 * Whether a value belongs to a slice; `undefined` where that cannot be told here. It does not belong
 * where one discriminator says so, whatever the others say.
 * @see https://hl7.org/fhir/R4/profiling.html#discriminator
 */
export function isInSlice(
  member: Member,
  slice: ProfileNode,
  sliced: ProfileNode,
  look: Look,
): boolean | undefined {
  const discriminators = sliced.slicing?.discriminators ?? [];
  if (discriminators.length === 0) return undefined;
  let verdict: boolean | undefined = true;
  for (const { type, path } of discriminators) {
    const fits = fitsDiscriminator(type, stepsOf(path), member, slice, sliced, look);
    if (fits === false) return false;
    if (fits === undefined) verdict = undefined;
  }
  return verdict;
}

function fitsDiscriminator(
  type: string,
  steps: readonly DiscriminatorStep[] | undefined,
  member: Member,
  slice: ProfileNode,
  sliced: ProfileNode,
  look: Look,
): boolean | undefined {
  if (steps === undefined) return undefined;
  const { value } = member;
  const [first] = steps;
  if (first?.kind === 'name' && first.name === 'url' && slice.types[0]?.code === 'Extension') {
    const url = slice.types[0].profiles[0];
    if (url !== undefined) return isObject(value) && value['url'] === url;
  }
  const found = follow({ value, type: member.type }, steps, look.scope);
  const node = nodeAt(slice, steps, look) ?? nodeAt(sliced, steps, look);
  if (found === undefined) return undefined;
  switch (type) {
    case 'value':
    case 'pattern':
      return node && fitsValue(found, node, look.scope);
    case 'exists':
      return node && fitsExistence(found.length > 0, node);
    case 'type':
      return fitsType(value, found, steps, node ?? slice, look.scope);
    case 'profile':
      return fitsProfile(member, steps, node ?? slice, look);
    default:
      // `position` (R5) says where in the list a value stands, which a slice cannot state.
      return undefined;
  }
}

function fitsExistence(exists: boolean, node: ProfileNode): boolean | undefined {
  if (node.max === 0) return !exists;
  return node.min > 0 ? exists : undefined;
}

/** The element of a slice at a path; what is reached by reference stands in another profile. */
function nodeAt(
  slice: ProfileNode,
  steps: readonly DiscriminatorStep[],
  look: Look,
): ProfileNode | undefined {
  let nodes: readonly ProfileNode[] = [slice];
  let end: ProfileNode | undefined = slice;
  for (const step of steps) {
    nodes = nodes.flatMap((node) => nextNodes(node, step, look));
    end = nodes.find(saysSomething) ?? nodes[0];
  }
  return end;
}

function saysSomething({ fixed, pattern, binding, children, slices }: ProfileNode): boolean {
  const says = fixed !== undefined || pattern !== undefined || binding !== undefined;
  return says || children.length > 0 || slices.length > 0;
}

function nextNodes(node: ProfileNode, step: DiscriminatorStep, look: Look): readonly ProfileNode[] {
  switch (step.kind) {
    case 'name': {
      const own = node.children.filter(({ name }) => name === step.name);
      const typed = profilesOfTypes(node, look).flatMap(({ root }) =>
        root.children.filter(({ name }) => name === step.name),
      );
      // What each value must have in it is said by a slice that must be there, as of a coding.
      return [...own, ...typed].flatMap((node) => [
        node,
        ...node.slices.filter(({ min }) => min > 0),
      ]);
    }
    case 'extension': {
      const extensions = node.children.filter(({ name }) => name === 'extension');
      return extensions.flatMap(({ slices }) =>
        slices.filter((each) => urlOfExtension(each) === step.name),
      );
    }
    case 'ofType': {
      const typed = node.slices.filter(({ types }) => types.some(({ code }) => code === step.name));
      return [...typed, node];
    }
    default: {
      // What must stand at the end of a reference is told by the profiles that it names.
      const targets = node.types.flatMap((type) => type.targets);
      return [node, ...targets.flatMap((url) => look.scope.profiles?.get(url)?.root ?? [])];
    }
  }
}

function profilesOfTypes({ types }: ProfileNode, { scope }: Look) {
  const urls = types.length === 1 ? (types[0]?.profiles ?? []) : [];
  return urls.length === 1 ? urls.flatMap((url) => scope.profiles?.get(url) ?? []) : [];
}

/** The url that an extension of a slice has: fixed in it, or that of its own definition. */
export function urlOfExtension({ types, children }: ProfileNode): string | undefined {
  const fixed = children.find(({ name }) => name === 'url')?.fixed;
  return typeof fixed === 'string' ? fixed : types[0]?.profiles[0];
}

/**
 * By a fixed value, a pattern, or a required binding: of the element itself, or of those below it. A
 * slice that says none of them is told by whether its element must, or cannot, be there.
 */
function fitsValue(found: readonly Found[], node: ProfileNode, scope: Scope): boolean | undefined {
  const values = found.map(({ value }) => value);
  if (node.fixed !== undefined) return values.some((each) => isSame(each, node.fixed));
  if (node.pattern !== undefined) return values.some((each) => fitsPattern(each, node.pattern));
  const inner = deciding(node);
  if (inner.length > 0) return anyOf(values.map((each) => fitsInner(each, inner, scope)));
  const bound = fitsBinding(values, node, scope);
  return bound ?? (node.binding === undefined ? fitsExistence(values.length > 0, node) : undefined);
}

/** Elements below one, or slices of them, that say what a value must be. */
function deciding({ children }: ProfileNode): ProfileNode[] {
  const says = (each: ProfileNode): boolean =>
    each.fixed !== undefined ||
    each.pattern !== undefined ||
    (each.binding?.strength === 'required' && each.min > 0) ||
    deciding(each).length > 0;
  return children.flatMap((child) => [
    ...(says(child) ? [child] : []),
    ...child.slices.filter((slice) => slice.min > 0 && says(slice)),
  ]);
}

function fitsInner(
  value: unknown,
  inner: readonly ProfileNode[],
  scope: Scope,
): boolean | undefined {
  if (!isObject(value)) return false;
  return allOf(
    inner.map((child) => {
      const step = { kind: 'name', name: child.name } as const;
      const found = follow({ value, type: undefined }, [step], scope) ?? [];
      // An element that may be missing decides nothing by being so.
      if (found.length === 0 && child.min === 0) return true;
      return fitsValue(found, child, scope);
    }),
  );
}

function anyOf(verdicts: readonly (boolean | undefined)[]): boolean | undefined {
  if (verdicts.includes(true)) return true;
  return verdicts.includes(undefined) ? undefined : false;
}

function allOf(verdicts: readonly (boolean | undefined)[]): boolean | undefined {
  if (verdicts.includes(false)) return false;
  return verdicts.includes(undefined) ? undefined : true;
}

function fitsBinding(
  values: readonly unknown[],
  { binding }: ProfileNode,
  { definitions }: Scope,
): boolean | undefined {
  const members = binding && definitions.valueSets.get(binding.valueSet);
  if (members === undefined || binding?.strength !== 'required') return undefined;
  return values.some((value) => {
    const codings = isObject(value) && Array.isArray(value['coding']) ? value['coding'] : [value];
    return codings.some((coding: unknown) => {
      const plain = typeof coding === 'string';
      const code = plain ? coding : isObject(coding) ? textOf(coding['code']) : undefined;
      if (code === undefined) return false;
      const system = isObject(coding) ? (textOf(coding['system']) ?? '') : '';
      const sets = plain ? [...members] : [[system, members.get(system)] as const];
      return sets.some(([name, codes]) =>
        codes === 'all' ? (definitions.codeSystems.get(name)?.has(code) ?? true) : codes?.has(code),
      );
    });
  });
}

function fitsType(
  value: unknown,
  found: readonly Found[],
  steps: readonly DiscriminatorStep[],
  { types }: ProfileNode,
  scope: Scope,
): boolean | undefined {
  const byReference = steps.at(-1)?.kind === 'resolve';
  const names = types.flatMap((type) =>
    byReference
      ? type.targets.map((url) => scope.profiles?.get(url)?.type ?? typeName(url))
      : [typeName(type.code)],
  );
  if (names.length === 0) return undefined;
  if (byReference && found.length === 0) {
    const references = follow({ value, type: undefined }, steps.slice(0, -1), scope) ?? [];
    return anyOf(references.map((each) => told(typeOfReference(each.value), names)));
  }
  if (found.length === 0) return steps.length === 0 ? undefined : false;
  return anyOf(found.map((each) => told(typeOf(each), names)));
}

function told(type: string | undefined, names: readonly string[]): boolean | undefined {
  return type === undefined ? undefined : names.includes(type) || names.includes('Resource');
}

function typeOf({ value, type }: Found): string | undefined {
  return isObject(value) ? (textOf(value['resourceType']) ?? type) : type;
}

/** The type of resource that a reference says it leads to, by its URL or its `type`. */
export function typeOfReference(value: unknown): string | undefined {
  if (!isObject(value)) return undefined;
  const stated = textOf(value['type']);
  if (stated !== undefined) return typeName(stated);
  const path = /(?:^|\/)([A-Z][A-Za-z]+)\/[A-Za-z0-9\-.]{1,64}(?:\/_history\/[^/]+)?$/;
  return path.exec(textOf(value['reference']) ?? '')?.[1];
}

/** By the profiles that a resource fits: one that a reference leads to, or that stands in an entry. */
function fitsProfile(
  { value, type }: Member,
  steps: readonly DiscriminatorStep[],
  { types }: ProfileNode,
  look: Look,
): boolean | undefined {
  const { scope } = look;
  const byReference = steps.at(-1)?.kind === 'resolve';
  const holders = follow({ value, type }, byReference ? steps.slice(0, -1) : steps, scope) ?? [];
  const urls = types.flatMap((each) => (byReference ? each.targets : each.profiles));
  const codes = new Set(types.map(({ code }) => code));
  if (urls.length === 0 || holders.length === 0) return holders.length === 0 ? false : undefined;
  return anyOf(
    holders.flatMap((holder) => {
      if (!isObject(holder.value)) return [];
      const target = byReference
        ? resolved(holder.value, scope)
        : standing(holder.value, value, scope);
      const kind = byReference ? typeOfReference(holder.value) : holder.type;
      const actual = textOf(target?.resource['resourceType']);
      const isOther = actual !== undefined && !codes.has(actual) && !codes.has('Resource');
      if (!byReference && isOther) return [false];
      return urls.map((url) => fitsOne(url, target, kind, look));
    }),
  );
}

/** Whether a resource of a type, where it is at hand, fits a profile. */
export function fitsOne(
  url: string,
  target: Resolved | undefined,
  kind: string | undefined,
  { scope, fits }: Look,
): boolean | undefined {
  const profile = scope.profiles?.get(url);
  const wanted = profile?.type ?? typeName(url);
  if (wanted === 'Resource' || (wanted === 'DomainResource' && kind !== 'Bundle')) return true;
  const actual = textOf(target?.resource['resourceType']) ?? kind;
  const isKnown = profile !== undefined || scope.resourceTypes.has(wanted);
  if (!isKnown || actual === undefined) return undefined;
  if (wanted !== actual) return false;
  if (profile === undefined || url === structureBase + wanted) return true;
  return target && fits(target, profile, scope);
}

function resolved({ reference }: JsonObject, scope: Scope): Resolved | undefined {
  return typeof reference === 'string' ? resolve(reference, scope) : undefined;
}

/** A value, or a resource in an entry, from which its references lead on. */
function standing(resource: JsonObject, holder: unknown, scope: Scope): Resolved | undefined {
  const fullUrl = isObject(holder) ? textOf(holder['fullUrl']) : undefined;
  const entry = fullUrl === undefined ? undefined : scope.index?.byFullUrl.get(fullUrl);
  return entry?.resource === resource ? { resource, entry } : { resource };
}
