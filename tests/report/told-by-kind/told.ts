import type { Side, Statement, StatementKind } from '../../../src/index.ts';

type Unkeyed<S> = S extends unknown ? Omit<S, 'key'> : never;

/** A statement and all that the page is to say because of it. */
export interface Told<K extends StatementKind = StatementKind> {
  readonly statement: Unkeyed<Extract<Statement, { kind: K }>>;
  /** The parser refuses it; the page, which takes an exam on trust, still puts it in its place. */
  readonly refused?: true;
  /** The one section that names it, apart from the map. */
  readonly section: string;
  readonly line?: string;
  /** First cell, right, left; of measurements the difference of the sides too. */
  readonly row?: readonly string[];
  /** Marks on the map by name of the region; every other place is as if nothing had been said. */
  readonly map: Readonly<Record<string, MapRow>>;
}

/** Marks of a region: right, left, and middle or without a side. Empty: nothing was said. */
export type MapRow = readonly [right: Mark, left: Mark, middle: Mark];

export type Mark = '' | keyof typeof marks;

/** What the legend calls each mark. */
export const marks = {
  sign: 'A sign is present',
  partial: 'Examined in part',
  'not-examined': 'Not examined, with a reason',
  normal: 'Examined, no abnormality found',
  said: 'Something was said, the region as a whole was not judged',
} as const;

export interface KindTold<K extends StatementKind> {
  readonly sides: Readonly<Record<Side, Told<K>>>;
  /** Every other form that the page tells differently. */
  readonly forms: readonly Told<K>[];
}

/** Every kind of statement on every side. */
export type ToldByKind = { readonly [K in StatementKind]: KindTold<K> };
