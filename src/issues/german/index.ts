import type { IssueLanguage } from '../language.ts';
import { germanAnswers } from './answers.ts';
import { germanClinic } from './clinic.ts';
import { germanConversion } from './conversion.ts';
import { germanForms, germanKinds } from './forms.ts';
import { germanRecord } from './record.ts';
import { germanRuleTitles } from './rules.ts';
import { germanValidation } from './validation.ts';

/**
 * What issues say in German, for `issueMessage` and `issueTextIn`. Wording of this project, from
 * memory; to be read over by clinicians who work in German. Texts of published rules, codes and names
 * of properties stay as they are.
 */
export const germanIssues: IssueLanguage = {
  tag: 'de',
  sentences: [germanRecord, germanValidation, germanConversion, germanAnswers, germanClinic],
  severities: { error: 'Fehler', warning: 'Warnung', information: 'Hinweis' },
  wording: {
    forms: germanForms,
    kinds: germanKinds,
    ruleTitles: germanRuleTitles,
    or: 'oder',
    others: (listed, count) => `${listed} oder ${count} weitere`,
    wholeNumber: (minimum, maximum) => `eine ganze Zahl von ${minimum} bis ${maximum}`,
    structure: (type) => `ein Wert vom Typ ${type}`,
    expected: 'erwartet:',
  },
};
