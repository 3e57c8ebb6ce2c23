import type { Exporter } from '../../export/resources/observation.ts';
import type { Note } from './statement.ts';

/** The examiner's words, verbatim, as the value of an observation of their own. */
export const noteExport: Exporter<Note> = {
  profile: 'face-neck-observation',
  parts: ({ coder }, note) => ({
    code: coder.concept('items', 'note'),
    value: { valueString: note.text },
  }),
};
