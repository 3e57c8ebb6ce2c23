import { placeText, placeTextExcept } from '../fhir/place.ts';
import type { ExceptedPlace } from '../kinds/facets/base.ts';
import { subjectOf } from '../kinds/registries/meanings.ts';
import type { Quantity, Side } from '../model/primitive.ts';
import type { Attribute, Reason, Statement } from '../model/statement.ts';
import type { TableName } from '../terminology/built-in.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { Language } from '../terminology/languages/language.ts';
import type { Value } from '../terminology/types.ts';
import { createNegator } from './words/negatives.ts';
import { type ReportWords, wordOf } from './words/report-words.ts';

/** A place with those below it that are not meant. */
export interface ToldPlace {
  readonly region: string;
  readonly side?: Side | undefined;
  readonly except?: readonly ExceptedPlace[] | undefined;
}

/** Says codes, places and values of an exam in the words of one language. */
export interface Teller {
  readonly display: (table: TableName, code: string) => string;
  /** An answer of the table of values, `concern.low`. */
  readonly answer: (list: string, code: string) => string;
  readonly place: (region: string, side: Side | undefined) => string;
  /** The same with the places below it that are not meant. */
  readonly placeOf: (place: ToldPlace) => string;
  readonly side: (side: Side) => string;
  readonly reason: (reason: Reason) => string;
  readonly attribute: (attribute: Attribute) => string;
  /** Value inside a row: a grade of a scale, a value of a condition. */
  readonly inner: (values: readonly Value[] | undefined, code: string) => string;
  /** What the statement is about, without its answer. */
  readonly subject: (statement: Statement) => string;
  /** That what the statement is about is not there: `No palpable node`, `No fever`. */
  readonly absence: (statement: Statement) => string;
  readonly flag: (flag: boolean) => string;
  /** A figure with its unit in words; counts and scores have none. */
  readonly quantity: (quantity: Quantity) => string;
}

/** What was asked and the answer, which no end of a line parts: "Tender" alone reads as if it were so. */
export function answered(name: string, answer: string): string {
  return `${name}:\u00a0${answer}`;
}

export function createTeller(
  catalogue: Catalogue,
  language: Language,
  labels: ReportWords,
): Teller {
  const negated = createNegator(labels.denials, labels.notFound);
  const denied = createNegator(labels.deniedComplaints, labels.answers.no);
  const display = (table: TableName, code: string): string =>
    catalogue[table].get(code)?.display ?? code;
  const inner = (values: readonly Value[] | undefined, code: string): string =>
    values?.find((value) => value.code === code)?.display ?? code;
  const quantity = ({ value, unit, comparator }: Quantity): string => {
    const bare = unit.startsWith('{') || unit === '1';
    return `${comparator ?? ''}${value}${bare ? '' : ` ${wordOf(labels.units, unit)}`}`;
  };
  const flag = (yes: boolean): string => (yes ? language.texts.yes : language.texts.no);

  const level = labels.shortPlaces;
  const place = (region: string, side: Side | undefined): string =>
    placeText(
      Object.hasOwn(level, region)
        ? `${labels.levels.one} ${level[region]}`
        : display('regions', region),
      side,
      language.sides,
    );

  return {
    display,
    inner,
    flag,
    quantity,
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
      if (typeof value === 'boolean') return answered(name, flag(value));
      if (typeof value === 'object') return `${name}: ${quantity(value)}`;
      if (typeof value === 'number') return `${name}: ${value}`;
      return `${name}: ${inner(catalogue.attributes.get(attribute)?.values, value)}`;
    },
    subject: (statement) => {
      const { table, code } = subjectOf(statement);
      return display(table, code);
    },
    absence: (statement) => {
      const { table, code } = subjectOf(statement);
      return (table === 'symptoms' ? denied : negated)(code, display(table, code));
    },
  };
}
