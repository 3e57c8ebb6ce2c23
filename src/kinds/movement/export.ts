import { type Exporter, flagComponent } from '../../export/observation.ts';
import { testParts } from '../function-test/export.ts';
import type { Movement } from './statement.ts';

/** A movement asked for and its grade. */
export const movementExport: Exporter<Movement> = {
  profile: 'face-neck-test',
  parts: (context, { test, grade, reason, synkinesis }) => ({
    ...testParts(context, test, grade, reason),
    components: synkinesis === undefined ? [] : [flagComponent(context, 'synkinesis', synkinesis)],
  }),
};
