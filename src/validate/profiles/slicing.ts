import { choiceName, isObject, type JsonObject, textOf } from '../json.ts';
import { type Resolved, resolve } from '../resolve.ts';
import type { Scope } from '../scope.ts';
import type { ProfileNode } from './compile.ts';
import type { Look } from './look.ts';
import { fitsPattern, isSame } from './match.ts';
import type { Member } from './members.ts';
import { typeName } from './structure.ts';

/** Whether a value belongs to a slice; `undefined` where the discriminators can not be followed here. */
export function isInSlice(
  member: Member,
  slice: ProfileNode,
  sliced: ProfileNode,
  look: Look,
): boolean | undefined {
  const discriminators = sliced.slicing?.discriminators ?? [];
  if (discriminators.length === 0) return undefined;
  for (const { type, path } of discriminators) {
    const fits = fitsDiscriminator(type, path, member, slice, look);
    if (fits !== true) return fits;
  }
  return true;
}

function fitsDiscriminator(
  type: string,
  path: string,
  { value, type: typeOfValue }: Member,
  slice: ProfileNode,
  look: Look,
): boolean | undefined {
  const { scope } = look;
  if (path === 'url' && slice.types[0]?.code === 'Extension') {
    const url = slice.types[0].profiles[0];
    if (url !== undefined) return isObject(value) && value['url'] === url;
  }
  const steps = path === '$this' ? [] : path.split('.');
  const found = follow(value, steps, scope);
  const node = nodeAt(slice, steps);
  if (found === undefined || node === undefined) return undefined;
  switch (type) {
    case 'value':
    case 'pattern':
      return fitsValue(found, node, scope);
    case 'exists':
      return found.length === 0 ? node.max === 0 : node.min > 0;
    case 'type':
      return fitsType(found[0], node, steps.length === 0 ? typeOfValue : undefined);
    case 'profile':
      return fitsProfile(value, steps, node, look);
    default:
      // `position` says where in the list a value stands.
      return undefined;
  }
}

/** By the profiles that a resource fits: one that a reference leads to, or that stands in an entry. */
function fitsProfile(
  value: unknown,
  steps: readonly string[],
  { types }: ProfileNode,
  { scope, fits }: Look,
): boolean | undefined {
  const byReference = steps.at(-1) === 'resolve()';
  const holders = follow(value, byReference ? steps.slice(0, -1) : steps, scope) ?? [];
  const urls = types.flatMap((type) => (byReference ? type.targets : type.profiles));
  const profiles = urls.map((url) => scope.profiles?.get(url));
  const found = holders.flatMap((each) => {
    if (!isObject(each)) return [];
    return (byReference ? resolved(each, scope) : standing(each, value, scope)) ?? [];
  });
  if (found.length === 0 || urls.length === 0) return undefined;
  let known = true;
  const fitsOne = profiles.some((profile) => {
    if (profile === undefined) known = false;
    return profile !== undefined && found.some((each) => fits(each, profile, scope));
  });
  return fitsOne || !known ? fitsOne || undefined : false;
}

/** A resource in an entry, from which its references lead on. */
function standing(resource: JsonObject, holder: unknown, scope: Scope): Resolved | undefined {
  if (typeof resource['resourceType'] !== 'string') return undefined;
  const fullUrl = isObject(holder) ? textOf(holder['fullUrl']) : undefined;
  const entry = fullUrl === undefined ? undefined : scope.index?.byFullUrl.get(fullUrl);
  return entry?.resource === resource ? { resource, entry } : { resource };
}

/** All values at a path of plain names and `resolve()`; `undefined` for a path of another form. */
function follow(
  value: unknown,
  steps: readonly string[],
  scope: Scope,
): readonly unknown[] | undefined {
  let found: readonly unknown[] = [value];
  for (const step of steps) {
    if (step !== 'resolve()' && !/^[A-Za-z]+$/.test(step)) return undefined;
    found = found.flatMap((each) => {
      if (!isObject(each)) return [];
      const next = step === 'resolve()' ? resolved(each, scope)?.resource : memberOf(each, step);
      return next === undefined ? [] : next;
    });
  }
  return found;
}

function resolved({ reference }: JsonObject, scope: Scope): Resolved | undefined {
  return typeof reference === 'string' ? resolve(reference, scope) : undefined;
}

function memberOf(object: JsonObject, name: string): unknown {
  if (Object.hasOwn(object, name)) return object[name];
  const choice = choiceName(object, name);
  return choice === undefined ? undefined : object[choice];
}

/** The element of the slice at the same path; what is reached by reference stands in another profile. */
function nodeAt(slice: ProfileNode, steps: readonly string[]): ProfileNode | undefined {
  let node: ProfileNode | undefined = slice;
  for (const step of steps) {
    if (step === 'resolve()') continue;
    node = node?.children.find(({ name }) => name === step);
  }
  return node;
}

function fitsValue(
  values: readonly unknown[],
  node: ProfileNode,
  scope: Scope,
): boolean | undefined {
  if (node.fixed !== undefined) return values.some((each) => isSame(each, node.fixed));
  if (node.pattern !== undefined) return values.some((each) => fitsPattern(each, node.pattern));
  const inner = node.children.filter(
    (child) => child.fixed !== undefined || child.pattern !== undefined,
  );
  if (inner.length > 0) {
    return values.some(
      (each) =>
        isObject(each) &&
        inner.every((child) => fitsValue([memberOf(each, child.name)].flat(), child, scope)),
    );
  }
  return fitsBinding(values, node, scope);
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
    return codings.some((coding) => {
      if (!isObject(coding) || typeof coding['code'] !== 'string') return false;
      const system = textOf(coding['system']) ?? '';
      const codes = members.get(system);
      if (codes === 'all') return definitions.codeSystems.get(system)?.has(coding['code']) ?? true;
      return codes?.has(coding['code']) ?? false;
    });
  });
}

function fitsType(
  value: unknown,
  { types }: ProfileNode,
  known: string | undefined,
): boolean | undefined {
  const names = types.map(({ code }) => typeName(code));
  if (known !== undefined) return names.includes(known);
  const resource = isObject(value) ? textOf(value['resourceType']) : undefined;
  return resource === undefined ? undefined : names.includes(resource);
}
