import { germanIssues } from '../issues/german/index.ts';
import type { IssueLanguage } from '../issues/issue.ts';
import { englishWords } from '../report/words/english.ts';
import { germanWords } from '../report/words/german.ts';
import type { ReportWords } from '../report/words/report-words.ts';
import { german } from '../terminology/languages/de.ts';
import { english, type Language } from '../terminology/languages/language.ts';
import { type OptionTable, textOption } from './arguments.ts';
import type { Choices } from './command.ts';

interface Spoken {
  readonly displays: Language;
  readonly words: ReportWords;
  /** What does not agree; English where left out. */
  readonly issues?: IssueLanguage;
}

/** By BCP 47 tag. A language: its displays in `terminology/languages`, its words, and a line here. */
const languages: ReadonlyMap<string, Spoken> = new Map([
  ['en', { displays: english, words: englishWords }],
  ['de', { displays: german, words: germanWords, issues: germanIssues }],
]);

export const languageOption: OptionTable = {
  language: {
    type: 'text',
    values: [...languages.keys()],
    fallback: 'en',
    help: 'Language of our own displays and fixed texts; those of SNOMED CT, LOINC and HL7 stay English',
  },
};

export function languageOf({ options, clinic }: Choices): Spoken {
  return (
    languages.get(textOption(options, 'language') ?? clinic?.language ?? 'en') ?? {
      displays: english,
      words: englishWords,
    }
  );
}
