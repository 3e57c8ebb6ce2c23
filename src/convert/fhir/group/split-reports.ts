import { isFault, type JsonNode, parseJson } from '../../json/parse.ts';
import type { RawUnit, Splitter } from '../../record/record.ts';
import { placesIn } from '../../xml/place.ts';
import { groupsOf } from './groups.ts';
import { nodeOf, type OwnSystems, type Piece, pieceOf, textAt } from './piece.ts';
import { unitOf } from './unit.ts';

/** A splitter of bundles, of which one that holds several reports becomes a bundle for each. */
export function byReport(splitter: Splitter, systems: OwnSystems): Splitter {
  const parted = (units: Iterable<RawUnit>): RawUnit[] =>
    [...units].flatMap((unit) => partsOf(unit, systems));
  return { push: (piece) => parted(splitter.push(piece)), end: () => parted(splitter.end()) };
}

/** The bundle as it is, or one for each report and for what belongs to none, with the same head. */
function partsOf(unit: RawUnit, systems: OwnSystems): readonly RawUnit[] {
  const { raw, at, issues } = unit;
  const mark = '"DiagnosticReport"';
  const isSeveral = raw.indexOf(mark) !== raw.lastIndexOf(mark);
  if (issues !== undefined || !isSeveral) return [unit];
  const node = parseJson(raw);
  if (isFault(node) || textAt(node, 'resourceType') !== 'Bundle') return [unit];
  const pieces = piecesOf(node, raw, placesIn(raw, at), systems);
  const reports = pieces?.filter(({ type }) => type === 'DiagnosticReport') ?? [];
  if (pieces === undefined || reports.length < 2) return [unit];
  const head = headOf(node, raw);
  return groupsOf(pieces)?.map((group) => unitOf(group, head)) ?? [unit];
}

/** The resources of a bundle; undefined where an entry is none, so that nothing can be put beside it. */
function piecesOf(
  bundle: JsonNode,
  raw: string,
  placeOf: ReturnType<typeof placesIn>,
  systems: OwnSystems,
): readonly Piece[] | undefined {
  const entries = nodeOf(bundle, 'entry');
  if (entries?.kind !== 'array') return undefined;
  const pieces = entries.nodes.flatMap((entry): Piece[] => {
    const resource = nodeOf(entry, 'resource');
    if (resource === undefined) return [];
    const { at } = entry;
    const text = raw.slice(at, endOf(raw, at));
    const { line } = placeOf(at);
    const piece = pieceOf(resource, { text, line, fullUrl: textAt(entry, 'fullUrl') }, systems);
    return piece === undefined ? [] : [piece];
  });
  return pieces.length === entries.nodes.length ? pieces : undefined;
}

/** All that a bundle says besides its entries. */
function headOf(bundle: JsonNode, raw: string): string {
  if (bundle.kind !== 'object') return '';
  return bundle.entries
    .filter(({ name }) => name !== 'entry')
    .map(({ name, node: { at } }) => `${JSON.stringify(name)}:${raw.slice(at, endOf(raw, at))},`)
    .join('');
}

/** The place behind a value of JSON that is known to be sound. */
function endOf(text: string, start: number): number {
  const plain = /[^\s,\]}"{[]+/y;
  plain.lastIndex = start;
  if (plain.test(text)) return plain.lastIndex;
  let depth = 0;
  for (let at = start; at < text.length; at += 1) {
    const mark = text[at];
    if (mark === '"') at = quoteBehind(text, at);
    else if (mark === '{' || mark === '[') depth += 1;
    else if (mark === '}' || mark === ']') depth -= 1;
    if (depth === 0) return at + 1;
  }
  return text.length;
}

/** The quote that ends the string which begins at one. */
function quoteBehind(text: string, start: number): number {
  let at = start + 1;
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return at;
}
