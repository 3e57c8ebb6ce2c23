import type { ProposalReviewWords } from '../review-words.ts';

/** The words of the page in German. Wording of this project, from memory. */
export const germanProposalReviewWords: ProposalReviewWords = {
  title: 'Vorschläge bestätigen',
  intro:
    'Jeder Kasten zeigt einen Satz einer Notiz und was er bedeuten könnte. Bestätigen, ändern oder verwerfen Sie ihn. Nichts ist vorab gewählt, und was niemand bestätigt, bleibt Text.',
  patientData:
    'Diese Seite enthält Patientendaten: Bewahren Sie sie nur dort auf, wo das erlaubt ist. Sie sendet nichts.',
  needsScript: 'Zum Bestätigen und Speichern müssen Skripte erlaubt sein.',
  left: '{count} weitere Vorschläge stehen nicht auf dieser Seite. Erzeugen Sie die Seite mit der gespeicherten Datei neu, um die nächsten zu sehen.',
  earlier:
    '{count} frühere Entscheidungen bleiben in der gespeicherten Datei und werden nicht noch einmal gefragt.',
  nothing: 'Es gibt nichts zu bestätigen.',
  exam: 'Untersuchung',
  wholeNote: 'Die ganze Notiz',
  below: 'Unter der Überschrift',
  parts: {
    finding: 'Zeichen',
    region: 'Region',
    side: 'Seite',
    presence: 'Vorhanden oder nicht',
  },
  presence: {
    present: 'vorhanden',
    absent: 'nicht vorhanden',
    indeterminate: 'nicht zu entscheiden',
  },
  open: 'zu entscheiden',
  noSide: 'ohne Angabe einer Seite',
  readIn: {
    sentence: 'steht im Satz',
    heading: 'steht in der Überschrift',
    note: 'die Notiz gehört dorthin',
    sign: 'der einzige Ort dieses Zeichens',
  },
  unread: {
    elsewhere:
      'Der Text kann eine andere Zeit, Person oder Körperregion meinen; gelesen wurde nur das Zeichen.',
    long: 'Der Satz ist zu lang, um gelesen zu werden; gelesen wurde nur das Zeichen.',
    'goes-on': 'Die nächste Zeile kann dies verneinen; gelesen wurde nur das Zeichen.',
  },
  canMean: 'Die Wörter können bedeuten',
  choices: { confirm: 'Bestätigen', change: 'Ändern und bestätigen', reject: 'Verwerfen' },
  takeBack: 'Entscheidung zurücknehmen',
  name: 'Ihr Name, wie er im Befund stehen wird',
  nextOpen: 'Zum nächsten offenen',
  save: 'Entscheidungen speichern',
  told: {
    notChosen: 'nicht gewählt',
    count: '{done} von {all} entschieden',
    nameMissing: 'Nicht gespeichert: Ihr Name fehlt.',
    nothingDecided: 'Nicht gespeichert: Noch ist nichts entschieden.',
    unanswered: 'Nicht gespeichert: {count} brauchen noch eine Antwort, zuerst Nummer {number}.',
    opposite:
      'Nicht gespeichert: Nummer {number} sagt das Gegenteil einer anderen Aussage über denselben Ort.',
    saved:
      'Gespeichert als {file}: {confirmed} bestätigt, {rejected} verworfen. {open} offene stehen nicht darin.',
    allDecided: 'Auf dieser Seite ist alles entschieden.',
  },
};
