import type { Finding } from '../kinds/finding/statement.ts';
import type { FunctionTest } from '../kinds/function-test/statement.ts';
import type { Image } from '../kinds/image/statement.ts';
import type { Measurement } from '../kinds/measurement/statement.ts';
import type { Movement } from '../kinds/movement/statement.ts';
import type { Note } from '../kinds/note/statement.ts';
import type { RegionState } from '../kinds/region-state/statement.ts';
import type { ScaleScore } from '../kinds/scale-score/statement.ts';
import type { Sensation } from '../kinds/sensation/statement.ts';
import type { SensationComparison } from '../kinds/sensation-comparison/statement.ts';
import type { Symptom } from '../kinds/symptom/statement.ts';

export type { Carried, Count, Reason, StatementBase } from '../kinds/facets/base.ts';
export type { Attribute, Finding, Presence } from '../kinds/finding/statement.ts';
export type { FunctionTest } from '../kinds/function-test/statement.ts';
export type { Image } from '../kinds/image/statement.ts';
export type { Measurement } from '../kinds/measurement/statement.ts';
export type { Movement } from '../kinds/movement/statement.ts';
export type { Note } from '../kinds/note/statement.ts';
export type {
  Abnormal,
  Normal,
  NotApplicable,
  NotExamined,
  Partial,
  RegionState,
} from '../kinds/region-state/statement.ts';
export type { ScaleItem, ScaleScore } from '../kinds/scale-score/statement.ts';
export type { ModalityResult, Sensation } from '../kinds/sensation/statement.ts';
export type { SensationComparison } from '../kinds/sensation-comparison/statement.ts';
export type { Symptom } from '../kinds/symptom/statement.ts';

/** One thing said in an exam. A region or test without a statement was never spoken of. */
export type Statement =
  | Finding
  | RegionState
  | Sensation
  | SensationComparison
  | Movement
  | FunctionTest
  | Measurement
  | ScaleScore
  | Symptom
  | Note
  | Image;

export type StatementKind = Statement['kind'];
