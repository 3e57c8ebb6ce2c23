import { isObject, type JsonObject } from '../json.ts';
import type { Scope } from '../scope.ts';
import type { Profile, ProfileNode } from './compile.ts';
import { type Below, type Fits, type Look, say, sayUnchecked } from './look.ts';
import { type Member, membersOf } from './members.ts';
import { checkConstraints } from './rules.ts';
import { isInSlice } from './slicing.ts';
import { structureBase } from './structure.ts';
import { checkCodes, checkTarget, checkType, checkValue } from './value.ts';

/** Holds a resource to one profile, element by element. */
export function checkAgainst(
  resource: JsonObject,
  profile: Profile,
  scope: Scope,
  fits: Fits,
): void {
  const look: Look = { scope, profile, below: [], open: [profile.url], fits };
  checkConstraints(resource, profile.root, look);
  checkChildren(resource, profile.root, look);
}

function checkChildren(holder: JsonObject, node: ProfileNode, look: Look): void {
  for (const child of node.children) checkElement(holder, child, look);
}

function checkElement(holder: JsonObject, node: ProfileNode, look: Look): void {
  const members = membersOf(holder, node);
  checkCount(members.length, node, look);
  for (const member of members) checkMember(member, node, look);
  if (node.slices.length > 0) checkSlices(members, node, look);
}

function checkCount(count: number, node: ProfileNode, look: Look): void {
  const of = node.sliceName === undefined ? '' : ` of slice ${node.sliceName}`;
  const below = [node.name];
  if (count < node.min) {
    const said = { expected: `at least ${node.min}${of}` };
    say(look, node, 'missing-property', 'fewer than the profile asks for', said, below);
  } else if (count > node.max) {
    const said = { expected: `at most ${node.max}${of}` };
    say(look, node, 'too-many', 'more than the profile allows', said, below);
  }
}

function checkMember(member: Member, node: ProfileNode, look: Look): void {
  const { value, path } = member;
  for (const what of node.unheld) sayUnchecked(look, node, what, path);
  const inner: Look = { ...look, below: [...look.below, ...path] };
  if (value === undefined || value === null) {
    checkExtensions(member, node, inner);
    return;
  }
  checkType(member, node, look);
  checkTarget(member, node, look);
  checkValue(member, node, look);
  checkCodes(member, node, look);
  checkConstraints(value, node, inner);
  if (isObject(value)) {
    checkChildren(value, node, inner);
    checkTypeProfiles(value, node, inner);
  } else {
    checkExtensions(member, node, inner);
  }
}

/** Extensions of a primitive stand beside it, under its name with `_` before it. */
function checkExtensions({ path, extra }: Member, node: ProfileNode, look: Look): void {
  const extensions = node.children.find(({ name }) => name === 'extension');
  if (extensions === undefined) return;
  const [name, ...rest] = path;
  const below = [...look.below.slice(0, look.below.length - path.length), `_${name}`, ...rest];
  checkElement(isObject(extra) ? extra : {}, extensions, { ...look, below });
}

/** Data types, and resources in bundles, that must fit profiles of their own. */
function checkTypeProfiles(value: JsonObject, node: ProfileNode, look: Look): void {
  for (const { code, profiles } of node.types) {
    // Extensions are held to their definitions wherever they stand.
    if (code === 'Extension' || profiles.length === 0) continue;
    const [url = ''] = profiles;
    const profile = look.scope.profiles?.get(url);
    if (profile === undefined || node.types.length > 1 || profiles.length > 1) {
      // The rules of HL7's own profiles on data types stand in the tables.
      if (!url.startsWith(structureBase)) sayUnchecked(look, node, `the profile ${url}`, []);
    } else if (!look.open.includes(url)) {
      checkProfileOfType(value, profile, look);
    }
  }
}

function checkProfileOfType(value: JsonObject, profile: Profile, look: Look): void {
  const inner: Look = { ...look, profile, open: [...look.open, profile.url] };
  const { resourceType } = value;
  if (typeof resourceType === 'string' && resourceType !== profile.type) {
    const said = { expected: profile.type };
    say(inner, profile.root, 'wrong-type', 'a resource of another type than the profile', said);
    return;
  }
  const here = typeof resourceType === 'string' ? { ...inner, scope: within(value, look) } : inner;
  checkConstraints(value, profile.root, here);
  checkChildren(value, profile.root, here);
}

/** The scope of a resource that stands in the one whose profile is looked at. */
function within(resource: JsonObject, { scope, below }: Look): Scope {
  const [, entry] = below;
  const index = typeof entry === 'number' && scope.index?.bundle === scope.resource;
  return {
    ...scope,
    resource,
    root: resource,
    contained: undefined,
    idsInRoot: undefined,
    ...(index && { entry }),
  };
}

function checkSlices(members: readonly Member[], node: ProfileNode, look: Look): void {
  const found = new Map<ProfileNode, Member[]>(node.slices.map((slice) => [slice, []]));
  for (const member of members) {
    const slices = slicesOf(member, node, look);
    // Which slices there are too few of can not be told then.
    if (slices === undefined) return;
    for (const slice of slices) {
      found.get(slice)?.push(member);
      checkMember(member, slice, look);
    }
    if (slices.length === 0) checkUnsliced(member.path, node, look);
  }
  for (const [slice, inSlice] of found) {
    checkCount(inSlice.length, slice, look);
    if (slice.slices.length > 0) checkSlices(inSlice, slice, look);
  }
}

/** The slices that a value belongs to; `undefined` where that can not be told. */
function slicesOf(member: Member, node: ProfileNode, look: Look): ProfileNode[] | undefined {
  const slices: ProfileNode[] = [];
  for (const slice of node.slices) {
    const fits = isInSlice(member, slice, node, look);
    if (fits === undefined) {
      sayUnchecked(look, slice, 'what tells the slices apart', member.path);
      return undefined;
    }
    if (fits) slices.push(slice);
  }
  return slices;
}

function checkUnsliced(path: Below, node: ProfileNode, look: Look): void {
  if (node.slicing?.rules !== 'closed') return;
  const said = { expected: node.slices.map(({ sliceName }) => sliceName).join(', ') };
  say(look, node, 'unknown-property', 'in none of the slices of the profile', said, path);
}
