import type { Uri } from '../../../model/primitive.ts';
import type { JsonNode, JsonObject } from '../../json/parse.ts';

/** A reference of a resource: the property that holds it, and where it leads, as it is written. */
export interface PieceReference {
  readonly property: string;
  readonly to: string;
}

/** A resource of an export, as far as it must be known to find what belongs together. */
export interface Piece {
  /** The entry of a Bundle that it is or becomes, verbatim. */
  readonly text: string;
  /** Line of the input in which it begins. */
  readonly line: number;
  readonly type: string;
  readonly fullUrl?: string;
  /** `Type/id`. */
  readonly name?: string;
  readonly references: readonly PieceReference[];
  /** Exam of this library that its identifier names. */
  readonly ownExam?: string;
  /** Day on which it was observed, as it is written. */
  readonly day?: string;
}

/** Systems of the identifiers that this library writes. */
export interface OwnSystems {
  readonly exam: Uri;
  readonly statement: Uri;
}

/** What of a resource must be known; undefined where it is none. */
export function pieceOf(
  node: JsonNode,
  { text, line, fullUrl }: Pick<Piece, 'text' | 'line'> & { readonly fullUrl?: string | undefined },
  systems: OwnSystems,
): Piece | undefined {
  const type = textAt(node, 'resourceType');
  if (node.kind !== 'object' || type === undefined) return undefined;
  const id = textAt(node, 'id');
  const day = dayOf(node);
  const ownExam = ownExamOf(node, systems);
  return {
    text,
    line,
    type,
    ...(fullUrl !== undefined && { fullUrl }),
    ...(id !== undefined && { name: `${type}/${id}` }),
    references: referencesIn(node),
    ...(ownExam !== undefined && { ownExam }),
    ...(day !== undefined && { day }),
  };
}

/** The value of a property. */
export function nodeOf(node: JsonNode, name: string): JsonNode | undefined {
  if (node.kind !== 'object') return undefined;
  return node.entries.find((entry) => entry.name === name)?.node;
}

/** The text of a property; undefined where it is none. */
export function textAt(node: JsonNode, name: string): string | undefined {
  const found = nodeOf(node, name);
  return found?.kind === 'text' ? found.text : undefined;
}

const times = ['effectiveDateTime', 'effectiveInstant', 'recordedDate', 'onsetDateTime'] as const;

function dayOf(node: JsonObject): string | undefined {
  const period = nodeOf(node, 'effectivePeriod');
  const time = times.map((name) => textAt(node, name)).find((one) => one !== undefined);
  return (time ?? (period && textAt(period, 'start')))?.slice(0, 10);
}

/** The exam of an identifier of ours: of a report whole, of a statement what stands before its bar. */
function ownExamOf(node: JsonObject, { exam, statement }: OwnSystems): string | undefined {
  const identifiers = nodeOf(node, 'identifier');
  if (identifiers?.kind !== 'array') return undefined;
  for (const one of identifiers.nodes) {
    const value = textAt(one, 'value');
    const system = textAt(one, 'system');
    if (value === undefined) continue;
    if (system === exam) return value;
    if (system === statement && value.includes('|')) return value.slice(0, value.indexOf('|'));
  }
  return undefined;
}

/** Every reference of a resource, those of contained ones too. Data is at most as deep as the reader allows. */
function referencesIn(resource: JsonObject): PieceReference[] {
  const found: PieceReference[] = [];
  const walk = (node: JsonNode, property: string): void => {
    if (node.kind === 'array') for (const inner of node.nodes) walk(inner, property);
    if (node.kind !== 'object') return;
    const to = textAt(node, 'reference');
    if (to !== undefined && to !== '' && !to.startsWith('#')) found.push({ property, to });
    for (const entry of node.entries) walk(entry.node, entry.name);
  };
  walk(resource, '');
  return found;
}
