import { jsonText } from '../../data/json-text.ts';
import { isSame } from '../../data/plain-data.ts';
import { resolve } from '../bundles/resolve.ts';
import { grammars } from '../terminology/grammars.ts';
import { checkBinding, codingsOf } from '../terminology/terminology.ts';
import { isObject, textOf } from '../walk/json.ts';
import type { ProfileNode } from './compile.ts';
import { type Look, say, sayUnchecked } from './look.ts';
import type { Member } from './members.ts';
import { fitsPattern } from './slicing/match.ts';
import { fitsOne, typeOfReference } from './slicing/slicing.ts';
import { typeName } from './structure.ts';

/** What the profile asks of one value as a whole. */
export function checkValue({ value, path }: Member, node: ProfileNode, look: Look): void {
  const { fixed, pattern, maxLength } = node;
  if (fixed !== undefined && !isSame(value, fixed)) {
    say(look, node, 'invalid-value', { reason: 'fixed', code: textIn(fixed) }, { value }, path);
  } else if (pattern !== undefined && !fitsPattern(value, pattern)) {
    say(
      look,
      node,
      'invalid-value',
      { reason: 'profile-pattern', code: textIn(pattern) },
      { value },
      path,
    );
  }
  // FHIR counts characters of Unicode, not the halves of surrogate pairs.
  if (maxLength !== undefined && typeof value === 'string' && [...value].length > maxLength) {
    say(look, node, 'too-large', { reason: 'text', maximum: maxLength }, {}, path);
  }
  if (typeof value === 'number') checkBounds(value, path, node, look);
}

/** What a profile fixes is part of the profile, and no patient's data. */
function textIn(value: unknown): string {
  return typeof value === 'string' ? value : jsonText(value).slice(0, 200);
}

function checkBounds(
  value: number,
  path: Member['path'],
  {
    minValue = Number.NEGATIVE_INFINITY,
    maxValue = Number.POSITIVE_INFINITY,
    ...node
  }: ProfileNode,
  look: Look,
): void {
  if (value >= minValue && value <= maxValue) return;
  const facts =
    value < minValue
      ? ({ reason: 'too-small', minimum: minValue } as const)
      : ({ reason: 'too-great', maximum: maxValue } as const);
  say(look, { ...node, minValue, maxValue }, 'invalid-value', facts, { value }, path);
}

/** The type of a choice, by the name that it stands under. */
export function checkType({ path, type }: Member, node: ProfileNode, look: Look): void {
  const { types } = node;
  if (type === undefined || types.length === 0 || types.some(({ code }) => code === type)) return;
  say(
    look,
    node,
    'wrong-type',
    { reason: 'profile-type', types: types.map(({ code }) => code) },
    {},
    path,
  );
}

/**
 * What a reference leads to: its type, as far as the reference or what it leads to tells it, and the
 * profiles that it must fit, as far as it is at hand.
 */
export function checkTarget({ value, path }: Member, node: ProfileNode, look: Look): void {
  const targets = node.types.flatMap((each) => each.targets);
  if (!isObject(value) || targets.length === 0) return;
  const reference = textOf(value['reference']);
  const found = reference === undefined ? undefined : resolve(reference, look.scope);
  const type = typeOfReference(value);
  const verdicts = targets.map((url) => fitsOne(url, found, type, look));
  if (verdicts.includes(true)) return;
  if (verdicts.includes(undefined)) {
    // That a reference leads out of what is at hand is no fault; what stands there is not known.
    if (found !== undefined) sayUnchecked(look, node, { reason: 'target-profile' }, path);
  } else {
    const types = targets.map(typeName);
    say(look, node, 'wrong-target', { reason: 'profile', types }, {}, path);
  }
}

/** Value sets that the codes must, or should, come from. */
export function checkCodes({ value, path }: Member, node: ProfileNode, look: Look): void {
  const { binding } = node;
  if (binding === undefined) return;
  const { strength, valueSet, outer } = binding;
  if (outer !== undefined) checkSet(value, path, node, look, { codes: outer });
  if (strength !== 'required' && strength !== 'extensible') return;
  // Of these the base holds the codes, in every resource of a type that is looked into.
  const isHeld = look.scope.definitions.types.get(look.profile.type) !== undefined;
  const { valueSets } = look.scope.definitions;
  const ofBase = node.types[0]?.code === 'code' && valueSet.startsWith(hl7ValueSets);
  if (isHeld && ofBase && !valueSets.has(valueSet)) return;
  const set = strength === 'required' ? { codes: valueSet } : { usualCodes: valueSet };
  checkSet(value, path, node, look, set);
}

const hl7ValueSets = 'http://hl7.org/fhir/ValueSet/';

type Set = { readonly codes: string } | { readonly usualCodes: string };

function checkSet(
  value: unknown,
  path: Member['path'],
  node: ProfileNode,
  look: Look,
  set: Set,
): void {
  const url = 'codes' in set ? set.codes : set.usualCodes;
  if (look.scope.definitions.valueSets.has(url) || grammars.has(url)) {
    checkBinding(value, set, look.scope, [...look.below, ...path]);
    return;
  }
  // Without any code there is none of the value set, whatever is in it.
  const required = 'codes' in set && url === node.binding?.valueSet;
  if (required && isObject(value) && 'text' in value && codingsOf(value)?.length === 0) {
    say(look, node, 'missing-property', { reason: 'bound-code', url }, {}, path);
    return;
  }
  sayUnchecked(look, node, { reason: 'value-set', url }, path, {
    valueSet: url,
    strength: 'codes' in set ? 'required' : 'extensible',
  });
}
