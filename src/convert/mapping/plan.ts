import type { Code, Side, UnitCode } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { PlannedOperation } from '../cells/divide.ts';
import type { HeadingLookUp } from '../narrative/headings.ts';
import type { DateReader } from '../values/date.ts';
import type {
  DateField,
  ItemRecords,
  ItemStatus,
  Mapping,
  Meaning,
  NoValue,
  SideWithin,
} from './mapping.ts';
import type { Target } from './target.ts';
import type { WordMap } from './word-map.ts';

/** A mapping that has passed its checks, ready for look-ups. */
export interface Plan {
  readonly mapping: Mapping;
  readonly catalogue: Catalogue;
  readonly operations: readonly PlannedOperation[];
  /** Targets of single fields, by field name. */
  readonly fields: ReadonlyMap<string, PlannedTarget>;
  readonly items: readonly ItemPlan[];
  /** Names that the exam head takes. */
  readonly head: ReadonlySet<string>;
  /** Names that targets take beside their value: units, sides, methods, notes. */
  readonly companions: ReadonlySet<string>;
  /** Names that the mapping takes for anything but the head and layout. */
  readonly named: ReadonlySet<string>;
  readonly layout: ReadonlySet<string>;
  readonly text: ReadonlySet<string>;
  readonly noValue: WordMap<NoValue>;
  readonly sides: WordMap<Side | SideWithin>;
  readonly methods: WordMap<Code>;
  readonly measureConditions: WordMap<Code>;
  readonly regions: WordMap<Code>;
  readonly modalities: WordMap<Code>;
  readonly units: WordMap<UnitCode>;
  /** What headings of texts mean. */
  readonly headings: HeadingLookUp;
  readonly decimalMark: '.' | ',';
  readonly dates: (field: DateField) => DateReader;
}

export interface PlannedTarget<T extends Target = Target> {
  readonly target: T;
  readonly words: WordMap<Meaning>;
}

export interface ItemPlan {
  readonly records: ItemRecords;
  readonly map: WordMap<PlannedTarget>;
  /** For what the map does not list. */
  readonly otherwise?: PlannedTarget;
  readonly statuses: WordMap<ItemStatus>;
  /** Names that the item takes, besides those of its target. */
  readonly names: ReadonlySet<string>;
}
