import type { LetterWords } from '../letter-words.ts';

/** German. Wording of this project, from memory; to be read over by clinicians who work in German. */
export const germanLetterWords: LetterWords = {
  title: {
    specialist: 'Überweisungsbrief',
    'general-practitioner': 'Brief an die hausärztliche Praxis',
    patient: 'Brief an Sie über Ihre Untersuchung',
    employer: 'Bescheinigung für den Betrieb',
  },
  notChecked:
    'Entwurf eines Briefs, aus der Aufzeichnung erstellt. Vor dem Versand zu prüfen und zu unterschreiben.',
  pageNumber: { page: 'Seite', of: 'von' },
  to: 'An',
  from: 'Von',
  about: 'Betrifft',
  headings: {
    reason: 'Grund der Überweisung',
    history: 'Vorgeschichte',
    summary: 'Zusammenfassung',
    findings: 'Untersuchungsbefund',
    negatives: 'Gesucht und nicht gefunden',
    notExamined: 'Nicht oder nur teilweise untersucht',
    plan: 'Weiteres Vorgehen und Bitten',
    told: 'Mitteilungen und Rat',
    writer: 'Verfasst von',
    seen: 'Was wir gesehen haben',
    next: 'Wie es weitergeht',
    return: 'Wann Sie wiederkommen sollen',
  },
  signature: 'Unterschrift',
  patient: {
    greeting: 'Guten Tag {name},',
    examined: 'Wir haben am {date} Ihr Gesicht und Ihren Hals angesehen.',
    came: 'Sie kamen aus diesem Grund: {text}.',
    sign: '{sign}.',
    nothing: 'Wir haben keine Veränderung notiert, die in diesen Brief gehört.',
    more: 'Es gibt noch mehr zu besprechen. Das erklären wir Ihnen im Gespräch.',
    notSeen: 'Das haben wir nicht ganz angesehen: {place}.',
    referral: 'Wir bitten diese Stelle, Sie anzusehen: {to}.',
    referralUnnamed: 'Wir bitten eine andere Stelle, Sie anzusehen.',
    urgency: {
      routine: 'Es eilt nicht.',
      urgent: 'Das soll bald sein.',
      asap: 'Das soll so bald wie möglich sein.',
      stat: 'Das soll sofort sein.',
    },
    due: 'Der Tag dafür ist: {date}.',
    investigation: 'Wir bitten um einen Test. Wir sagen Ihnen mehr dazu.',
    reviewBy: 'Wir wollen Sie wiedersehen bis: {date}.',
    owner: 'Darum kümmert sich: {text}.',
    ask: 'Bitte fragen Sie uns, wenn etwas unklar ist.',
  },
  employer: {
    attended: '{name} war am {date} zu einer Untersuchung hier.',
    statement: 'Wir sollen Ihnen mitteilen: {text}.',
    noMore: 'Mehr über die Untersuchung teilt dieser Brief nicht mit.',
  },
};
