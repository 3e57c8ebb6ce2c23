import { isPlainObject, plainDataIssues } from '../data/plain-data.ts';
import { signaturePurposes } from '../fhir/signature.ts';
import { fhirVersionNumber } from '../fhir/version.ts';
import { type Issue, issue } from '../issues/issue.ts';
import type { Path } from '../issues/path.ts';
import { isWellFormed } from '../model/rules/uri.ts';
import { spanOf } from '../model/time.ts';
import { builtInTables } from '../terminology/built-in.ts';
import { languageIssues } from '../terminology/languages/language-issues.ts';
import type { ExportOptions } from './options.ts';
import { type MasterDataMode, masterDataKinds } from './resources/master-data.ts';
import { targets } from './target/guides.ts';

/** What an option takes; `previous`, `snomed` and `budget` are looked at where they are used. */
type Check = (value: unknown, path: Path) => readonly Issue[];

const oneOf =
  (codes: readonly string[]): Check =>
  (value, path) =>
    typeof value === 'string' && codes.includes(value)
      ? []
      : [issue('unknown-code', path, { reason: 'option', codes })];

const flag: Check = (value, path) =>
  typeof value === 'boolean' ? [] : [issue('wrong-type', path, { reason: 'not-a-flag' })];

const made =
  (is: (value: Readonly<Record<string, unknown>>) => boolean, code: string): Check =>
  (value, path) =>
    isPlainObject(value) && is(value)
      ? []
      : [issue('wrong-type', path, { reason: 'not-made', code })];

/** @see https://www.rfc-editor.org/rfc/rfc3986 section 4.3 */
const uri: Check = (value, path) =>
  typeof value === 'string' &&
  /^[a-z][a-z0-9+.-]*:[^\s"<>\\^`{|}]+$/i.test(value) &&
  isWellFormed(value)
    ? []
    : [issue('invalid-value', path, { reason: 'absolute-uri' })];

/** One below which others can stand; there is nothing below a `urn:`. */
const web: Check = (value, path) =>
  typeof value === 'string' && /^https?:\/\//i.test(value)
    ? uri(value, path)
    : [issue('invalid-value', path, { reason: 'absolute-uri' })];

const filled: Check = (value, path) => {
  if (typeof value !== 'string') return [issue('wrong-type', path, { reason: 'not-text' })];
  return value.trim() === '' ? [issue('empty-value', path, { reason: 'text' })] : [];
};

/** An object whose parts are each left out or what their check takes; other parts are passed over. */
const parts =
  (checks: Readonly<Record<string, Check>>): Check =>
  (value, path) => {
    if (!isPlainObject(value)) return [issue('wrong-type', path, { reason: 'not-an-object' })];
    return Object.entries(checks).flatMap(([name, check]) => {
      const part = value[name];
      return part === undefined ? [] : check(part, [...path, name]);
    });
  };

const listOf =
  (check: Check): Check =>
  (value, path) => {
    if (!Array.isArray(value)) return [issue('wrong-type', path, { reason: 'not-a-list' })];
    // By place, since a list can have holes.
    return Array.from(value, (member: unknown, at) => check(member, [...path, at])).flat();
  };

/** @see https://hl7.org/fhir/R4/datatypes.html#code */
const code: Check = (value, path) =>
  typeof value === 'string' && /^\S+(?: \S+)*$/.test(value)
    ? []
    : [issue('invalid-value', path, { reason: 'target-code' })];

const codingParts: Readonly<Record<string, Check>> = {
  system: uri,
  version: filled,
  code,
  display: filled,
  userSelected: flag,
};
const beside = ['id', 'extension'];

const instant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d{1,9})?(?:Z|[+-]\d{2}:\d{2})$/;
const base64 = /^[A-Za-z0-9+/]+={0,2}$/;

/** It leaves as it is, with nothing left out. */
const coding: Check = (value, path) => {
  if (!isPlainObject(value)) return [issue('wrong-type', path, { reason: 'not-an-object' })];
  const issues = Object.entries(value).flatMap(([name, part]): readonly Issue[] => {
    const at = [...path, name];
    if (Object.hasOwn(codingParts, name)) return codingParts[name]?.(part, at) ?? [];
    return beside.includes(name) || Object.hasOwn(codingParts, name.replace(/^_/, ''))
      ? []
      : [issue('unknown-property', at, { reason: 'fhir' })];
  });
  if (value['code'] !== undefined) return issues;
  return [...issues, issue('missing-property', [...path, 'code'], { reason: 'text' })];
};

const signatureParts = parts({
  purpose: oneOf(signaturePurposes),
  when: (value, path) =>
    typeof value === 'string' && instant.test(value) && spanOf(value) !== undefined
      ? []
      : [issue('invalid-value', path, { reason: 'form', form: 'time-with-zone' })],
  format: code,
  data: (value, path) =>
    typeof value === 'string' && value !== '' && base64.test(value) && value.length % 4 === 0
      ? []
      : [issue('invalid-value', path, { reason: 'form', form: 'base64' })],
});

const identitySystems = parts({ exam: uri, statement: uri, tracking: uri });

const modes = ['match', 'reference', 'own'] as const satisfies readonly MasterDataMode[];
const mode = oneOf(modes);
const modeByKind = parts(Object.fromEntries(masterDataKinds.map((kind) => [kind, mode])));

const checks: {
  readonly [Name in Exclude<keyof ExportOptions, 'previous' | 'snomed' | 'budget'>]-?: Check;
} = {
  fhirVersion: oneOf(Object.keys(fhirVersionNumber)),
  bundleType: oneOf(['collection', 'transaction', 'document']),
  freeSet: made(({ has }) => typeof has === 'function', 'freeSet'),
  codes: made(({ entries }) => entries instanceof Map, 'codesFromConceptMap'),
  language: languageIssues,
  laterality: oneOf(['extension', 'body-structure', 'text']),
  includeValues: flag,
  transaction: oneOf(['put', 'conditional']),
  masterData: (value, path) =>
    typeof value === 'string' ? mode(value, path) : modeByKind(value, path),
  detail: oneOf(['everything', 'notable', 'report']),
  filing: parts({
    reportCategory: coding,
    encounterStatus: oneOf(['in-progress', 'finished', 'unknown']),
    security: listOf(coding),
    tags: listOf(coding),
    documentType: coding,
    documentCategory: coding,
  }),
  presentedForms: (value, path) =>
    typeof value === 'function'
      ? []
      : [issue('wrong-type', path, { reason: 'not-made', code: 'htmlForm' })],
  documentReference: flag,
  signatures: listOf((value, path) =>
    isPlainObject(value)
      ? [
          ...signatureParts(value, path),
          ...['version', 'purpose', 'when', 'format', 'data']
            .filter((name) => value[name] === undefined)
            .map((name) => issue('missing-property', [...path, name], { reason: 'text' })),
        ]
      : [issue('wrong-type', path, { reason: 'not-an-object' })],
  ),
  identity: (value, path) =>
    typeof value === 'string' ? web(value, path) : identitySystems(value, path),
  canonicalBase: uri,
  profiles: flag,
  target: oneOf(targets),
  catalogue: made(
    (tables) => Object.keys(builtInTables).every((name) => tables[name] instanceof Map),
    'createCatalogue',
  ),
  allowDraft: flag,
  narrative: flag,
};

const options: Check = parts(checks);

/** What is wrong with options that did not pass the compiler, such as those of a file or a form. */
export function optionIssues(given: ExportOptions): readonly Issue[] {
  const { language, filing, identity, canonicalBase } = given;
  const unfit = plainDataIssues({ language, filing, identity, canonicalBase });
  return unfit.length > 0 ? unfit : options(given, []);
}
