import type {
  AttributeCode,
  ConditionCode,
  FindingCode,
  MeasureCode,
  RegionCode,
  SymptomCode,
  TestPointCode,
  TestResultCode,
} from '../../terminology/tables/code-types.ts';

/**
 * What a picture asks of an exam, as data. Each is answered with yes, no or not known; a picture
 * that speaks of one side asks about that side, unless the condition says `anySide`.
 */
export type Condition =
  | SignCondition
  | ToldCondition
  /** A facial or other movement weaker than normal. */
  | { readonly weak: readonly TestPointCode[] }
  /** Sensation at a test point that is not normal. */
  | { readonly lost: readonly TestPointCode[] }
  | { readonly test: TestPointCode; readonly results: readonly TestResultCode[] }
  /** An attribute of one of these signs, where it is present. */
  | {
      readonly quality: AttributeCode;
      readonly values: readonly string[];
      readonly of: readonly FindingCode[];
      readonly at?: readonly RegionCode[];
    }
  /** A figure beyond a limit, in the unit of the measure. It adds to a sign and never takes one away. */
  | { readonly measure: MeasureCode; readonly over: string }
  | { readonly history: ConditionCode; readonly values: readonly string[] }
  | { readonly age: { readonly from: number } | { readonly below: number } }
  | { readonly any: readonly Condition[] }
  | { readonly all: readonly Condition[] }
  | { readonly atLeast: number; readonly of: readonly Condition[] }
  /** Holds only where the exam states it: nobody is asked for it. */
  | { readonly ifFound: Condition }
  /** Holds unless the exam states it: what is not known does not stand in the way. */
  | { readonly unlessFound: Condition };

export interface SignCondition {
  /** Any of these signs. */
  readonly sign: readonly FindingCode[];
  /** Any of these places; where the tables allow the sign when left out. */
  readonly at?: readonly RegionCode[];
  readonly anySide?: true;
}

export interface ToldCondition {
  /**
   * Any of these complaints. One told without a side counts for either. Where a time is asked and one
   * of them is told, the others are not asked for.
   */
  readonly told: readonly SymptomCode[];
  /** Told of any of these places. */
  readonly at?: readonly RegionCode[];
  readonly anySide?: true;
  readonly course?: 'worse';
  readonly fromDays?: number;
  readonly underDays?: number;
  /** A time that is not known counts as well. */
  readonly orTimeUnknown?: true;
}

interface Where {
  readonly at?: readonly RegionCode[];
  readonly anySide?: true;
}

export const sign = (codes: FindingCode | readonly FindingCode[], where: Where = {}): Condition => ({
  sign: typeof codes === 'string' ? [codes] : codes,
  ...where,
});

export const told = (
  codes: SymptomCode | readonly SymptomCode[],
  how: Omit<ToldCondition, 'told'> = {},
): Condition => ({ told: typeof codes === 'string' ? [codes] : codes, ...how });

export const any = (...conditions: readonly Condition[]): Condition => ({ any: conditions });
export const all = (...conditions: readonly Condition[]): Condition => ({ all: conditions });
export const atLeast = (count: number, ...of: readonly Condition[]): Condition => ({
  atLeast: count,
  of,
});
export const ifFound = (condition: Condition): Condition => ({ ifFound: condition });
export const unlessFound = (condition: Condition): Condition => ({ unlessFound: condition });
export const history = (code: ConditionCode, ...values: readonly string[]): Condition => ({
  history: code,
  values: values.length > 0 ? values : ['yes'],
});
export const ageFrom = (years: number): Condition => ({ age: { from: years } });
export const ageBelow = (years: number): Condition => ({ age: { below: years } });
