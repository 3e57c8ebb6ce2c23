import { UCUM } from '../fhir/systems.ts';
import type { Codes, Property } from './definitions.ts';
import { isObject, type JsonObject, objectsOf, textOf } from './json.ts';
import { isAbsolute } from './resolve.ts';
import { report, type Scope } from './scope.ts';
import type { Stage } from './stage.ts';
import { grammars } from './terminology/grammars.ts';
import { unitSize } from './terminology/ucum.ts';

/** The stage of codes: those of systems that are held whole, units, and bindings to value sets. */
export const terminologyStage: Stage = {
  primitives: {
    code: (value, scope, property) => checkBinding(value, property, scope),
    uri: (value, scope, property) => checkBinding(value, property, scope),
    string: (value, scope, property) => checkBinding(value, property, scope),
  },
  objects: {
    Coding: (value, scope, property) => {
      checkCoding(value, scope);
      checkBinding(value, property, scope);
    },
    CodeableConcept: (value, scope, property) => checkBinding(value, property, scope),
    CodeableReference: (value, scope, property) =>
      checkBinding(value['concept'], property, scope, ['concept']),
    ...Object.fromEntries(
      ['Quantity', 'Age', 'Count', 'Distance', 'Duration'].map((type) => [type, checkUnit]),
    ),
  },
};

type Binding = Partial<Pick<Property, 'codes' | 'usualCodes' | 'outerCodes'>>;

const page = 'https://hl7.org/fhir/R4/terminologies.html';

/** A code of a system that is held whole, and its display. */
function checkCoding(coding: JsonObject, scope: Scope): void {
  const { system, code, display, version } = coding;
  if (typeof system !== 'string') return;
  if (!isAbsolute(system)) {
    report(
      scope,
      'invalid-value',
      'a system must be an absolute URI',
      {
        expected: 'a URI with its scheme',
        rule: 'https://hl7.org/fhir/R4/datatypes.html#Coding',
        value: system,
      },
      ['system'],
    );
    return;
  }
  if (typeof code !== 'string') return;
  if (system === UCUM) checkUcum(code, scope, ['code']);
  // What another edition of the system holds is not known here.
  const codes = scope.definitions.codeSystems.get(system);
  if (codes !== undefined && version === undefined) checkCode(code, display, codes, scope);
}

function checkCode(code: string, display: unknown, codes: Codes, scope: Scope): void {
  const displays = codes.get(code);
  if (displays === undefined) {
    report(
      scope,
      'unknown-code',
      'the code system has no such code',
      {
        expected: 'a code that the system has',
        rule: `${page}#system`,
        value: code,
      },
      ['code'],
    );
  } else if (typeof display === 'string' && !isDisplay(display, displays)) {
    report(
      scope,
      'wrong-display',
      'the display is not that of the code',
      {
        expected: typeof displays === 'string' ? displays : displays.join(' or '),
        rule: 'https://hl7.org/fhir/R4/datatypes.html#Coding',
        value: display,
      },
      ['display'],
    );
  }
}

/** Upper and lower case make no other display. */
function isDisplay(display: string, displays: string | readonly string[]): boolean {
  if (typeof displays === 'string') return displays === '' || same(display, displays);
  return displays.some((each) => same(display, each));
}

function same(one: string, other: string): boolean {
  return one === other || one.toLowerCase() === other.toLowerCase();
}

function checkUnit({ system, code }: JsonObject, scope: Scope): void {
  if (system === UCUM && typeof code === 'string') checkUcum(code, scope, ['code']);
}

function checkUcum(code: string, scope: Scope, below: readonly string[]): void {
  let known = scope.units.get(code);
  if (known === undefined) {
    known = unitSize(code) !== undefined;
    scope.units.set(code, known);
  }
  if (known) return;
  report(
    scope,
    'unknown-unit',
    'no UCUM code',
    {
      expected: 'a case-sensitive code of UCUM, such as mm[Hg]',
      rule: 'https://ucum.org/ucum',
      value: code,
    },
    below,
  );
}

/**
 * Holds a code, Coding, CodeableConcept or Quantity to the value sets that its element is bound to.
 * A value set that is not held whole is left to a terminology server.
 */
export function checkBinding(
  value: unknown,
  { codes, usualCodes, outerCodes }: Binding,
  scope: Scope,
  below: readonly (string | number)[] = [],
): void {
  if (codes === undefined && usualCodes === undefined && outerCodes === undefined) return;
  const found = codingsOf(value);
  if (found === undefined) return;
  const outside = codes ?? (found.length > 0 ? outerCodes : undefined);
  if (outside !== undefined && !anyIn(outside, found, scope)) {
    const none = found.length === 0;
    report(
      scope,
      none ? 'missing-property' : 'unknown-code',
      none ? 'no code' : notInSet,
      {
        expected: `a code of ${outside}`,
        rule: `${page}#required`,
        value: found[0]?.code,
      },
      below,
    );
  } else if (usualCodes !== undefined && !anyIn(usualCodes, found, scope)) {
    report(
      scope,
      'unknown-code',
      notInUsualSet,
      {
        severity: 'warning',
        expected: `a code of ${usualCodes}`,
        rule: `${page}#extensible`,
        value: found[0]?.code,
      },
      below,
    );
  }
}

const notInSet = 'no code is of the value set that must be used';
const notInUsualSet = 'no code is of the value set that should be used where it has a fitting one';

interface FoundCode {
  readonly system: string | undefined;
  readonly code: string;
}

/** `undefined` for a value that is no code at all, or is absent for a reason of its own. */
function codingsOf(value: unknown): readonly FoundCode[] | undefined {
  if (typeof value === 'string') return [{ system: undefined, code: value }];
  if (!isObject(value)) return undefined;
  if (typeof value['code'] === 'string') {
    return [{ system: textOf(value['system']) ?? '', code: value['code'] }];
  }
  const codings = objectsOf(value['coding']);
  return codings.flatMap(({ system, code }) =>
    typeof code === 'string' ? [{ system: textOf(system) ?? '', code }] : [],
  );
}

function anyIn(valueSet: string, found: readonly FoundCode[], scope: Scope): boolean {
  const grammar = grammars.get(valueSet);
  if (grammar !== undefined) return found.some(({ code }) => grammar(code));
  const members = scope.definitions.valueSets.get(valueSet);
  if (members === undefined) return true;
  return found.some(({ system, code }) => {
    if (system !== undefined) return isMember(members.get(system), system, code, scope);
    for (const [each, codes] of members) if (isMember(codes, each, code, scope)) return true;
    return false;
  });
}

function isMember(
  codes: 'all' | ReadonlySet<string> | undefined,
  system: string,
  code: string,
  { definitions }: Scope,
): boolean {
  if (codes === undefined) return false;
  if (codes !== 'all') return codes.has(code);
  return definitions.codeSystems.get(system)?.has(code) ?? true;
}
