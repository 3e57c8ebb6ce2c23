import type { Plan } from '../../convert/mapping/plan.ts';
import type { NoteTarget } from '../../convert/mapping/target.ts';
import { cutAtHeadings } from '../../convert/narrative/cut.ts';
import type { Code, Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { StatementConversion, TargetConversion } from '../facets/conversion.ts';
import type { Note } from './statement.ts';

export const noteConversion: StatementConversion<Note> = {
  about: ({ region }) => (region === undefined ? [] : [region]),
  repeats: true,
};

/** The notes among statements: what proposals are made of. */
export function isNote(statement: Statement | undefined): statement is Note {
  return statement?.kind === 'note';
}

export const noteTarget: TargetConversion<NoteTarget> = {
  codes: () => [],
  sideOpen: true,
  verbatim: true,
  meanings: () => [],
  states: [],
  build: ({ target }, reading, plan) => {
    const { region = target.region, side, at, text } = reading;
    const parts = target.cut === 'headings' ? partsOf(text, plan) : [{ text }];
    return {
      statements: parts.map((part): Omit<Note, 'key'> & { readonly kind: 'note' } => {
        const place = part.place ?? { region, side };
        return {
          kind: 'note',
          ...(place.region !== undefined && { region: place.region }),
          ...(place.side !== undefined && { side: place.side }),
          ...(at !== undefined && { at }),
          text: part.text,
        };
      }),
    };
  },
};

interface NotePart {
  readonly text: string;
  /** Place that its heading names, none for history and other parts of the body. */
  readonly place?: { readonly region?: Code; readonly side?: Side };
}

function partsOf(text: string, { headings, catalogue }: Plan): readonly NotePart[] {
  const parts = cutAtHeadings(text, headings, catalogue);
  return parts.map(({ start, end, heading }) => {
    const piece = text.slice(start, end).replace(/^\s*\n|\s+$/g, '');
    // What the mapping or record says of the whole text holds below a heading that names no place.
    if (heading?.region === undefined && heading?.other === undefined) return { text: piece };
    return { text: piece, place: heading };
  });
}
