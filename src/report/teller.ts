import { placeText, placeTextExcept } from '../fhir/place.ts';
import type { ExceptedPlace } from '../kinds/facets/base.ts';
import { subjectOf } from '../kinds/registries/meanings.ts';
import type { Quantity, Side } from '../model/primitive.ts';
import type { Attribute, Reason, Statement } from '../model/statement.ts';
import type { TableName } from '../terminology/built-in.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { Language } from '../terminology/language.ts';
import type { Value } from '../terminology/types.ts';

/** Says codes, places and values of an exam in the words of one language. */
export interface Teller {
  readonly display: (table: TableName, code: string) => string;
  /** An answer of the table of values, `concern.low`. */
  readonly answer: (list: string, code: string) => string;
  readonly place: (region: string, side: Side | undefined) => string;
  /** The same with the places below it that are not meant. */
  readonly placeOf: (
    statement: ExceptedPlace & { readonly except?: readonly ExceptedPlace[] },
  ) => string;
  readonly side: (side: Side) => string;
  readonly reason: (reason: Reason) => string;
  readonly attribute: (attribute: Attribute) => string;
  /** Value inside a row: a grade of a scale, a value of a condition. */
  readonly inner: (values: readonly Value[] | undefined, code: string) => string;
  /** What the statement is about, without its answer. */
  readonly subject: (statement: Statement) => string;
  readonly flag: (flag: boolean) => string;
}

export function createTeller(catalogue: Catalogue, language: Language): Teller {
  const display = (table: TableName, code: string): string =>
    catalogue[table].get(code)?.display ?? code;
  const inner = (values: readonly Value[] | undefined, code: string): string =>
    values?.find((value) => value.code === code)?.display ?? code;
  const flag = (yes: boolean): string => (yes ? language.texts.yes : language.texts.no);

  const place = (region: string, side: Side | undefined): string =>
    placeText(display('regions', region), side, language.sides);

  return {
    display,
    inner,
    flag,
    answer: (list, code) => display('values', `${list}.${code}`),
    place,
    placeOf: ({ region, side, except = [] }) =>
      placeTextExcept(
        place(region, side),
        language.texts.except,
        except.map((one) => place(one.region, one.side)),
      ),
    side: (side) => language.sides[side],
    reason: ({ code, text }) => {
      const name = display('reasons', code);
      return text === undefined ? name : `${name}: ${text}`;
    },
    attribute: ({ attribute, value }) => {
      const name = display('attributes', attribute);
      if (typeof value === 'boolean') return `${name}: ${flag(value)}`;
      if (typeof value === 'object') return `${name}: ${quantityText(value)}`;
      if (typeof value === 'number') return `${name}: ${value}`;
      return `${name}: ${inner(catalogue.attributes.get(attribute)?.values, value)}`;
    },
    subject: (statement) => {
      const { table, code } = subjectOf(statement);
      return display(table, code);
    },
  };
}

export function quantityText({ value, unit, comparator }: Quantity): string {
  return `${comparator ?? ''}${value} ${unit}`;
}
