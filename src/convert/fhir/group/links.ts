import type { Piece, PieceReference } from './piece.ts';

/** Where the references of pieces lead among them. */
export interface Links {
  /** Every piece that a reference can mean: several where a name stands for several. */
  readonly targets: (from: Piece, to: string) => readonly Piece[];
  /** The person of a piece: the same text for the same person, or nothing. */
  readonly personOf: (piece: Piece) => string | undefined;
  readonly visitOf: (piece: Piece) => string | undefined;
}

/** Characters and links that may still be looked at; below nothing the groups are not put together. */
export interface Room {
  left: number;
}

/**
 * The links between pieces. Where more than one reading of a reference is possible all are taken: who
 * reads the exam decides, and a resource too many is told as left over.
 */
export function linksOf(
  pieces: readonly Piece[],
  room: Room = { left: Number.POSITIVE_INFINITY },
): Links {
  const byName = new Map<string, Piece[]>();
  for (const piece of pieces) {
    for (const name of new Set([piece.name, piece.fullUrl])) {
      if (name === undefined) continue;
      const same = byName.get(name) ?? [];
      byName.set(name, same);
      same.push(piece);
    }
  }
  const targets: Links['targets'] = (from, to) => {
    const plain = withoutVersion(to);
    const near = byName.get(`${baseOf(from)}${plain}`) ?? [];
    const named = byName.get(plain) ?? [];
    room.left -= 1 + near.length + named.length;
    return near.length === 0 || near === named ? named : [...new Set([...near, ...named])];
  };
  const nameBehind = (piece: Piece, { to }: PieceReference): string => {
    const [only, other] = targets(piece, to);
    if (only === undefined || other !== undefined) return withoutVersion(to);
    return only.fullUrl ?? only.name ?? withoutVersion(to);
  };
  return {
    targets,
    personOf: once((piece) => {
      if (piece.type === 'Patient') return piece.fullUrl ?? piece.name;
      const subject =
        piece.references.find(({ property }) => property === 'subject') ??
        piece.references.find(({ property }) => property === 'patient');
      return subject && nameBehind(piece, subject);
    }),
    visitOf: once((piece) => {
      const visit = piece.references.find(({ property }) => property === 'encounter');
      return visit && nameBehind(piece, visit);
    }),
  };
}

function once(find: (piece: Piece) => string | undefined): (piece: Piece) => string | undefined {
  const known = new Map<Piece, string | undefined>();
  return (piece) => {
    if (!known.has(piece)) known.set(piece, find(piece));
    return known.get(piece);
  };
}

function withoutVersion(reference: string): string {
  return reference.replace(/\/_history\/[^/]*$/, '');
}

/** @see https://hl7.org/fhir/R4/bundle.html#references */
function baseOf({ fullUrl = '' }: Piece): string {
  return /^(https?:.*\/)[A-Za-z]+\/[^/]+$/.exec(fullUrl)?.[1] ?? '';
}
