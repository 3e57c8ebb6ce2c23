import { type Exporter, flagComponent } from '../../export/resources/observation.ts';
import { testParts } from '../function-test/export.ts';
import type { Movement } from './statement.ts';

/** A movement asked for and its grade. */
export const movementExport: Exporter<Movement> = {
  profile: 'face-neck-test',
  parts: (context, movement) => ({
    ...testParts(context, movement, movement.grade, movement.reason),
    components:
      movement.synkinesis === undefined
        ? []
        : [flagComponent(context, 'synkinesis', movement.synkinesis)],
  }),
};
