import { fromJson } from '../../fhir/json/from-json.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { fromXml } from '../../fhir/xml/from-xml.ts';
import { hasErrors, type Issue, type SourcePosition } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { issue } from '../issue.ts';
import { isFault, type JsonNode, MOST_LEVELS, parseJson } from '../json/parse.ts';
import type { FhirSource } from '../mapping/source.ts';
import type { RawUnit } from '../record/record.ts';
import { placesIn } from '../xml/place.ts';

/** A bundle as data, and the same with the place of each of its parts. */
export interface BundleText {
  readonly bundle: unknown;
  readonly node: JsonNode;
  readonly placeOf: (node: JsonNode) => SourcePosition;
  readonly issues: readonly Issue[];
}

/** The bundle of a unit, or what keeps its text from being one. */
export function bundleOf(
  unit: RawUnit,
  source: FhirSource,
): BundleText | { readonly issues: readonly Issue[] } {
  const found = unit.issues ?? [];
  if (hasErrors(found)) return { issues: found };
  return source.form === 'xml' ? xmlBundle(unit, source, found) : jsonBundle(unit, found);
}

function jsonBundle(
  { raw, at, lines }: RawUnit,
  found: readonly Issue[],
): BundleText | { readonly issues: readonly Issue[] } {
  const node = parseJson(raw);
  const places = lines === undefined ? placesIn(raw, at) : placesByLine(raw, lines);
  if (isFault(node)) {
    const { fault } = node;
    const place = { source: places(node.at) };
    if (fault === 'too-deep') {
      const facts = { reason: 'exam', maximum: MOST_LEVELS } as const;
      return { issues: [...found, issue('too-deep', [], facts, place)] };
    }
    const reason = fault === 'duplicate' ? 'json-name' : 'json';
    return { issues: [...found, issue('malformed-record', [], { reason }, place)] };
  }
  const { value, issues } = fromJson(raw);
  const all = [...found, ...issues];
  if (hasErrors(issues)) return { issues: all };
  return { bundle: value, node, placeOf: (one) => places(one.at), issues: all };
}

/** The place in the input of an offset into lines that did not stand one below the other there. */
function placesByLine(raw: string, lines: readonly number[]): (offset: number) => SourcePosition {
  const within = placesIn(raw, { line: 1 });
  return (offset) => {
    const { line } = within(offset);
    return { line: lines[line - 1] ?? line };
  };
}

/** Elements of XML have the place of their document: the reader gives data, and data has no places. */
function xmlBundle(
  { raw, at }: RawUnit,
  { fhirVersion }: FhirSource,
  found: readonly Issue[],
): BundleText | { readonly issues: readonly Issue[] } {
  const { value, issues } = fromXml(raw, fhirVersion === undefined ? {} : { fhirVersion });
  const all = [...found, ...issues];
  const node = value === undefined ? undefined : parseJson(toJson(value));
  if (node === undefined || isFault(node) || hasErrors(issues)) return { issues: all };
  return { bundle: value, node, placeOf: () => at, issues: all };
}

/** The part that a path leads to, or the last one on the way that is there. */
export function nodeAt(node: JsonNode, path: Path): JsonNode {
  let here = node;
  for (const step of path) {
    const next: JsonNode | undefined =
      here.kind === 'array'
        ? here.nodes[Number(step)]
        : here.kind === 'object'
          ? here.entries.find(({ name }) => name === step)?.node
          : undefined;
    if (next === undefined) return here;
    here = next;
  }
  return here;
}
