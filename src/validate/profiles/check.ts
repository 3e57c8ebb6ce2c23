import { hasErrors } from '../../issues/issue.ts';
import { isObject, type JsonObject, textOf } from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';
import type { Profile, ProfileNode } from './compile.ts';
import { type Fits, type Look, say, sayUnchecked } from './look.ts';
import { type Member, membersOf } from './members.ts';
import { checkConstraints } from './rules/compiled-constraint.ts';
import { checkCount, checkSlices } from './slicing/slices.ts';
import { structureBase, typeName } from './structure.ts';
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
  if (node.slices.length > 0) checkSlices(members, node, look, checkMember);
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
  checkConstraints(value, node, inner, member.type);
  if (isObject(value)) {
    checkChildren(value, node, inner);
    checkTypeProfiles(member, value, node, inner);
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

/** Data types, and resources in bundles, that must fit profiles of their own: one of those named. */
function checkTypeProfiles(member: Member, value: JsonObject, node: ProfileNode, look: Look): void {
  const actual = textOf(value['resourceType']) ?? member.type;
  const types = node.types.filter(({ code }) => actual === undefined || code === actual);
  // A type among several that fits without a profile leaves nothing to ask.
  const urls = types.length === 1 ? (types[0]?.profiles ?? []) : [];
  // Extensions are held to their definitions wherever they stand.
  if (types[0]?.code === 'Extension' || urls.length === 0) return;
  // Of HL7's own profiles on data types the rules stand in the tables.
  if (urls.some((url) => typeName(url) === types[0]?.code)) return;
  const open = urls.filter((url) => !look.open.includes(url));
  const [url = '', ...others] = open;
  if (open.length < urls.length) return;
  const profile = look.scope.profiles?.get(url);
  if (others.length === 0 && profile !== undefined) checkProfileOfType(value, profile, look);
  else if (others.length === 0 && url.startsWith(structureBase)) return;
  else checkOneOf(value, open, node, look);
}

function checkOneOf(
  value: JsonObject,
  urls: readonly string[],
  node: ProfileNode,
  look: Look,
): void {
  const profiles = urls.flatMap((url) => look.scope.profiles?.get(url) ?? []);
  const fits = profiles.some((profile) => {
    const scope: Scope = { ...look.scope, issues: [], saidOnce: new Set(), unchecked: [] };
    checkProfileOfType(value, profile, { ...look, scope });
    return !hasErrors(scope.issues);
  });
  if (fits) return;
  if (profiles.length < urls.length)
    sayUnchecked(look, node, { reason: 'type-profiles', codes: urls }, []);
  else {
    say(look, node, 'invalid-value', { reason: 'no-profile', codes: urls });
  }
}

function checkProfileOfType(value: JsonObject, profile: Profile, look: Look): void {
  const inner: Look = { ...look, profile, open: [...look.open, profile.url] };
  const { resourceType } = value;
  if (typeof resourceType === 'string' && resourceType !== profile.type) {
    say(inner, profile.root, 'wrong-type', { reason: 'profile-resource', type: profile.type }, {});
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
