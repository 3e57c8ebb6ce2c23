import type { Note } from '../../model/statement.ts';
import type { Part } from '../narrative/cut.ts';
import type { Span } from '../narrative/sentences.ts';

/** What is known of a sentence before it is read. */
export interface Context {
  readonly region?: string;
  readonly side?: 'right' | 'left' | 'both';
  /** Where region and side of the context stand. */
  readonly by: 'heading' | 'note';
  readonly heading?: Span;
  /** It may be of another time, person or part of the body. */
  readonly elsewhere: boolean;
}

export function contextOf({ start, body, heading, unknown }: Part, note: Note): Context {
  const label = trimmed(note.text, start, body);
  const region = heading?.region ?? (heading === undefined && !unknown ? note.region : undefined);
  const side = heading === undefined ? sideOfNote(note, region) : heading.side;
  return {
    ...(region !== undefined && { region }),
    ...(side !== undefined && { side }),
    by: heading === undefined ? 'note' : 'heading',
    ...(label.end > label.start && { heading: label }),
    elsewhere: unknown === true || heading?.other === true,
  };
}

function trimmed(text: string, start: number, end: number): Span {
  const piece = text.slice(start, end);
  const from = start + piece.length - piece.trimStart().length;
  return { start: from, end: Math.max(from, start + piece.trimEnd().length) };
}

function sideOfNote({ side }: Note, region: string | undefined): Context['side'] {
  if (region === undefined) return undefined;
  return side === 'right' || side === 'left' || side === 'both' ? side : undefined;
}
