import type { TableName } from '../terminology/built-in.ts';
import { type Codes, ownCode, ownTable, ownValue } from './concept.ts';
import { type Element, flagOf, innerOf, innersOf, lookAt, textOf } from './element.ts';

/** The components of an observation, by what their codes mean. Only what is asked for is claimed. */
export interface Components {
  /** The components of a table, with their codes, in their order. */
  ofTable(table: TableName): readonly Component[];
  /** The components of one of our items, in their order. */
  all(item: string): readonly Element[];
  /** The first component of an item; a second one is not claimed. */
  first(item: string): Element | undefined;
  text(item: string): string | undefined;
  texts(item: string): string[];
  flag(item: string): boolean | undefined;
  /** Code of the table of values after `prefix`, which is the item itself where left out. */
  value(item: string, prefix?: string): string | undefined;
  /** Codes of a table that the components of an item have as values. */
  codes(item: string, table: TableName): string[];
  /** Components whose code is none of ours, without a claim. */
  readonly others: readonly Element[];
}

export interface Component {
  readonly code: string;
  readonly element: Element;
}

interface Known extends Component {
  readonly table: TableName;
}

const tables: readonly TableName[] = ['items', 'attributes', 'modalities'];

export function componentsOf(codes: Codes, observation: Element): Components {
  const list: Known[] = [];
  const others: Element[] = [];
  for (const element of innersOf(observation, 'component')) {
    const concept = lookAt(element, 'code');
    const own = concept && ownTable(codes, concept, tables);
    if (own === undefined) others.push(element);
    else list.push({ ...own, element });
  }
  const claimed = ({ element, table, code }: Known): Component => {
    ownCode(codes, innerOf(element, 'code'), table);
    return { code, element };
  };
  const isItem =
    (item: string) =>
    ({ table, code }: Known): boolean =>
      table === 'items' && code === item;
  const all = (item: string): Element[] =>
    list.filter(isItem(item)).map((known) => claimed(known).element);
  const first = (item: string): Element | undefined => {
    const known = list.find(isItem(item));
    return known && claimed(known).element;
  };
  const codedIn = (element: Element | undefined): Element | undefined =>
    element && innerOf(element, 'valueCodeableConcept');

  return {
    others,
    all,
    first,
    ofTable: (table) => list.filter((known) => known.table === table).map(claimed),
    text: (item) => {
      const element = first(item);
      return element && textOf(element, 'valueString');
    },
    texts: (item) => all(item).flatMap((element) => textOf(element, 'valueString') ?? []),
    flag: (item) => {
      const element = first(item);
      return element && flagOf(element, 'valueBoolean');
    },
    value: (item, prefix = item) => ownValue(codes, codedIn(first(item)), prefix),
    codes: (item, table) =>
      all(item).flatMap((element) => ownCode(codes, codedIn(element), table)?.code ?? []),
  };
}
