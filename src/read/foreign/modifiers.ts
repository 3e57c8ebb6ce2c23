import { type Issue, issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { isObject, peek } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { modifierElements } from './tables/modifiers.ts';

/**
 * What the reader does about an element that changes the meaning of what holds it. FHIR asks every
 * reader to understand such an element or not to process what holds it.
 * @see https://hl7.org/fhir/R4/conformance-rules.html#isModifier
 */
type Policy =
  /** Its value decides what is read: a file of the reader says how. */
  | 'read'
  /** These values change nothing of what is read; any other is told. */
  | readonly unknown[];

/** Types of resources that the reader reads; of all others nothing becomes a part of an exam. */
export const readTypes: readonly string[] = [
  'BodyStructure',
  'Bundle',
  'Composition',
  'Condition',
  'DetectedIssue',
  'Device',
  'DiagnosticReport',
  'DocumentReference',
  'Encounter',
  'Media',
  'Observation',
  'Organization',
  'Patient',
  'Practitioner',
  'PractitionerRole',
  'Provenance',
  'ServiceRequest',
];

/** Each modifier element of those types. What stands in the table and not here is told. */
export const policies: Readonly<Record<string, Policy>> = {
  // A structure that is not active was entered in error.
  'BodyStructure.active': [true],
  'Composition.status': 'read',
  'Condition.clinicalStatus': 'read',
  'Condition.verificationStatus': 'read',
  'DetectedIssue.status': 'read',
  'Device.status': ['active', 'inactive', 'unknown'],
  'DiagnosticReport.status': 'read',
  'DocumentReference.status': ['current', 'entered-in-error'],
  'Encounter.status': [
    'arrived',
    'triaged',
    'in-progress',
    'onleave',
    'on-hold',
    'discharged',
    'finished',
    'completed',
    'unknown',
  ],
  'Media.status': ['completed', 'entered-in-error'],
  'Observation.status': 'read',
  'Organization.active': [true],
  'Patient.active': [true],
  // A date of death does not change what was found before it, and is left in the remainder.
  'Patient.deceased[x]': [false],
  'Practitioner.active': [true],
  'ServiceRequest.status': 'read',
  'ServiceRequest.intent': 'read',
  'ServiceRequest.doNotPerform': [false],
};

/** The same, for data types: all are kept with their value, or are not read at all. */
export const keptTypes: readonly string[] = [
  'Address',
  'Age',
  'ContactPoint',
  'Count',
  'Distance',
  'Duration',
  'HumanName',
  'Identifier',
  'Quantity',
];

const rule = 'https://hl7.org/fhir/R4/conformance-rules.html#isModifier';

/** The modifier elements of a resource whose values the reader does not know: it can still be read. */
export function modifierWarnings({ type, resource, path }: Entry): Issue[] {
  // A type is text of a stranger, and `__proto__` is a name too.
  const names = Object.hasOwn(modifierElements, type) ? modifierElements[type] : undefined;
  return (names ?? []).flatMap((name) => {
    const policy = policies[`${type}.${name}`];
    if (policy === 'read' || name.includes('.')) return [];
    const stem = name.replace('[x]', '');
    return Object.keys(resource.json)
      .filter((key) => key === name || (name !== stem && key.startsWith(stem)))
      .filter((key) => policy?.includes(peek(resource, key)) !== true)
      .map((key) =>
        issue(
          'not-understood',
          [...path, key],
          { reason: 'modifier-element' },
          { severity: 'warning', rule },
        ),
      );
  });
}

/** What of a bundle may not be read, and why. */
export interface Barred {
  /** Set where nothing of the bundle may be read: it stands in the bundle itself, or in its report. */
  readonly whole?: Issue;
  readonly resources: ReadonlySet<object>;
  readonly issues: readonly Issue[];
}

/**
 * Extensions and rules that must be understood and are not: nothing of a resource that has one, at
 * any depth, may be read. The reader knows no modifier extension.
 * @see https://hl7.org/fhir/R4/extensibility.html#modifierExtension
 */
export function unknownModifiers(bundle: Readonly<Record<string, unknown>>): Barred {
  const { entry, ...rest } = bundle;
  const resources = new Set<object>();
  const issues: Issue[] = [];
  const own = unknownModifier(rest, []);
  if (own !== undefined) return { whole: own, resources, issues };
  for (const [at, one] of (Array.isArray(entry) ? entry : []).entries()) {
    if (!isObject(one)) continue;
    const { resource, ...around } = one;
    const outer = unknownModifier(around, ['entry', at]);
    const inner = isObject(resource)
      ? unknownModifier(resource, ['entry', at, 'resource'])
      : undefined;
    const found = outer ?? inner;
    if (found === undefined || !isObject(resource)) continue;
    if (wholeTypes.has(resource['resourceType'])) return { whole: found, resources, issues };
    resources.add(resource);
    issues.push(found);
  }
  return { resources, issues };
}

/** What changes the meaning of one of these changes that of everything in the exam. */
const wholeTypes: ReadonlySet<unknown> = new Set(['DiagnosticReport', 'Composition']);

function unknownModifier(json: object, path: Path): Issue | undefined {
  const found = modifierIn(json, true);
  return found && issue('not-understood', [...path, ...found], { reason: 'modifier' }, { rule });
}

/** Data read here nests sixty-four levels at most. */
function modifierIn(json: object, isRoot: boolean): Path | undefined {
  for (const [name, value] of Object.entries(json)) {
    if (name === 'modifierExtension' || (isRoot && /^_?implicitRules$/.test(name))) return [name];
    if (value === null || typeof value !== 'object') continue;
    const inner = modifierIn(value, isObject(value) && 'resourceType' in value);
    if (inner !== undefined) return [Array.isArray(json) ? Number(name) : name, ...inner];
  }
  return undefined;
}

/**
 * Resources of a bundle of others whose types the reader does not read: a family history, a procedure,
 * an allergy. They stay in the remainder, and each type is told once.
 */
export function unreadTypes(entries: readonly Entry[]): Issue[] {
  const seen = new Set<string>();
  return entries.flatMap(({ type, path }) => {
    if (readTypes.includes(type) || seen.has(type)) return [];
    seen.add(type);
    return [
      issue(
        'not-in-exam',
        path,
        { reason: 'other-type' },
        {
          severity: 'information',
        },
      ),
    ];
  });
}
