import { append } from '../../data/append.ts';
import type { Path } from '../../issues/path.ts';
import { plainUri, standardSystem } from '../../terminology/system-names.ts';
import { SNOMED } from '../names/systems.ts';

/** A use of SNOMED CT; without `code` it takes in more than single concepts. */
export interface SnomedUse {
  readonly code?: string;
  /** Where it stands, below the object that was looked at. */
  readonly at: Path;
}

/** Tells whether a system is SNOMED CT; each name is looked at once. */
export type SystemNames = (system: unknown) => boolean;

export function systemNames(): SystemNames {
  const known = new Map<string, boolean>();
  return (system) => {
    if (typeof system !== 'string') return false;
    let found = known.get(system);
    if (found === undefined) {
      found = standardSystem(system) === 'snomed';
      known.set(system, found);
    }
    return found;
  };
}

/** Properties that can lead to a code; what they hold is not known yet. */
type Fields = {
  readonly [Name in
    | 'resourceType'
    | 'url'
    | 'supplements'
    | 'system'
    | 'code'
    | 'value'
    | 'concept'
    | 'filter'
    | 'source'
    | 'target'
    | 'element']?: unknown;
};

/**
 * SNOMED CT codes that an object of FHIR holds as such: a Coding or Quantity by its `system`, an
 * Identifier, the lists of a ValueSet, CodeSystem or ConceptMap. Members are not looked into
 * further than these lists go.
 */
export function snomedCodesOf(
  holder: object,
  isSnomed: SystemNames = systemNames(),
): readonly SnomedUse[] {
  const fields: Fields = holder;
  // Most objects hold none of these, and a bundle has many.
  if (fields.system !== undefined) return bySystem(fields, isSnomed);
  if (fields.element !== undefined) return byConceptMap(fields, isSnomed);
  return fields.resourceType === 'CodeSystem' ? byCodeSystem(fields, isSnomed) : noUses;
}

const noUses: readonly SnomedUse[] = [];

/** Names without which {@link snomedCodesOf} finds nothing. */
export const leadsToCodes: ReadonlySet<string> = new Set(['system', 'element', 'resourceType']);

function bySystem(fields: Fields, isSnomed: SystemNames): SnomedUse[] {
  if (!isSnomed(fields.system)) return [];
  return [
    ...codeAt(fields.code, ['code']),
    ...codeAt(fields.value, ['value']),
    ...(Array.isArray(fields.filter) ? [{ at: ['filter'] }] : []),
    ...conceptCodes(fields.concept, ['concept']),
  ];
}

function byCodeSystem(fields: Fields, isSnomed: SystemNames): SnomedUse[] {
  if (!isSnomed(fields.url) && !isSnomed(fields.supplements)) return [];
  return conceptCodes(fields.concept, ['concept']);
}

/** R4 names the systems of a group by URI, R5 by canonical URL. */
function byConceptMap(fields: Fields, isSnomed: SystemNames): SnomedUse[] {
  const { source, target, element } = fields;
  if (!Array.isArray(element)) return [];
  const found: SnomedUse[] = isSnomed(source) ? conceptCodes(element, ['element']) : [];
  if (!isSnomed(target)) return found;
  element.forEach((one: unknown, at) => {
    if (isFields(one)) append(found, conceptCodes(one.target, ['element', at, 'target']));
  });
  return found;
}

/** Codes of a list of concepts and of what is nested in them. */
function conceptCodes(list: unknown, path: Path): SnomedUse[] {
  const found: SnomedUse[] = [];
  const open: { readonly list: unknown; readonly path: Path }[] = [{ list, path }];
  const seen = new Set<unknown>();
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { list: concepts, path: at } = next;
    if (!Array.isArray(concepts) || seen.has(concepts)) continue;
    seen.add(concepts);
    concepts.forEach((concept: unknown, index) => {
      if (!isFields(concept)) return;
      append(found, codeAt(concept.code, [...at, index, 'code']));
      open.push({ list: concept.concept, path: [...at, index, 'concept'] });
    });
  }
  return found;
}

/** Places under which SNOMED CT is published, and its object identifier, before an id of a concept. */
const named = [
  'snomed\\.(?:info|org)\\.?(?::\\d+)?/(?:id/|x?sct(?:/?\\||/id/))',
  'snomedct(?:_us)?(?:/|\\||:)',
  '2\\.16\\.840\\.1\\.113883\\.6\\.96\\.?(?:/|\\||:|\\^)',
  'urn:(?:sct|snomed)(?::(?:id:)?|\\|)',
];
const conceptUri = new RegExp(`(?:${named.join('|')})\\s*(\\d{6,18})(?!\\d)`, 'g');
const implicitValueSet = /snomed\.(?:info|org)\.?(?::\d+)?\/x?sct\S*?\?fhir_(?:vs|cm)\b/;
/** Letters and dots written in ways that a reader takes for the plain ones stand behind the last bar. */
const maybe = /snomed|sct|113883\.6\.96|[%~]|[\u00AD\u200B-\u200F\u2060\uFEFF\uFF01-\uFF5E\u3002]/i;

/** The shortest that names a concept is `urn:sct:` with six digits. */
const shortest = 14;

/** False for a text in which {@link snomedInText} finds nothing. */
export function mayNameSnomed(text: string): boolean {
  return text.length >= shortest && text !== SNOMED && maybe.test(text);
}

/**
 * SNOMED CT that a text names by URI: `http://snomed.info/id/…`, a search token, the URIs of other
 * publishers, or an implicit value set. A version URI names an edition and no concept.
 * @see https://hl7.org/fhir/R4/snomedct.html on implicit value sets
 */
export function snomedInText(text: string): SnomedUse[] {
  const plain = plainUri(text);
  const found: SnomedUse[] = [...plain.matchAll(conceptUri)].flatMap(([, id]) => codeAt(id, []));
  return implicitValueSet.test(plain) ? [...found, { at: [] }] : found;
}

function codeAt(value: unknown, at: Path): SnomedUse[] {
  return typeof value === 'string' ? [{ code: value, at }] : [];
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null;
}
