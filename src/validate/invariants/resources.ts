import { jsonText } from '../../data/json-text.ts';
import { fhirVersions } from '../../fhir/version.ts';
import {
  has,
  hasChoice,
  hasPart,
  isObject,
  type JsonObject,
  listOf,
  objectsOf,
} from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';
import { beforeR5, type Invariant, rules } from './invariant.ts';

/** Invariants of single resources and their parts. */
export const resourceInvariants: readonly Invariant[] = [
  ...rules(fhirVersions, [
    [
      'obs-3',
      'a reference range needs a low, a high or a text',
      (it) => hasPart(it, 'low') || hasPart(it, 'high') || has(it, 'text'),
    ],
    [
      'obs-6',
      'a value and a reason for its absence cannot both stand',
      (it) => !hasPart(it, 'dataAbsentReason') || !hasChoice(it, 'value'),
    ],
    ['obs-7', 'a component repeats the code that has a value', noComponentRepeatsCode],
    [
      'cmp-1',
      'a section needs a text, entries or sections in it',
      (it) => has(it, 'text') || hasPart(it, 'entry') || hasPart(it, 'section'),
    ],
    [
      'cmp-2',
      'a reason for emptiness, and entries',
      (it) => !hasPart(it, 'emptyReason') || !hasPart(it, 'entry'),
    ],
    [
      'org-1',
      'a name or an identifier must stand',
      (it) => has(it, 'name') || hasPart(it, 'identifier'),
    ],
    [
      'pat-1',
      'a contact needs a name, telecom, address or organization',
      (it) =>
        has(it, 'name') ||
        hasPart(it, 'telecom') ||
        hasPart(it, 'address') ||
        hasPart(it, 'organization'),
    ],
    [
      'prr-1',
      'details of an order without its code',
      (it) => !hasPart(it, 'orderDetail') || has(it, 'code'),
    ],
  ]),
  ...rules(beforeR5, [
    ['org-2', 'an organization cannot have an address of use home', (it) => it['use'] !== 'home'],
    ['org-3', 'an organization cannot have a telecom of use home', (it) => it['use'] !== 'home'],
    ['ppc-1', 'a policy must stand', (it) => hasPart(it, 'policy') || hasPart(it, 'policyRule')],
    ['ppc-2', 'a consent of this scope needs a patient', (it) => fitsScope(it, 'patient-privacy')],
    ['ppc-3', 'a consent of this scope needs a patient', (it) => fitsScope(it, 'research')],
    ['ppc-4', 'a consent of this scope needs a patient', (it) => fitsScope(it, 'adr')],
    ['ppc-5', 'a consent of this scope needs a patient', (it) => fitsScope(it, 'treatment')],
  ]),
  ...rules(
    ['R5'],
    [
      ['obs-8', 'bodySite and bodyStructure cannot both stand', oneBodySite],
      ['bdystr-1', 'bodySite and bodyStructure cannot both stand', oneBodySite],
      [
        'org-3',
        'an organization cannot have a telecom of use home',
        (it) => noneAtHome(it, 'telecom'),
      ],
      [
        'org-4',
        'an organization cannot have an address of use home',
        (it) => noneAtHome(it, 'address'),
      ],
      [
        'enc-1',
        'a participant needs a type or an actor',
        (it) => hasPart(it, 'actor') || has(it, 'type'),
      ],
      [
        'dev-1',
        'only one name of a device can be the displayed one',
        (it) => objectsOf(it['name']).filter(({ display }) => display === true).length <= 1,
      ],
    ],
  ),
];

function oneBodySite(it: JsonObject): boolean {
  return !hasPart(it, 'bodySite') || !hasPart(it, 'bodyStructure');
}

function noneAtHome(it: JsonObject, name: string): boolean {
  return objectsOf(it[name]).every(({ use }) => use !== 'home');
}

/** The published expression names a code system `something`, and so holds for all real ones. */
function fitsScope(it: JsonObject, code: string): boolean {
  const codings = isObject(it['scope']) ? objectsOf(it['scope']['coding']) : [];
  const found = codings.some(
    (coding) => coding['system'] === 'something' && coding['code'] === code,
  );
  return !found || hasPart(it, 'patient');
}

/** Codings are the same where all that they say is the same. */
function noComponentRepeatsCode(it: JsonObject, { resource }: Scope): boolean {
  if (!hasPart(it, 'component') || !hasChoice(it, 'value')) return true;
  const own = codingsOf(resource);
  const codes = new Set(own.map(({ code }) => code));
  // Nearly none shares its code; what is no text is no code, and is compared whole.
  const alike = objectsOf(it['component'])
    .flatMap(codingsOf)
    .filter(({ code }) => typeof code === 'object' || codes.has(code));
  if (alike.length === 0) return true;
  const texts = new Set(own.map(canonicalText));
  return !alike.some((coding) => texts.has(canonicalText(coding)));
}

function codingsOf({ code }: JsonObject): readonly JsonObject[] {
  return isObject(code) ? objectsOf(code['coding']) : [];
}

/** The same text for the same content in whatever order. */
function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${listOf(value).map(canonicalText).join()}]`;
  if (!isObject(value)) return jsonText(value);
  const parts = Object.keys(value)
    .sort()
    .map((name) => `${JSON.stringify(name)}:${canonicalText(value[name])}`);
  return `{${parts.join()}}`;
}
