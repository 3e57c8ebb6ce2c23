import type { Observation } from 'fhir/r4.js';
import type { Note } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import { observationOf, sideComponent } from '../observation.ts';

/** The examiner's words, verbatim, as the value of an observation of their own. */
export function noteObservation(context: ExportContext, note: Note): Observation {
  return observationOf(context, note, {
    code: context.coder.concept('items', 'note'),
    bodySite: note.region === undefined ? undefined : bodySite(context, note.region, note.side),
    value: { valueString: note.text },
    components:
      note.region === undefined && note.side !== undefined
        ? [sideComponent(context, note.side)]
        : [],
  });
}
