import type { Note } from '../../model/statement.ts';
import { ownCode } from '../concept.ts';
import { innerOf, textOf } from '../element.ts';
import { claimCommon, type Observed } from '../observation.ts';
import { siteOf } from '../site.ts';
import { codingsOf, filled } from '../values.ts';
import type { Read } from './read.ts';
import { sideOf } from './side.ts';

export function readNote(observed: Observed, key: string | undefined): Read<Note> | undefined {
  const { reading, element, components } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'items');
  const text = textOf(element, 'valueString');
  if (code === undefined || text === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'note',
    text,
    ...(siteOf(observed) ?? sideOf(components)),
    ...(codings && { codings }),
  };
}
