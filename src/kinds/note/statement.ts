import type { Code, Side, Text } from '../../model/primitive.ts';
import type { StatementBase } from '../facets/base.ts';
import { atRegion, type Meaning } from '../facets/meaning.ts';

/** The examiner's words on a region, or on the exam where no region is named. */
export interface Note extends StatementBase {
  readonly kind: 'note';
  readonly region?: Code;
  readonly side?: Side;
  readonly text: Text;
}

/** Words and pictures are kept as they are; nothing is taken from them. */
export const noteMeaning: Meaning<Note> = {
  subject: () => ({ table: 'items', code: 'note' }),
  standing: (note, catalogue) => atRegion(note, catalogue, false),
  said: () => [{ polarity: 'none', of: { table: 'items', code: 'note' } }],
};
