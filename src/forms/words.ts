import type { FormLanguage } from './form.ts';

/** What a form says besides the displays of codes. */
export interface FormWords {
  readonly methods: string;
  readonly reason: string;
  readonly limit: string;
  readonly reasonWords: string;
  readonly signs: string;
  readonly furtherSign: string;
  readonly sign: string;
  readonly found: string;
  readonly place: string;
  readonly figure: string;
  readonly lastTime: string;
  readonly protocol: string;
  readonly version: string;
}

const english: FormWords = {
  methods: 'Examined by',
  reason: 'Why there is no result',
  limit: 'What was in the way',
  reasonWords: 'Reason in words',
  signs: 'Signs looked for',
  furtherSign: 'Further sign',
  sign: 'Sign',
  found: 'Found',
  place: 'Place',
  figure: 'Figure',
  lastTime: 'last time',
  protocol: 'Form of the protocol',
  version: 'Version',
};

/** Wording of this project, from memory; to be read over by clinicians who work in German. */
const german: FormWords = {
  methods: 'Untersucht durch',
  reason: 'Warum es kein Ergebnis gibt',
  limit: 'Was im Weg war',
  reasonWords: 'Grund in Worten',
  signs: 'Gesuchte Befunde',
  furtherSign: 'Weiterer Befund',
  sign: 'Befund',
  found: 'Gefunden',
  place: 'Stelle',
  figure: 'Wert',
  lastTime: 'beim letzten Mal',
  protocol: 'Formular zum Protokoll',
  version: 'Fassung',
};

export const formWords: Readonly<Record<FormLanguage, FormWords>> = { en: english, de: german };
