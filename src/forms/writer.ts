import { codeSystemUrl } from '../fhir/names/code-systems.ts';
import { CANONICAL_BASE } from '../fhir/names/systems.ts';
import type { OneSide } from '../model/sides.ts';
import type { TableName } from '../terminology/built-in.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { german } from '../terminology/languages/de.ts';
import { english, inLanguage } from '../terminology/languages/language.ts';
import type { FormLanguage, FormOption } from './form.ts';
import type { FormOptions } from './options.ts';
import { type FormWords, formWords } from './words.ts';

/** What every part of a form is written with. */
export interface FormWriter {
  /** With the displays of the language. */
  readonly catalogue: Catalogue;
  readonly language: FormLanguage;
  readonly words: FormWords;
  readonly options: FormOptions;
  /** Display of a row; its code where it has none. */
  readonly display: (table: TableName, code: string) => string;
  /** The same with the side behind it, always the patient's own. */
  readonly sided: (text: string, side: OneSide | undefined) => string;
  /** Rows of a table as answers. A code that the table does not hold is none. */
  readonly answers: (table: TableName, codes: Iterable<string>) => readonly FormOption[];
  /** The same of the table `values`, whose codes begin with their group: `state.normal`. */
  readonly valueOptions: (group: string, codes: readonly string[]) => readonly FormOption[];
  /** All reasons, one list for all items that ask for one. */
  readonly reasons: readonly FormOption[];
  readonly system: (table: TableName, code: string) => string;
}

export function formWriter(options: FormOptions): FormWriter {
  const { language = 'en', catalogue: given = builtInCatalogue, canonicalBase } = options;
  const spoken = language === 'de' ? german : english;
  const catalogue = language === 'de' ? inLanguage(given, german) : given;
  const base = canonicalBase ?? CANONICAL_BASE;
  const display = (table: TableName, code: string): string =>
    catalogue[table].get(code)?.display ?? code;
  const system = (table: TableName, code: string): string =>
    catalogue[table].get(code)?.system ?? codeSystemUrl(base, table);
  const answers: FormWriter['answers'] = (table, codes) =>
    [...codes].flatMap((code) =>
      catalogue[table].has(code)
        ? [{ system: system(table, code), code, display: display(table, code), value: code }]
        : [],
    );
  return {
    catalogue,
    language,
    words: formWords[language],
    options,
    display,
    system,
    sided: (text, side) => (side === undefined ? text : `${text}, ${spoken.sides[side]}`),
    answers,
    reasons: answers('reasons', catalogue.reasons.keys()),
    valueOptions: (group, codes) =>
      codes.map((value) => {
        const code = `${group}.${value}`;
        return { system: system('values', code), code, display: display('values', code), value };
      }),
  };
}
