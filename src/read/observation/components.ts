import type { TableName } from '../../terminology/built-in.ts';
import type { ListedItem, ValueList } from '../../terminology/own-codes.ts';
import type { ItemCode } from '../../terminology/tables/code-types.ts';
import { type Element, flagOf, innerOf, innersOf, lookAt, textOf } from '../bundle/element.ts';
import { type Codes, ownCode, ownTable, ownValue } from './concept.ts';

/** The components of an observation, by what their codes mean. Only what is asked for is claimed. */
export interface Components {
  /** The components of a table, with their codes, in their order. */
  ofTable(table: TableName): readonly Component[];
  /** The components of one of our items, in their order. */
  all(item: ItemCode): readonly Element[];
  /** The first component of an item; a second one is not claimed. */
  first(item: ItemCode): Element | undefined;
  text(item: ItemCode): string | undefined;
  texts(item: ItemCode): string[];
  flag(item: ItemCode): boolean | undefined;
  /** Code of the table of values in the list named, or in that of the item itself. */
  value(item: ListedItem): string | undefined;
  value(item: ItemCode, list: ValueList): string | undefined;
  /** Codes of a table that the components of an item have as values. */
  codes(item: ItemCode, table: TableName): string[];
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
    (item: ItemCode) =>
    ({ table, code }: Known): boolean =>
      table === 'items' && code === item;
  const all = (item: ItemCode): Element[] =>
    list.filter(isItem(item)).map((known) => claimed(known).element);
  const first = (item: ItemCode): Element | undefined => {
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
    value: (
      item: ItemCode,
      list: ValueList = item as ListedItem, // left out for listed items alone
    ) => ownValue(codes, codedIn(first(item)), list),
    codes: (item, table) =>
      all(item).flatMap((element) => ownCode(codes, codedIn(element), table)?.code ?? []),
  };
}
