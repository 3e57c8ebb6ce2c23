import type { TableName } from '../built-in.ts';
import type { Catalogue } from '../catalogue.ts';
import { type SideCode, sideText } from '../sides.ts';
import type { Value } from '../types.ts';

/** Words that an export writes besides the displays of codes. */
export interface Texts {
  readonly noConclusion: string;
  /** In place of the conclusion of a report that is entered in error. */
  readonly withdrawn: string;
  /** Of a part of the protocol that has no statement. */
  readonly nothingStated: string;
  readonly partsTold: string;
  /** Before the number of statements that a shortened record does not hold. */
  readonly leftOut: string;
  readonly notNamed: string;
  /** Of a report that leaves without the data of the exam. */
  readonly reportAlone: string;
  readonly noResult: string;
  readonly notStated: string;
  /** Before the method: `by` inspection. */
  readonly by: string;
  readonly yes: string;
  readonly no: string;
  /** Before the places that a statement does not speak of. */
  readonly except: string;
  /** Before the version of a scale or protocol. */
  readonly version: string;
  /** Before the addressee of a plan. */
  readonly to: string;
}

/**
 * Displays of our own codes and our fixed texts in one language. Terms of SNOMED CT, LOINC and HL7
 * stay as published: a licence that allows translation of one does not allow it of all.
 */
export interface Language {
  /** BCP 47 tag, which the resources carry: `de`. */
  readonly tag: string;
  /** By table and code as exported: `lesion-border.irregular`. What is left out stays in English. */
  readonly displays: { readonly [Name in TableName]?: Readonly<Record<string, string>> };
  /** Words for the sides. */
  readonly sides: Readonly<Record<SideCode, string>>;
  /** Sentences of the generated narrative. */
  readonly texts: Texts;
}

/** The language of the tables themselves. */
export const english: Language = {
  tag: 'en',
  displays: {},
  sides: sideText,
  texts: {
    noConclusion: 'No conclusion is stated.',
    withdrawn: 'This report has been withdrawn.',
    nothingStated: 'Nothing was stated about this part. It is not normal by silence.',
    partsTold: 'Parts told:',
    leftOut: 'Statements of the examination that do not stand here:',
    notNamed: 'A part that is not named here was not spoken of: it is not normal by silence.',
    reportAlone:
      'This is the report alone. Statements, circumstances and plan of the examination do not stand here as data.',
    noResult: 'no result',
    notStated: 'not stated',
    by: 'by',
    yes: 'yes',
    no: 'no',
    except: 'except',
    version: 'version',
    to: 'To',
  },
};

/**
 * Gives a catalogue its displays in another language. Codes and mappings stay as they are.
 *
 * @param catalogue The catalogue.
 * @param language Displays by table and code, such as `german` from `face-neck-fhir/languages/de`.
 * @returns A new catalogue. A row for which the language has no display keeps its own.
 * @example
 * const translated = (language: Language) => inLanguage(builtInCatalogue, language);
 */
export function inLanguage(catalogue: Catalogue, { displays }: Language): Catalogue {
  const tables = Object.entries(catalogue).map(([table, rows]): [string, unknown] => {
    const words = Object.hasOwn(displays, table) ? displays[table as TableName] : undefined; // a key of it
    if (words === undefined) return [table, rows];
    const translate = (code: string, display: string): string =>
      (Object.hasOwn(words, code) ? words[code] : undefined) ?? display;
    return [table, new Map([...rows.values()].map((row) => [row.code, rowIn(row, translate)]))];
  });
  return Object.fromEntries(tables) as unknown as Catalogue; // each table with rows of its own type
}

type Translate = (code: string, display: string) => string;

interface Row {
  readonly code: string;
  readonly display: string;
  readonly values?: readonly Value[];
  readonly grades?: readonly Value[];
  readonly items?: readonly Value[];
}

function rowIn(row: Row, translate: Translate): Row {
  const inner = (values: readonly Value[]): Value[] =>
    values.map((value) => ({
      ...value,
      display: translate(`${row.code}.${value.code}`, value.display),
    }));
  return {
    ...row,
    display: translate(row.code, row.display),
    ...(row.values && { values: inner(row.values) }),
    ...(row.grades && { grades: inner(row.grades) }),
    ...(row.items && { items: inner(row.items) }),
  };
}
