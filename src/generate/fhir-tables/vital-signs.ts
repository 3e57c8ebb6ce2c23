import type { ValueSetTable } from '../../validate/elements/table-types.ts';
import { compact } from './codes.ts';
import { type Definitions, structureUrl, withoutVersion } from './definitions.ts';
import { expand } from './value-sets.ts';

/** HL7's profiles of vital signs, the general one first. */
const profileNames = [
  'vitalsigns',
  'vitalspanel',
  'resprate',
  'heartrate',
  'oxygensat',
  'bodytemp',
  'bodyheight',
  'headcircum',
  'bodyweight',
  'bmi',
  'bp',
] as const;

type Json = Readonly<Record<string, unknown>>;

export interface VitalSignTables {
  /** StructureDefinitions with what their snapshots ask for beyond those of Observation. */
  readonly profiles: readonly Json[];
  readonly valueSets: ValueSetTable;
}

/** What the profiles of vital signs ask for, and the value sets that they bind beside those of the base. */
export function vitalSignTables(definitions: Definitions): VitalSignTables {
  const valueSets: Record<string, Record<string, 'all' | string[]>> = {};
  const observation = elementsOf('Observation', definitions);
  const base = new Set(observation.map(withoutId));
  const paths = new Set(observation.map(({ path }) => path));
  const profiles = profileNames.map((name): Json => {
    const element = elementsOf(name, definitions).filter(
      (each) => !base.has(withoutId(each)) && (paths.has(each.path) || asksMore(each)),
    );
    for (const { binding } of element) {
      const set = withoutVersion(binding?.valueSet ?? '');
      const codes = set === '' ? undefined : expand(set, definitions);
      if (codes !== undefined) valueSets[set] = compact(codes, definitions);
    }
    return {
      resourceType: 'StructureDefinition',
      url: structureUrl(name),
      type: 'Observation',
      kind: 'resource',
      derivation: 'constraint',
      baseDefinition: structureUrl('Observation'),
      snapshot: { element: withAbove(element, name, definitions) },
    };
  });
  return { profiles, valueSets };
}

interface PublishedElement extends Json {
  readonly id: string;
  readonly path: string;
  readonly min: number;
  readonly binding?: { readonly strength: string; readonly valueSet?: string };
  readonly constraint?: readonly Json[];
}

function elementsOf(name: string, { structures, version }: Definitions): PublishedElement[] {
  const found = structures.get(structureUrl(name));
  if (found === undefined) throw new Error(`no profile ${name} of FHIR ${version}`);
  // A published element has more than the part that the other tables are made from.
  const elements = found.snapshot.element as unknown as readonly PublishedElement[];
  return elements.map(bare);
}

/** Whether an element in a data type asks for more than the type itself does. */
function asksMore({ min, binding, ...element }: PublishedElement): boolean {
  const named = Object.keys(element).some((name) =>
    /^(?:sliceName|constraint|fixed|pattern)/.test(name),
  );
  return min > 0 || named || binding?.strength === 'required';
}

/** What is asked of a place, whatever slice it stands in. */
function withoutId({ id: _, path, ...element }: PublishedElement): string {
  return JSON.stringify([path, element]);
}

/** The elements with those above them, in which they are found. */
function withAbove(
  elements: readonly PublishedElement[],
  name: string,
  definitions: Definitions,
): PublishedElement[] {
  const above = new Set(
    elements.flatMap(({ id }) => {
      const steps = id.split('.');
      return steps.flatMap((step, at) => {
        const here = [...steps.slice(0, at), step].join('.');
        return [here, here.replace(/:[^.]*$/, '')];
      });
    }),
  );
  return elementsOf(name, definitions).filter(({ id }) => above.has(id));
}

const kept = /^(?:id|path|sliceName|slicing|min|max|type|contentReference|fixed\w+|pattern\w+)$/;

function bare({ binding, constraint, ...element }: PublishedElement): PublishedElement {
  const plain = Object.entries(element).filter(([name]) => kept.test(name));
  const rows = JSON.parse(
    JSON.stringify(Object.fromEntries(plain), withoutNotes),
  ) as typeof element; // id, path and min are among them
  const { strength, valueSet = '' } = binding ?? {};
  const binds = strength === 'required' || strength === 'extensible';
  return {
    ...rows,
    ...(binds && { binding: { strength, valueSet } }),
    ...(constraint?.some(isOwn) && {
      constraint: constraint
        .filter(isOwn)
        .map(({ key, severity, expression }) => ({ key, severity, expression })),
    }),
  };
}

/** Without what is for people, and the types behind those of FHIR. */
function withoutNotes(name: string, value: unknown): unknown {
  return name === 'description' || name === 'extension' ? undefined : value;
}

/** Keys of the rules of vital signs; those of the base are held anyhow. */
function isOwn({ key }: Json): boolean {
  return String(key).startsWith('vs-');
}
