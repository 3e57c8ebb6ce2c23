import { bundleShapes } from './bundles.ts';
import { examShapes } from './exams.ts';
import { formShapes } from './forms.ts';
import { tableShapes } from './tables.ts';
import { textShapes } from './texts.ts';

/** Every public function that takes data or text, by every hostile shape that fits it. */
export const shapes = [
  ...examShapes,
  ...bundleShapes,
  ...textShapes,
  ...tableShapes,
  ...formShapes,
];
