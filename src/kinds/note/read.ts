import { innerOf, textOf } from '../../read/bundle/element.ts';
import { ownCode } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import { claimCommon, type Observed } from '../../read/observation/observation.ts';
import { placeOrSide } from '../../read/observation/site.ts';
import { codingsOf, filled } from '../../read/observation/values.ts';
import type { Note } from './statement.ts';

export const noteReader: Reader<Note> = {
  of: ({ table, code }) => table === 'items' && code === 'note',
  read: readNote,
};

function readNote(observed: Observed, key: string | undefined): Read<Note> | undefined {
  const { reading, element } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'items');
  const text = textOf(element, 'valueString');
  if (code === undefined || text === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'note',
    text,
    ...placeOrSide(observed),
    ...(codings && { codings }),
  };
}
