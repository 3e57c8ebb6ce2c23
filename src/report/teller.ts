import { placeText } from '../fhir/place.ts';
import type { Exam } from '../model/exam.ts';
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

  return {
    display,
    inner,
    flag,
    answer: (list, code) => display('values', `${list}.${code}`),
    place: (region, side) => placeText(display('regions', region), side, language.sides),
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
    subject: (statement) => subjectOf(statement, display),
  };
}

function subjectOf(statement: Statement, display: Teller['display']): string {
  switch (statement.kind) {
    case 'finding':
      return display('findings', statement.finding);
    case 'region-state':
      return display('regions', statement.region);
    case 'sensation':
    case 'sensation-comparison':
      return display('testPoints', statement.point);
    case 'movement':
    case 'function-test':
      return display('testPoints', statement.test);
    case 'measurement':
      return display('measures', statement.measure);
    case 'scale-score':
      return display('scales', statement.scale);
    case 'symptom':
      return display('symptoms', statement.symptom);
    case 'note':
      return display('items', 'note');
    case 'image':
      return statement.title;
  }
}

export function quantityText({ value, unit, comparator }: Quantity): string {
  return `${comparator ?? ''}${value} ${unit}`;
}

/** Statements of one kind, in the order of the exam. */
export function ofKind<K extends Statement['kind']>(
  exam: Exam,
  kind: K,
): Extract<Statement, { kind: K }>[] {
  const isKind = (one: Statement): one is Extract<Statement, { kind: K }> => one.kind === kind;
  return exam.statements.filter(isKind);
}
