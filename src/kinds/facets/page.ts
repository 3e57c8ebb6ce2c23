import type { Quantity, Side } from '../../model/primitive.ts';
import type { Content } from '../../report/html.ts';
import type { Page } from '../../report/page.ts';
import type { ListSection, SideTable } from '../../report/sections.ts';
import type { ToldPlace } from '../../report/teller.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { StatementBase } from './base.ts';

/** What the drawing shows of a place. `silent`: nothing was said, which is not normal. */
export type Mark = 'sign' | 'partial' | 'not-examined' | 'normal' | 'said' | 'silent';

/** A line of a list, complete when it is read alone. */
export interface ToldAlone {
  readonly section: ListSection;
  readonly line: Content;
}

/** What is said of a place or thing in the same words as of others: one line tells them together. */
export interface ToldAmong {
  readonly section: ListSection;
  /** What is said, before the places: `No palpable node`. */
  readonly head: string;
  /** The place it is said of; none where the head says it all. */
  readonly of: ToldPlace | undefined;
  /** What stands behind the places. */
  readonly tail: string;
}

/** An answer in a table by side. Answers of one name stand in one row. */
export interface ToldInTable {
  readonly table: SideTable;
  readonly name: string;
  readonly side: Side | undefined;
  readonly answer: Content;
  /** The answer beside what it is about: without place, readings and what it is about. Default: name and answer. */
  readonly brief?: Content;
  /** Figure of which the difference of the sides may be taken; none where it is a bound. */
  readonly figure?: Quantity | undefined;
}

export type Told = ToldAlone | ToldAmong | ToldInTable;

/**
 * How a kind of statement stands on the page: facet `page.ts`, listed in `pages.ts`. Every statement
 * has a place in one section; its note and origin are put below it whatever its kind.
 */
export interface KindPage<S extends StatementBase> {
  tell(statement: S, page: Page): Told;
  /** Default `said`: something was said of the place, and it was not judged as a whole. */
  mark?(statement: S, catalogue: Catalogue): Mark;
}
