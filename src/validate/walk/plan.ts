import {
  type Definitions,
  onDemand,
  type Property,
  rootProperty,
  type TypeInfo,
  type Types,
} from '../elements/definitions.ts';
import { type Invariant, rulesOf, type Unheld } from '../invariants/invariants.ts';
import type { ObjectCheck, PrimitiveCheck, Stage } from './stage.ts';

/** What is done at each type and property, put together once for a version. */
export interface Plan {
  readonly definitions: Definitions;
  readonly types: Types<PlannedType>;
  /** Extensions of primitives, whose type has no row of its own. */
  readonly extension: PlannedProperty;
}

export interface PlannedType {
  readonly info: TypeInfo;
  readonly properties: ReadonlyMap<string, PlannedProperty>;
  readonly checks: readonly ObjectCheck[];
  readonly invariants: readonly Invariant[];
  /** Published invariants without a function. */
  readonly unheld: readonly Unheld[];
}

export interface PlannedProperty {
  readonly property: Property;
  readonly check: PrimitiveCheck | undefined;
  readonly invariants: readonly Invariant[];
  readonly unheld: readonly Unheld[];
  /** Nothing is to be looked at in its value. */
  readonly idle: boolean;
  /** The type of an element that is not a primitive; filled when it is first met. */
  target: PlannedType | undefined;
}

export function createPlan(definitions: Definitions, stages: readonly Stage[]): Plan {
  const types = onDemand((name) => {
    const info = definitions.types.get(name);
    return info && plannedType(info, definitions, stages);
  });
  const extension = plannedProperty(primitiveExtension, definitions, []);
  return { definitions, types, extension };
}

function plannedType(
  info: TypeInfo,
  definitions: Definitions,
  stages: readonly Stage[],
): PlannedType {
  const planned = new Map<Property, PlannedProperty>();
  const properties = [...info.properties].map(([key, property]): [string, PlannedProperty] => {
    const found = planned.get(property) ?? plannedProperty(property, definitions, stages);
    planned.set(property, found);
    // Under a name with `_` stand ids and extensions.
    return [key, key.startsWith('_') ? { ...found, idle: false } : found];
  });
  return {
    info,
    properties: new Map(properties),
    checks: stages.flatMap(({ objects }) => objects?.[info.name] ?? []),
    ...rulesOf(info.rules, definitions.fhirVersion, definitions.published, info.name),
  };
}

function plannedProperty(
  property: Property,
  { fhirVersion, published }: Definitions,
  stages: readonly Stage[],
): PlannedProperty {
  const check = checkOf(property, stages);
  const rules = rulesOf(property.rules, fhirVersion, published, property.path);
  const plain = property.primitive && !property.list && check === undefined;
  const idle = plain && property.rules.length === 0;
  return { property, check, ...rules, idle, target: undefined };
}

const primitiveExtension = rootProperty('Element.extension', 'Extension*');

function checkOf(property: Property, stages: readonly Stage[]): PrimitiveCheck | undefined {
  const [first, second, ...more] = stages.flatMap(({ primitives, appliesTo }) =>
    appliesTo?.(property) === false ? [] : (primitives?.[property.type] ?? []),
  );
  if (first === undefined || second === undefined) return first;
  if (more.length > 0) throw new Error(`more than two checks of ${property.path}`);
  return (value, scope, known, holder) => {
    first(value, scope, known, holder);
    second(value, scope, known, holder);
  };
}
