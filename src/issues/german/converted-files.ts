import type { convertedFiles } from '../english/converted-files.ts';
import type { Translated } from '../language.ts';

/** The same sentences as the English ones, in German. */
export const germanConvertedFiles: Translated<typeof convertedFiles> = {
  'undeclared-encoding': {
    'zero-bytes': [
      'die Eingabe enthält Nullbytes: UTF-16 ohne Kennung?',
      'der Zeichensatz, den die Zuordnung angibt',
    ],
    'read-as': [
      'die Bytes gehören nicht zum angegebenen oder angenommenen Zeichensatz; gelesen als {encoding}',
      'UTF-8 oder der Zeichensatz, den die Zuordnung angibt',
    ],
    'cannot-decode': [
      'der angegebene Zeichensatz lässt sich nicht entschlüsseln',
      'ein Zeichensatz, den dieses Programm kennt, in der Zuordnung angegeben',
    ],
  },
  'lost-character': {
    replaced: 'der Text hat ein Zeichen, das schon vorher verloren ging',
  },
  'unreadable-input': {
    'encrypted-workbook': [
      'die Arbeitsmappe ist durch ein Kennwort geschützt',
      'eine Arbeitsmappe, die sich ohne Kennwort öffnet',
    ],
    'binary-workbook': [
      'die Arbeitsmappe hat eine ältere oder binäre Form (.xls, .xlsb)',
      'eine als .xlsx gespeicherte Arbeitsmappe',
    ],
    'not-workbook': [
      'die Datei ist keine Arbeitsmappe',
      'eine als .xlsx gespeicherte Arbeitsmappe',
    ],
    'damaged-workbook': [
      'ein Teil der Arbeitsmappe ist beschädigt oder enthält, was keine enthalten kann',
      'eine neu gespeicherte Arbeitsmappe',
    ],
    'empty-workbook':
      'keine Zelle der Arbeitsmappe oder des Blattes, das die Zuordnung nennt, enthält etwas',
    'no-sheet': [
      'die Arbeitsmappe hat kein Blatt dieses Namens oder an dieser Stelle',
      'der Name eines Blattes oder seine Stelle ab 1',
    ],
    'several-sheets': [
      '{count} Blätter der Arbeitsmappe enthalten Zellen, und die Zuordnung sagt nicht, welches gemeint ist',
      'sheet in der Quelle der Zuordnung: der Name eines Blattes oder seine Stelle ab 1',
    ],
    input: [
      'die Eingabe lässt sich nicht lesen ({error})',
      'eine Textdatei, eine gzip-Datei, ein zip-Archiv oder ein Ordner davon',
    ],
    'not-zip': [
      'die Datei ist kein zip-Archiv',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'zip64-end': [
      'das zip64-Ende fehlt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'directory-bounds': [
      'das Verzeichnis liegt außerhalb der Grenzen',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'directory-damaged': [
      'das Verzeichnis ist beschädigt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'zip64-size': [
      'eine zip64-Größe fehlt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'archive-short': [
      'das Archiv ist kürzer, als es angibt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'size-bounds': [
      'eine Größe liegt außerhalb der Grenzen',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    archive: [
      'das Archiv lässt sich nicht lesen',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    encrypted: [
      'der Eintrag ist verschlüsselt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    method: [
      'der Eintrag ist anders als mit store oder deflate gepackt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'leads-out': [
      'der Name des Eintrags führt aus dem Archiv hinaus',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'entry-long': [
      'der Eintrag ist länger, als das Archiv angibt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'entry-short': [
      'der Eintrag ist kürzer, als das Archiv angibt',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    checksum: [
      'die Prüfsumme des Eintrags ist nicht die des Archivs',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'no-header': [
      'der Eintrag hat keinen lokalen Kopf',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
    'ends-within': [
      'das Archiv endet mitten in einem Eintrag',
      'Einträge, die gespeichert oder komprimiert (deflate), nicht verschlüsselt und schlicht relativ benannt sind',
    ],
  },
  'workbook-feature': {
    'sheet-read': 'dieses Blatt, das {count}. der Arbeitsmappe, wird gelesen',
    'hidden-sheet':
      'dieses Blatt, das {count}. der Arbeitsmappe, wird gelesen, obwohl es ausgeblendet ist',
    'further-sheet':
      'dieses Blatt, das {count}. der Arbeitsmappe, enthält Zellen und wird nicht gelesen',
    formulas:
      'Zellen mit Formeln: {count}; es gelten die Werte, die in der Datei stehen, und keine wird berechnet',
    'merged-cells': [
      'verbundene Bereiche: {count}; die erste Zelle jedes Bereichs enthält seinen Wert, die anderen sind leer',
      'ein Wert in jeder Zelle oder fillDown in der Quelle der Zuordnung',
    ],
    'hidden-rows': 'ausgeblendete Zeilen mit Inhalt: {count}; sie werden gelesen wie die anderen',
    'hidden-columns':
      'ausgeblendete Spalten mit Inhalt: {count}; sie werden gelesen wie die anderen',
  },
  'damaged-value': {
    'error-cell': [
      'die Zelle enthält einen Fehler wie #NV statt eines Wertes; er bleibt als Text erhalten',
      'der Wert, wie er eingegeben wurde',
    ],
    'no-result': [
      'die Zelle enthält eine Formel ohne ihren Wert, und keine wird berechnet; die Formel bleibt als Text erhalten',
      'eine Arbeitsmappe, die vor dem Speichern berechnet wurde',
    ],
    'lost-digits': [
      'die Zahl hat mehr Stellen, als eine Tabellenkalkulation behält; sie bleibt als Text erhalten',
      'die Zahl als Text',
    ],
    'no-date': [
      'die Zahl ist kein Tag und keine Zeit dieser Arbeitsmappe, oder ein Teil davon wurde hinzugefügt; sie bleibt als Text erhalten',
      'der Tag oder die Zeit vollständig',
    ],
    'exam-id':
      'die Kennung der Untersuchung sieht aus, als hätte eine Tabellenkalkulation sie verändert',
    'patient-number': [
      'die Nummer hat nicht die Form, die die Zuordnung angibt; eine Tabellenkalkulation kann sie verändert haben',
      '{code?}',
    ],
    value: [
      'das sieht aus wie ein Wert, den eine Tabellenkalkulation verändert hat',
      'der Wert, wie er eingegeben wurde',
    ],
  },
};
