import { ownCode } from '../../read/concept.ts';
import { innerOf, textOf } from '../../read/element.ts';
import type { Read, Reader } from '../../read/observation.ts';
import { claimCommon, type Observed } from '../../read/observation.ts';
import { placeOrSide } from '../../read/site.ts';
import { codingsOf, filled } from '../../read/values.ts';
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
