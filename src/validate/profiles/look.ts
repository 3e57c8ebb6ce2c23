import type { Resolved } from '../bundles/resolve.ts';
import { issue, type ValidationCode, type ValidationFacts } from '../issue.ts';
import { report, type Said, type Scope, type Unchecked } from '../walk/scope.ts';
import type { Profile, ProfileNode } from './compile.ts';

/** Where a profile is looked at, and below what of the resource. */
export interface Look {
  readonly scope: Scope;
  readonly profile: Profile;
  readonly below: Below;
  /** Profiles that are open, so that one that leads back to itself ends. */
  readonly open: readonly string[];
  /** Whether what a reference leads to fits a profile. */
  readonly fits: Fits;
}

/** Steps from the resource, or from an element, to what is looked at. */
export type Below = readonly (string | number)[];

export type Fits = (target: Resolved, profile: Profile, scope: Scope) => boolean;

/** Notes an issue that rests on one element of the profile. */
export function say<Code extends ValidationCode>(
  look: Look,
  node: ProfileNode,
  code: Code,
  facts: ValidationFacts<Code>,
  said: Said = {},
  below: Below = [],
): void {
  const rule = `${look.profile.url}#${node.id}`;
  report(look.scope, code, facts, { rule, ...said }, [...look.below, ...below]);
}

/**
 * What is asked for and cannot be checked here: said once for each element of a profile, and kept as
 * data for each place.
 */
export function sayUnchecked(
  look: Look,
  node: ProfileNode,
  what: ValidationFacts<'unchecked-rule'>,
  below: Below,
  of: Pick<Unchecked, 'valueSet' | 'strength'> = {},
): void {
  const { scope, profile } = look;
  const rule = `${profile.url}#${node.id}`;
  const path = [...scope.path, ...look.below, ...below];
  const { message } = issue('unchecked-rule', path, what);
  scope.unchecked.push({ rule, path, why: message, ...of });
  const key = `unchecked ${profile.url} ${node.id} ${message}`;
  if (scope.saidOnce.has(key)) return;
  scope.saidOnce.add(key);
  say(look, node, 'unchecked-rule', what, { severity: 'information' }, below);
}
