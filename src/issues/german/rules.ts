import type { RuleTitleId } from '../english/rules.ts';

/** Titles of the consistency rules, in German. */
export const germanRuleTitles: Readonly<Record<RuleTitleId, string>> = {
  R02: 'Worte, die eine andere Seite nennen als die kodierte',
  R03: 'Als unauffällig angegebene Region mit auffälligem Zeichen oder Wert',
  R06: 'Lidmaße, die in der Summe nicht stimmen',
  R25: 'Kiefermaße und -tests, die nicht zusammenpassen',
  R26: 'Flüstersprache gegenüber Zerumen, Ohr und Anzahl',
  R28: 'Notizen und Zahlen, die aus der früheren Untersuchung wiederholt sind',
  R29: 'Worte, die alles unauffällig nennen',
  R30: 'Zeiten, die nicht zusammenpassen',
  R32: 'Wort für eine Veränderung und ihre Größe',
  R34: 'Weite Lidspalte auf der schwachen Seite, die wie eine Ptosis der anderen wirken kann',
  R35: 'Zeichen an einer Stelle, die einander ausschließen',
  R36: 'Zustände einer Region, die einander ausschließen',
  R37: 'Maß oder Punktwert von etwas, das nicht vorhanden ist',
  R38: 'House-Brackmann-Grad gegenüber den erfassten Bewegungen',
  R39: 'Summe einer Skala gegenüber ihren Punkten',
  R40: 'Seitenvergleich gegenüber dem Ergebnis jeder Seite',
  R41: 'Wert außerhalb des Referenzbereichs einer gewählten Population',
  R42: 'Angegebener Wert gegenüber seinen Ablesungen',
  R47: 'Messwert, der für sein Maß unmöglich oder ungewöhnlich ist',
  R48: 'Zwei Angaben zu einem Ort, die einander ausschließen',
  R49: 'Zwei Messwerte zu einem Ort, die nicht zusammenpassen',
  R50: 'Beurteilung, die von den Angaben nicht getragen wird',
  R51: 'Was von einer Gruppe von Regionen gesagt ist, trifft auf ein Mitglied nicht zu',
};
