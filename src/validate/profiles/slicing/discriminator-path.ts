import { resolve } from '../../bundles/resolve.ts';
import { choiceName, isObject, type JsonObject, objectsOf, textOf } from '../../walk/json.ts';
import type { Scope } from '../../walk/scope.ts';
import { primitives, small } from '../members.ts';

/**
 * One step of the restricted FHIRPath of discriminators.
 * @see https://hl7.org/fhir/R4/profiling.html#discriminator
 */
export type DiscriminatorStep =
  | { readonly kind: 'name' | 'extension' | 'ofType'; readonly name: string }
  | { readonly kind: 'resolve' };

/** A value at the end of a path, with its type where a choice tells it. */
export interface Found {
  readonly value: unknown;
  readonly type: string | undefined;
}

const step =
  /^(?:(\$this)|(resolve)\(\)|extension\(\s*['"]([^'"]*)['"]\s*\)|ofType\(\s*([\w.]+)\s*\)|([A-Za-z_]\w*)(?:\[x\])?)$/;

/** The steps of a path; `undefined` for a path of another form. */
export function stepsOf(path: string): readonly DiscriminatorStep[] | undefined {
  const steps: DiscriminatorStep[] = [];
  for (const text of splitAtDots(path)) {
    const [whole, self, reference, url, type, name] = step.exec(text) ?? [];
    if (whole === undefined) return undefined;
    if (self !== undefined) continue;
    if (reference !== undefined) steps.push({ kind: 'resolve' });
    else if (url !== undefined) steps.push({ kind: 'extension', name: url });
    else if (type !== undefined) steps.push({ kind: 'ofType', name: type.replace(/^.*\./, '') });
    else if (name !== undefined) steps.push({ kind: 'name', name });
  }
  return steps;
}

/** At dots that are not in brackets: the url of an extension has some of its own. */
function splitAtDots(path: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let start = 0;
  for (let at = 0; at < path.length; at++) {
    const sign = path.charAt(at);
    if (sign === '(') depth++;
    else if (sign === ')') depth--;
    else if (sign === '.' && depth === 0) {
      parts.push(path.slice(start, at));
      start = at + 1;
    }
  }
  return [...parts, path.slice(start)].filter((part) => part !== '');
}

/** All values at a path. */
export function follow(
  from: Found,
  steps: readonly DiscriminatorStep[],
  scope: Scope,
): readonly Found[] | undefined {
  let found: readonly Found[] = [from];
  for (const each of steps) found = found.flatMap((value) => next(value, each, scope));
  return found;
}

function next({ value, type }: Found, step: DiscriminatorStep, scope: Scope): Found[] {
  if (step.kind === 'ofType') {
    return type === undefined || small(type) === small(step.name) ? [{ value, type }] : [];
  }
  if (!isObject(value)) return [];
  if (step.kind === 'resolve') {
    const reference = textOf(value['reference']);
    const target = reference === undefined ? undefined : resolve(reference, scope)?.resource;
    return target === undefined ? [] : [{ value: target, type: undefined }];
  }
  if (step.kind === 'extension') {
    return objectsOf(value['extension'])
      .filter(({ url }) => url === step.name)
      .map((each) => ({ value: each, type: 'Extension' }));
  }
  return named(value, step.name);
}

/** The values under a name, or under the names of a choice. */
function named(holder: JsonObject, stem: string): Found[] {
  const own = Object.hasOwn(holder, stem);
  const name = own ? stem : choiceName(holder, stem);
  const held = name === undefined ? undefined : holder[name];
  if (name === undefined || held === undefined) return [];
  const type = own ? undefined : typeOfSuffix(name.slice(stem.length));
  return [held].flat().map((value: unknown) => ({ value, type }));
}

function typeOfSuffix(suffix: string): string {
  const name = small(suffix);
  return primitives.has(name) ? name : suffix;
}
