import type { Observation, Reference } from 'fhir/r4.js';
import type { AnyResource, ExportContext } from '../../export/context.ts';
import { type Exporter, observationOf } from '../../export/resources/observation.ts';
import type { Statement, StatementKind } from '../../model/statement.ts';
import { findingExport } from '../finding/export.ts';
import { functionTestExport } from '../function-test/export.ts';
import { imageExport } from '../image/export.ts';
import { measurementExport } from '../measurement/export.ts';
import { movementExport } from '../movement/export.ts';
import { noteExport } from '../note/export.ts';
import { regionStateExport } from '../region-state/export.ts';
import { scaleScoreExport } from '../scale-score/export.ts';
import { sensationExport } from '../sensation/export.ts';
import { comparisonExport } from '../sensation-comparison/export.ts';
import { symptomExport } from '../symptom/export.ts';

const exporters: { readonly [K in StatementKind]: Exporter<Extract<Statement, { kind: K }>> } = {
  finding: findingExport,
  'region-state': regionStateExport,
  sensation: sensationExport,
  'sensation-comparison': comparisonExport,
  movement: movementExport,
  'function-test': functionTestExport,
  measurement: measurementExport,
  'scale-score': scaleScoreExport,
  symptom: symptomExport,
  note: noteExport,
  image: imageExport,
};

/** The record files each exporter under the kind it takes, which lets it stand for that of any kind. */
function exporterOf({ kind }: Statement): Exporter<Statement> {
  return exporters[kind];
}

/** The observation that a statement makes; one for every statement. */
export function toObservation(context: ExportContext, statement: Statement): Observation {
  return observationOf(context, statement, exporterOf(statement));
}

/** Resources that a statement makes beside its observation, in the version asked for. */
export function resourcesBeside(context: ExportContext, statement: Statement): AnyResource[] {
  return exporterOf(statement).resources?.(context, statement) ?? [];
}

/** The picture that a statement refers to. */
export function pictureOf(context: ExportContext, statement: Statement): Reference | undefined {
  return exporterOf(statement).picture?.(context, statement);
}
