import { plainDataIssues } from '../../data/plain-data.ts';
import { within } from '../../issues/budget.ts';
import { failure, type Issue, issue, type Outcome } from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import type { Relation } from '../types.ts';
import { adopterCodes, type CodeMapOptions } from './adopter-codes.ts';
import type { AdopterCodes, CodeMapEntry } from './entry.ts';

/** How a ConceptMap becomes a code map. */
export interface ConceptMapOptions extends CodeMapOptions {
  /** `replace`: what the map says of a system takes the place of our codings in it. Default `add`. */
  readonly action?: 'add' | 'replace';
}

/**
 * How each word of FHIR relates the target to the source; none: there is no such target.
 * @see https://hl7.org/fhir/R4/valueset-concept-map-equivalence.html and
 * https://hl7.org/fhir/R5/valueset-concept-map-relationship.html
 */
const relations: ReadonlyMap<string, Relation | undefined> = new Map([
  ['equal', 'equivalent'],
  ['equivalent', 'equivalent'],
  ['wider', 'wider'],
  // The target subsumes the source, or is a special case of it.
  ['subsumes', 'wider'],
  ['narrower', 'narrower'],
  ['specializes', 'narrower'],
  ['inexact', 'relatedto'],
  ['relatedto', 'relatedto'],
  ['unmatched', undefined],
  ['disjoint', undefined],
  ['source-is-narrower-than-target', 'wider'],
  ['source-is-broader-than-target', 'narrower'],
  ['related-to', 'relatedto'],
  ['not-related-to', undefined],
]);

/**
 * Reads a code map from a FHIR ConceptMap of R4, R4B or R5. The source of a group is one of our
 * code systems, or a system that another group leads to.
 *
 * @param value The ConceptMap as plain data.
 * @param options `action`: whether a mapping adds a code to ours (`add`, the default) or stands in
 *   their place (`replace`), where a concept without a match (`unmatched`, `noMap`) loses our
 *   coding in that system; and those of `adopterCodes`.
 * @returns The map. It fails where `adopterCodes` does, and where the ConceptMap cannot be
 *   understood.
 * @example
 * const codes = orThrow('read the code map', codesFromConceptMap(resource));
 * const local = toBundle(exam, { codes });
 * @see https://hl7.org/fhir/R4/conceptmap.html
 */
export function codesFromConceptMap(
  value: unknown,
  options: ConceptMapOptions = {},
): Outcome<AdopterCodes> {
  return within(
    'codeMap',
    options.budget,
    () => readMap(value, options),
    (why) => failure([endedIssue(why)]),
  );
}

function readMap(
  value: unknown,
  { action = 'add', ...options }: ConceptMapOptions,
): Outcome<AdopterCodes> {
  const unfit = plainDataIssues(value);
  if (unfit.length > 0) return failure(unfit);
  const reading: Reading = { action, entries: [], issues: [] };
  const map = asFields(value);
  if (map?.resourceType !== 'ConceptMap') {
    return failure([issue('wrong-type', ['resourceType'], { reason: 'not-a-concept-map' })]);
  }
  listAt(map, 'group', [], reading).forEach(([group, path]) => {
    readGroup(group, path, reading);
  });
  const checked = adopterCodes(reading.entries, options);
  const issues = cutIssues([...reading.issues, ...checked.issues]);
  return reading.issues.length > 0 ? failure(issues) : { ...checked, issues };
}

type Fields = {
  readonly [Name in
    | 'resourceType'
    | 'group'
    | 'source'
    | 'target'
    | 'targetVersion'
    | 'element'
    | 'code'
    | 'display'
    | 'equivalence'
    | 'relationship'
    | 'noMap']?: unknown;
};

interface Reading {
  readonly action: 'add' | 'replace';
  readonly entries: CodeMapEntry[];
  readonly issues: Issue[];
}

interface Group {
  readonly path: Path;
  readonly source: string;
  readonly system: string;
  readonly version: string | undefined;
}

function readGroup(fields: Fields, path: Path, reading: Reading): void {
  const source = textAt(fields, 'source', path, reading);
  const target = textAt(fields, 'target', path, reading);
  if (source === undefined || target === undefined) return;
  const [system = '', ofTarget] = target.split('|');
  const stated = optionalText(fields, 'targetVersion', path, reading);
  // R5 writes a version behind the canonical URL; the map holds for our codes in any version.
  const group = { path, source: source.split('|')[0] ?? '', system, version: stated ?? ofTarget };
  listAt(fields, 'element', path, reading).forEach(([element, at]) => {
    readElement(element, group, at, reading);
  });
}

function readElement(element: Fields, group: Group, path: Path, reading: Reading): void {
  const code = textAt(element, 'code', path, reading);
  if (code === undefined) return;
  const { source, system } = group;
  const paths = pathsOf(group, path);
  const none = { source, code, system, action: reading.action, path, paths };
  const targets = element.target === undefined ? [] : listAt(element, 'target', path, reading);
  const matched = targets.map(([target, at]) =>
    readTarget(target, { code, group, paths }, at, reading),
  );
  if (matched.every((found) => !found) && reading.action === 'replace') reading.entries.push(none);
}

/** True where the target stands for the source in any way. */
function readTarget(
  fields: Fields,
  { code, group, paths }: Source,
  path: Path,
  reading: Reading,
): boolean {
  const { source, system, version } = group;
  const name = fields.relationship === undefined ? 'equivalence' : 'relationship';
  const word = textAt(fields, name, path, reading);
  if (word === undefined) return true;
  if (!relations.has(word)) {
    reading.issues.push(
      issue('unknown-word', [...path, name], { reason: 'relation', codes: [...relations.keys()] }),
    );
    return true;
  }
  const relation = relations.get(word);
  if (relation === undefined) return false;
  reading.entries.push({
    source,
    code,
    system,
    target: textAt(fields, 'code', path, reading),
    version,
    display: optionalText(fields, 'display', path, reading),
    relation,
    action: reading.action,
    path,
    paths: {
      ...paths,
      target: [...path, 'code'],
      display: [...path, 'display'],
      relation: [...path, name],
    },
  });
  return true;
}

interface Source {
  readonly code: string;
  readonly group: Group;
  readonly paths: NonNullable<CodeMapEntry['paths']>;
}

/** The source and the systems stand above the target. */
function pathsOf(group: Group, element: Path): Source['paths'] {
  return {
    source: [...group.path, 'source'],
    system: [...group.path, 'target'],
    version: [...group.path, 'targetVersion'],
    code: [...element, 'code'],
  };
}

function listAt(
  fields: Fields,
  name: keyof Fields,
  path: Path,
  { issues }: Reading,
): (readonly [Fields, Path])[] {
  const list = fields[name];
  if (!Array.isArray(list)) {
    const at = [...path, name];
    issues.push(
      list === undefined
        ? issue('missing-property', at, { reason: 'list' })
        : issue('wrong-type', at, { reason: 'not-a-list' }),
    );
    return [];
  }
  return list.flatMap((item: unknown, at) => {
    const inner = asFields(item);
    if (inner !== undefined) return [[inner, [...path, name, at]] as const];
    issues.push(issue('wrong-type', [...path, name, at], { reason: 'not-an-object' }));
    return [];
  });
}

function textAt(
  fields: Fields,
  name: keyof Fields,
  path: Path,
  reading: Reading,
): string | undefined {
  const text = optionalText(fields, name, path, reading);
  if (text === undefined && fields[name] === undefined) {
    reading.issues.push(issue('missing-property', [...path, name], { reason: 'text' }));
  }
  return text;
}

function optionalText(
  fields: Fields,
  name: keyof Fields,
  path: Path,
  { issues }: Reading,
): string | undefined {
  const text = fields[name];
  if (text === undefined) return undefined;
  if (typeof text === 'string' && text !== '') return text;
  issues.push(issue('wrong-type', [...path, name], { reason: 'not-text' }));
  return undefined;
}

function asFields(value: unknown): Fields | undefined {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : undefined;
}
