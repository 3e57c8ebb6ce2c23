import { isObject, textOf } from '../json.ts';
import { resolve } from '../resolve.ts';
import type { Said } from '../scope.ts';
import { checkBinding } from '../terminology.ts';
import type { ProfileNode } from './compile.ts';
import { type Look, say, sayUnchecked } from './look.ts';
import { fitsPattern, isSame } from './match.ts';
import type { Member } from './members.ts';
import { typeName } from './structure.ts';

/** What the profile asks of one value as a whole. */
export function checkValue({ value, path }: Member, node: ProfileNode, look: Look): void {
  const { fixed, pattern, maxLength } = node;
  if (fixed !== undefined && !isSame(value, fixed)) {
    const said = { ...expectedOf(fixed), value };
    say(look, node, 'invalid-value', 'not the value that the profile fixes', said, path);
  } else if (pattern !== undefined && !fitsPattern(value, pattern)) {
    const said = { ...expectedOf(pattern), value };
    say(look, node, 'invalid-value', 'not of the pattern of the profile', said, path);
  }
  // FHIR counts characters of Unicode, not the halves of surrogate pairs.
  if (maxLength !== undefined && typeof value === 'string' && [...value].length > maxLength) {
    const said = { expected: `at most ${maxLength} characters` };
    say(look, node, 'too-large', 'text is too long', said, path);
  }
  if (typeof value === 'number') checkBounds(value, path, node, look);
}

/** What a profile fixes is part of the profile, and no patient's data. */
function expectedOf(value: unknown): Said {
  return { expected: typeof value === 'string' ? value : JSON.stringify(value).slice(0, 200) };
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
  const expected = value < minValue ? `at least ${minValue}` : `at most ${maxValue}`;
  const said = { expected, value };
  say(
    look,
    { ...node, minValue, maxValue },
    'invalid-value',
    'out of the bounds of the profile',
    said,
    path,
  );
}

/** The type of a choice, by the name that it stands under. */
export function checkType({ path, type }: Member, node: ProfileNode, look: Look): void {
  const { types } = node;
  if (type === undefined || types.length === 0 || types.some(({ code }) => code === type)) return;
  const said = { expected: types.map(({ code }) => code).join(', ') };
  say(look, node, 'wrong-type', 'not of a type that the profile takes', said, path);
}

/** What a reference leads to, as far as it is at hand: its type, and the profiles it must fit. */
export function checkTarget({ value, path }: Member, node: ProfileNode, look: Look): void {
  const reference = isObject(value) ? textOf(value['reference']) : undefined;
  const found = reference === undefined ? undefined : resolve(reference, look.scope);
  const targets = node.types.flatMap((each) => each.targets.map(typeName));
  if (found === undefined || targets.length === 0 || targets.includes('Resource')) return;
  const actual = textOf(found.resource['resourceType']);
  const { profiles } = look.scope;
  const fits = targets.some((target) => {
    const profile = profiles?.get(target);
    if (profile === undefined) return target === actual;
    return profile.type === actual && look.fits(found, profile, look.scope);
  });
  if (fits) return;
  if (targets.some((target) => isUrl(target) && !profiles?.has(target))) {
    sayUnchecked(look, node, 'a profile of the target', path);
  } else {
    const said = { expected: targets.join(', ') };
    say(look, node, 'wrong-target', 'a reference to what the profile does not take', said, path);
  }
}

function isUrl(text: string): boolean {
  return text.includes(':');
}

const hl7ValueSets = 'http://hl7.org/fhir/ValueSet/';

/** Value sets that the codes must, or should, come from. */
export function checkCodes({ value, path }: Member, node: ProfileNode, look: Look): void {
  const { binding } = node;
  if (binding?.strength !== 'required' && binding?.strength !== 'extensible') return;
  // Of these the schema holds the codes, as it does for every resource.
  const bySchema = node.types[0]?.code === 'code' && binding.valueSet.startsWith(hl7ValueSets);
  if (bySchema) return;
  if (!look.scope.definitions.valueSets.has(binding.valueSet)) {
    sayUnchecked(look, node, `the value set ${binding.valueSet}`, path);
    return;
  }
  const codes =
    binding.strength === 'required'
      ? { codes: binding.valueSet }
      : { usualCodes: binding.valueSet };
  checkBinding(value, codes, look.scope, [...look.below, ...path]);
}
