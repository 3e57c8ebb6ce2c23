import type { Issue } from '../../../issues/issue.ts';
import type { Path } from '../../../issues/path.ts';
import { issue } from '../../issue.ts';
import type { JsonNode } from '../../json/parse.ts';
import { linksOf } from './links.ts';
import { nodeOf, type OwnSystems, type Piece, pieceOf, textAt } from './piece.ts';

interface Placed {
  readonly piece: Piece;
  readonly path: Path;
}

/**
 * What resources that were put together leave out or say twice: a result that a report or panel leads to
 * and that is not there, and a resource that stands there in two versions. What was found would be told
 * in part, and silence is no finding.
 */
export function gapsIn(bundle: JsonNode, systems: OwnSystems): Issue[] {
  const placed = placedIn(bundle, systems);
  const links = linksOf(placed.map(({ piece }) => piece));
  const names = new Set<string>();
  return placed.flatMap(({ piece, path }) => {
    const found = piece.references
      .filter(({ property }) => leads(piece, property))
      .filter(({ to }) => links.targets(piece, to).length === 0)
      .map(({ property }) => issue('unresolved-reference', [...path, property], result));
    const isRepeated = piece.name !== undefined && names.has(piece.name);
    if (piece.name !== undefined) names.add(piece.name);
    return isRepeated ? [...found, issue('duplicate-key', [...path, 'id'], resource)] : found;
  });
}

const result = { reason: 'result' } as const;
const resource = { reason: 'resource' } as const;

function leads({ type }: Piece, property: string): boolean {
  return type === 'DiagnosticReport'
    ? property === 'result'
    : type === 'Observation' && property === 'hasMember';
}

function placedIn(bundle: JsonNode, systems: OwnSystems): Placed[] {
  const entries = nodeOf(bundle, 'entry');
  if (entries?.kind !== 'array') return [];
  return entries.nodes.flatMap((entry, at) => {
    const node = nodeOf(entry, 'resource');
    const rest = { text: '', line: 1, fullUrl: textAt(entry, 'fullUrl') };
    const piece = node && pieceOf(node, rest, systems);
    return piece === undefined ? [] : [{ piece, path: ['entry', at, 'resource'] }];
  });
}

/** That a bundle holds several exams, and how each can be had. */
export function withCure(found: Issue): Issue {
  if (found.code !== 'several-exams') return found;
  const { path, source } = found;
  return issue(
    'several-exams',
    path,
    { reason: 'reports' },
    source === undefined ? {} : { source },
  );
}
