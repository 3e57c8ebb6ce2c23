import type { Statement, StatementKind } from '../../model/statement.ts';
import type { Form } from '../facets/form.ts';
import { findingForm } from '../finding/statement.ts';
import { functionTestForm } from '../function-test/statement.ts';
import { imageForm } from '../image/statement.ts';
import { measurementForm } from '../measurement/statement.ts';
import { movementForm } from '../movement/statement.ts';
import { regionStateForm } from '../region-state/statement.ts';
import { scaleScoreForm } from '../scale-score/statement.ts';
import { sensationForm } from '../sensation/statement.ts';
import { comparisonForm } from '../sensation-comparison/statement.ts';
import { symptomForm } from '../symptom/statement.ts';

const forms: { readonly [K in StatementKind]: Form<Extract<Statement, { kind: K }>> } = {
  finding: findingForm,
  'region-state': regionStateForm,
  sensation: sensationForm,
  'sensation-comparison': comparisonForm,
  movement: movementForm,
  'function-test': functionTestForm,
  measurement: measurementForm,
  'scale-score': scaleScoreForm,
  symptom: symptomForm,
  // Words, and a region that every kind may have.
  note: {},
  image: imageForm,
};

/** The record files each form under the kind it takes, which lets it stand for that of any kind. */
export function formOf({ kind }: Statement): Form<Statement> {
  return forms[kind];
}
