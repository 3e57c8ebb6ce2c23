import { LOINC, SNOMED, UCUM } from '../../fhir/names/systems.ts';
import { nearest } from '../../issues/nearest.ts';
import { isLoincCode } from '../../terminology/published/check-digits.ts';
import { isAbsolute } from '../bundles/resolve.ts';
import type { Property } from '../elements/definitions.ts';
import { isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import { report, type Scope, type SystemFault } from '../walk/scope.ts';
import type { Stage } from '../walk/stage.ts';
import { grammars } from './grammars.ts';
import { isSnomedCode } from './snomed.ts';
import { unitSize } from './ucum.ts';

/** The stage of codes: those of systems that are held whole, units, and bindings to value sets. */
export const terminologyStage: Stage = {
  appliesTo: isBound,
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

function isBound({ codes, usualCodes, outerCodes }: Binding): boolean {
  return codes !== undefined || usualCodes !== undefined || outerCodes !== undefined;
}

type Binding = Partial<Pick<Property, 'codes' | 'usualCodes' | 'outerCodes'>>;

const page = 'https://hl7.org/fhir/R4/terminologies.html';

/** A code, by what is known of its system: all its codes, its grammar, its check digits. */
function checkCoding(coding: JsonObject, scope: Scope): void {
  const { system, code, display, version } = coding;
  if (typeof system !== 'string') return;
  checkSystem(system, scope, ['system']);
  if (typeof code !== 'string') return;
  if (system === UCUM) checkUcum(code, scope, ['code']);
  const formed = codeForms.get(system);
  if (formed !== undefined && !formed(code)) sayMalformed(code, scope);
  // What another edition of the system holds is not known here.
  if (version === undefined) checkCode(system, code, display, scope);
}

/** Systems whose codes have check digits, so that a slip of the pen shows. */
const codeForms: ReadonlyMap<string, (code: string) => boolean> = new Map([
  [SNOMED, isSnomedCode],
  // Parts, answers, answer lists and groups begin with letters.
  [LOINC, (code) => isLoincCode(code) || /^(?:L[AGLP]|MTHU)\d+(?:-\d)?$/.test(code)],
]);

/** Codes of a table that stand for many: the table has `NNxxx`, with a country for the last letters. */
const codePatterns: ReadonlyMap<string, RegExp> = new Map([
  // https://terminology.hl7.org/CodeSystem-v2-0203.html, NNxxx: three letters of ISO 3166.
  ['http://terminology.hl7.org/CodeSystem/v2-0203', /^NN[A-Z]{3}$/],
  // ISO 3166-1, codes that users assign (AA, QM to QZ, XA to XZ, ZZ) and that are reserved, from memory.
  [
    'urn:iso:std:iso:3166',
    /^(?:(?:AA|Q[M-Z]|X[A-Z]|ZZ)[A-Z]?|9\d\d|AC|CP|CQ|DG|EA|EU|EZ|FX|IC|SU|TA|UK|UN)$/,
  ],
]);

function sayMalformed(code: string, scope: Scope): void {
  report(
    scope,
    'unknown-code',
    { reason: 'check-digit' },
    {
      rule: `${page}#system`,
      value: code,
    },
    ['code'],
  );
}

/** A system that is named in a way that no receiver would know it by. */
export function checkSystem(
  system: string,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  let wrong = scope.systems.get(system);
  if (wrong === undefined && !scope.systems.has(system)) {
    wrong = isAbsolute(system) ? wrongName(system) : 'coding-system';
    scope.systems.set(system, wrong);
  }
  if (wrong === undefined) return;
  report(
    scope,
    'invalid-value',
    { reason: wrong, system: knownNames.get(plainName(system)) },
    {
      rule: 'https://hl7.org/fhir/R4/datatypes.html#Coding',
      value: system,
    },
    below,
  );
}

const knownNames: ReadonlyMap<string, string> = new Map(
  [SNOMED, LOINC, UCUM].map((url) => [plainName(url), url]),
);

/** Without what people get wrong: http or https, www, upper case, a slash at the end. */
function plainName(url: string): string {
  return url
    .toLowerCase()
    .replace(/^https?:\/\//, '')
    .replace(/^www\./, '')
    .replace(/\/$/, '');
}

const valueSetUrl = /^https?:\/\/(?:hl7\.org\/fhir|terminology\.hl7\.org)\/ValueSet\//;

function wrongName(system: string): SystemFault | undefined {
  if (valueSetUrl.test(system)) return 'value-set-as-system';
  const right = knownNames.get(plainName(system));
  return right === undefined || right === system ? undefined : 'other-uri-of-system';
}

function checkCode(system: string, code: string, display: unknown, scope: Scope): void {
  const codes = scope.definitions.codeSystems.get(system);
  if (codes === undefined) return;
  const displays = codes.get(code);
  if (displays === undefined && codePatterns.get(system)?.test(code)) return;
  if (displays === undefined) {
    report(
      scope,
      'unknown-code',
      { reason: 'system', system, code: nearest(code, codes.keys()) },
      {
        rule: `${page}#system`,
        value: code,
      },
      ['code'],
    );
  } else if (typeof display === 'string' && !isDisplay(display, displays)) {
    report(
      scope,
      'wrong-display',
      { reason: 'code', codes: typeof displays === 'string' ? [displays] : displays },
      {
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

/** Units are codes too: mostly of UCUM, and else of any system. */
function checkUnit({ system, code }: JsonObject, scope: Scope): void {
  if (typeof system !== 'string') return;
  if (system !== UCUM) checkSystem(system, scope, ['system']);
  if (typeof code !== 'string') return;
  if (system === UCUM) checkUcum(code, scope, ['code']);
  else checkCode(system, code, undefined, scope);
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
    { reason: 'ucum-code' },
    {
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
  binding: Binding,
  scope: Scope,
  below: readonly (string | number)[] = [],
): void {
  if (!isBound(binding)) return;
  const { codes, usualCodes, outerCodes } = binding;
  const found = codingsOf(value);
  if (found === undefined) return;
  const outside = codes ?? (found.length > 0 ? outerCodes : undefined);
  if (outside !== undefined && !anyIn(outside, found, scope)) {
    const said = { rule: `${page}#required`, value: found[0]?.code };
    if (found.length > 0) {
      report(scope, 'unknown-code', { reason: 'required-set', url: outside }, said, below);
    } else {
      report(scope, 'missing-property', { reason: 'bound-code', url: outside }, said, below);
    }
  } else if (usualCodes !== undefined && !anyIn(usualCodes, found, scope)) {
    report(
      scope,
      'unknown-code',
      { reason: 'extensible-set', url: usualCodes },
      {
        severity: 'warning',
        rule: `${page}#extensible`,
        value: found[0]?.code,
      },
      below,
    );
  }
}

/** Whether a code is in a value set; `undefined` where the set is not held. */
export function isInValueSet(
  valueSet: string,
  found: FoundCode,
  scope: Scope,
): boolean | undefined {
  const held = grammars.has(valueSet) || scope.definitions.valueSets.has(valueSet);
  return held ? anyIn(valueSet, [found], scope) : undefined;
}

export interface FoundCode {
  readonly system: string | undefined;
  readonly code: string;
}

/** `undefined` for a value that is not a code. */
export function codingsOf(value: unknown): readonly FoundCode[] | undefined {
  if (typeof value === 'string') return [{ system: undefined, code: value }];
  if (!isObject(value)) return undefined;
  if (typeof value['code'] === 'string') {
    return [{ system: textOf(value['system']) ?? '', code: value['code'] }];
  }
  const found: FoundCode[] = [];
  for (const { system, code } of objectsOf(value['coding'])) {
    if (typeof code === 'string') found.push({ system: textOf(system) ?? '', code });
  }
  return found;
}

function anyIn(valueSet: string, found: readonly FoundCode[], scope: Scope): boolean {
  const grammar = grammars.get(valueSet);
  if (grammar !== undefined)
    return found.some(
      ({ system, code }) =>
        ((system === undefined || system === grammar.system) && grammar.holds(code)) ||
        isShortFormat(code, scope),
    );
  const members = scope.definitions.valueSets.get(valueSet);
  if (members === undefined) return true;
  return found.some(({ system, code }) => {
    if (system !== undefined) return isMember(members.get(system), system, code, scope);
    for (const [each, codes] of members) if (isMember(codes, each, code, scope)) return true;
    return false;
  });
}

/**
 * A server may name its formats in short.
 * @see https://hl7.org/fhir/R4/capabilitystatement-definitions.html#CapabilityStatement.format
 */
function isShortFormat(code: string, { trail, path, resource }: Scope): boolean {
  if (resource['resourceType'] !== 'CapabilityStatement') return false;
  const name = trail.length === 0 ? path.find((step) => typeof step === 'string') : undefined;
  return name === 'format' && ['xml', 'json', 'ttl'].includes(code);
}

function isMember(
  codes: 'all' | ReadonlySet<string> | undefined,
  system: string,
  code: string,
  { definitions }: Scope,
): boolean {
  if (codes === undefined) return false;
  if (codes !== 'all') return codes.has(code);
  const known = definitions.codeSystems.get(system);
  return known === undefined || known.has(code) || codePatterns.get(system)?.test(code) === true;
}
