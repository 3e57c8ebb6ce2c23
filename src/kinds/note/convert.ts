import type { NoteTarget } from '../../convert/mapping/target.ts';
import type { StatementConversion, TargetConversion } from '../facets/conversion.ts';
import type { Note } from './statement.ts';

export const noteConversion: StatementConversion<Note> = {
  about: ({ region }) => (region === undefined ? [] : [region]),
  repeats: true,
};

export const noteTarget: TargetConversion<NoteTarget> = {
  codes: () => [],
  sideOpen: true,
  verbatim: true,
  meanings: () => [],
  states: [],
  build: ({ target }, reading) => {
    const { region = target.region, side, at, text } = reading;
    return {
      statements: [
        {
          kind: 'note',
          ...(region !== undefined && { region }),
          ...(side !== undefined && { side }),
          ...(at !== undefined && { at }),
          text,
        },
      ],
    };
  },
};
