import type { CheckWords } from './check-words.ts';

/**
 * German words of prompts, to be given as `words` of the checks together with a catalogue in German.
 * Wording of this project, from memory; to be read over by clinicians who work in German.
 */
export const germanChecks: CheckWords = {
  tag: 'de',
  within: (display) => display,
  sides: {
    right: 'rechts',
    left: 'links',
    both: 'beidseits',
    midline: 'in der Mittellinie',
    'right-of-midline': 'rechts der Mittellinie',
    'left-of-midline': 'links der Mittellinie',
  },
  and: 'und',
  phrases: {
    age: 'Alter (kein Geburtsdatum)',
    'age-impossible': 'Alter (Geburts- oder Untersuchungsdatum gibt es nicht)',
    'age-inexact': 'ob das Alter {years} oder mehr beträgt (Geburtsdatum nicht genau genug)',
    'side-of': 'Seite: {name}',
    'place-of': 'Stelle: {name}',
    unsure: '{name} (Antwort unsicher)',
    declined: '{name} (nicht beantwortet)',
    'not-asked': '{name} (nicht gefragt)',
    'how-long': 'seit wann: {name}',
    'how-long-words': 'seit wann: {name} (nur in Worten angegeben)',
    course: 'ob es zunimmt: {name}',
    complaint: 'die Beschwerde',
    at: '{name}, {place} {side}',
    named: '{name} {side}',
    'not-tested': '{name} {side} (nicht geprüft)',
    grade: 'Grad: {name}',
    unusable: '{name}: Ablesung nicht verwendbar',
    'unit-unknown': '{name}: Einheit nicht bekannt',
    'only-bound': '{name}: nur eine Grenze angegeben',
    'several-values': '{name}: mehrere Werte, und welcher gilt, ist nicht gesagt',
    'inexact-figure': 'der genaue Wert: nur eine Grenze angegeben',
    diameter: 'größter Durchmesser der Läsion',
    'several-diameters': 'größter Durchmesser der Läsion: mehrere Werte',
    'judge-unexplained': 'ob {name} ungeklärt ist',
    'judge-persistent': 'ob {name} anhält',
    'judge-constant': 'ob {name} ständig besteht',
    'judge-infection': 'ob eine Infektion es erklärt',
    'the-hoarseness': 'die Heiserkeit',
    'the-lump': 'der Knoten',
    'the-neck-lump': 'der Knoten am Hals',
    'the-thyroid-lump': 'der Knoten der Schilddrüse',
    'the-swallowing-pain': 'der Schmerz beim Schlucken',
    'the-hearing-loss': 'der Hörverlust',
    'lump-how-long': 'seit wann der Knoten besteht',
    'mass-how-long': 'seit wann die Raumforderung besteht',
    'its-size': 'ihre Größe',
    'its-mobility': 'ihre Verschieblichkeit',
    'its-consistency': 'ihre Konsistenz',
    'its-skin': 'die Haut darüber',
    dermoscopy: 'was die Dermatoskopie zeigt',
    form: 'die Form der Läsion',
    onset: 'wann die Schwäche begann',
    pupils: 'beide Pupillen im Dunkeln und im Hellen',
    sensation: 'Sensibilität des Gesichts {side}',
    'feature-time':
      'seit zwei Wochen oder länger oder seit unbekannter Zeit, ohne Zeichen einer Infektion',
    'feature-fixed': 'nicht verschieblich',
    'feature-firm': 'fest',
    'feature-size': 'größer als 15 mm',
    'feature-ulcerated': 'Haut ulzeriert',
    'taken-over':
      'was aus einer früheren Untersuchung übernommen wurde und neu anzusehen ist: bis dahin nicht bekannt',
  },
  prompts: {
    'skin-checklist': {
      advice:
        'Wegen Melanomverdachts auf dem Weg für Krebsverdacht überweisen, wenn die pigmentierte Läsion verdächtig ist: gewichtete 7-Punkte-Liste {points} (ab 3).',
      criterion: 'Gewichtete 7-Punkte-Liste ab 3',
    },
    'skin-squamous': {
      advice:
        'Überweisung auf dem Weg für Krebsverdacht erwägen: Läsion mit Verdacht auf Plattenepithelkarzinom.',
      criterion: 'Verdacht auf Plattenepithelkarzinom',
    },
    'skin-basal': {
      advice:
        'Reguläre Überweisung erwägen: Läsion mit Verdacht auf Basalzellkarzinom; den Weg für Krebsverdacht nur, wenn eine Verzögerung wegen Ort oder Größe viel ausmachen kann.',
      criterion: 'Verdacht auf Basalzellkarzinom',
    },
    'skin-dermoscopy': {
      advice:
        'Wegen Melanomverdachts auf dem Weg für Krebsverdacht überweisen: Dermatoskopie spricht dafür.',
      criterion: 'Melanomverdacht nach Dermatoskopie oder bei einem Knoten',
    },
    'skin-nodular': {
      advice:
        'Überweisung auf dem Weg für Krebsverdacht erwägen: Läsion wie ein noduläres Melanom.',
      criterion: 'Melanomverdacht nach Dermatoskopie oder bei einem Knoten',
    },
    larynx: {
      advice:
        'Überweisung auf dem Weg für Krebsverdacht (Kehlkopf) erwägen, ab {years} Jahren, wenn Heiserkeit anhält und ungeklärt ist oder ein Knoten am Hals ungeklärt ist.',
      criterion: 'Heiserkeit oder Knoten am Hals ab {years} Jahren',
    },
    mouth: {
      advice:
        'Überweisung auf dem Weg für Krebsverdacht (Mundhöhle) erwägen, wenn ein Knoten am Hals bei Erwachsenen anhält und ungeklärt ist. Die Schleimhaut von Mund und Rachen gehört nicht zu dieser Untersuchung.',
      criterion: 'Anhaltender ungeklärter Knoten am Hals bei Erwachsenen',
    },
    lip: {
      advice:
        'Dringende Beurteilung durch eine Zahnärztin oder einen Zahnarzt erwägen: Knoten der Lippe.',
      criterion: 'Knoten der Lippe',
    },
    'thyroid-lump': {
      advice:
        'Überweisung auf dem Weg für Krebsverdacht (Schilddrüse) erwägen, wenn ein Knoten der Schilddrüse ungeklärt ist.',
      criterion: 'Ungeklärter Knoten der Schilddrüse',
    },
    airway: {
      advice:
        'Als Notfall am selben Tag überweisen: Stridor, die oberen Atemwege können gefährdet sein.',
      criterion: 'Stridor',
    },
    'constant-hoarseness': {
      advice:
        'Mit dringendem Krebsverdacht an Kopf-Hals überweisen: ständige Heiserkeit seit drei Wochen oder länger ab {years} Jahren, wenn sie ungeklärt ist.',
      criterion: 'Ständige Heiserkeit seit drei Wochen oder länger ab {years} Jahren',
    },
    'swallowing-pain': {
      advice:
        'Mit dringendem Krebsverdacht an Kopf-Hals überweisen: Schmerz beim Schlucken seit drei Wochen oder länger, wenn er ungeklärt ist.',
      criterion: 'Schmerz beim Schlucken seit drei Wochen oder länger',
    },
    'lasting-lump': {
      advice:
        'Mit dringendem Krebsverdacht an Kopf-Hals überweisen: Knoten an Hals oder Ohrspeicheldrüse seit drei Wochen oder länger, wenn er ungeklärt ist.',
      criterion: 'Knoten an Hals oder Ohrspeicheldrüse seit drei Wochen oder länger',
    },
    'thyroid-nodule': {
      advice:
        'Mit dringendem Krebsverdacht an Kopf-Hals überweisen: Knoten der Schilddrüse mit schnellem Wachstum, ungeklärter Heiserkeit, vergrößerten Lymphknoten, früherer Bestrahlung des Halses, endokrinem Tumor in der Familie oder bis {years} Jahre.',
      criterion: 'Knoten der Schilddrüse mit einem weiteren Merkmal',
    },
    'neck-mass': {
      advice:
        'Diese Raumforderung am Hals einer erwachsenen Person als erhöhtes Risiko benennen, das erklären und die Schleimhaut von Rachen und Kehlkopf untersuchen oder untersuchen lassen, die nicht zu dieser Untersuchung gehört: {features}.',
      criterion: 'Merkmale, die das Risiko einer Raumforderung am Hals erhöhen',
    },
    'horner-pain': {
      advice:
        'Dringende Abklärung der Halsgefäße und des Sympathikusverlaufs erwägen: leichte Ptosis und enge Pupille {side}, mit Schmerz oder Verletzung.',
      criterion: 'Ptosis mit enger Pupille {side}',
    },
    horner: {
      advice:
        'Abklärung des Sympathikusverlaufs erwägen: leichte Ptosis und enge Pupille {side}. Nach Schmerz an Kopf und Hals und nach Verletzung fragen, was es dringend machte.',
      criterion: 'Ptosis mit enger Pupille {side}',
    },
    'forehead-spared': {
      advice:
        'Den örtlichen Schlaganfallweg ohne Verzug erwägen: untere Gesichtshälfte {side} schwach, Stirn ausgespart. Angeben, wann es begann; ein unbekannter Beginn ist kein Grund zu warten.',
      criterion: 'Schwaches Untergesicht mit ausgesparter Stirn {side}',
    },
    'open-eye': {
      advice:
        'Schutz der Augenoberfläche und augenärztliche Beurteilung erwägen: Auge {side} schließt nicht ganz.',
      criterion: 'Auge, das nicht schließt {side}',
    },
    'nose-zoster': {
      advice:
        'Dringende augenärztliche Beurteilung {side} erwägen: Ausschlag des ersten Astes erreicht Spitze oder Seite der Nase, was mit Augenbeteiligung einhergeht. Sein Fehlen schlösse sie nicht aus.',
      criterion: 'Ausschlag des ersten Astes mit Spitze oder Seite der Nase {side}',
    },
    'arteritis-eyes': {
      advice:
        'Wo Riesenzellarteriitis vermutet wird, machen Augensymptome sie zum Notfall: sofortige Beurteilung nach örtlicher Vorgabe.',
      criterion:
        'Schläfenarterie, Kiefer, Kopfhaut, Sehen oder neuer Kopfschmerz ab {years} Jahren',
    },
    arteritis: {
      advice:
        'Wo Riesenzellarteriitis vermutet wird, fachärztliche Beurteilung möglichst am selben Tag, nach örtlicher Vorgabe. Kopfschmerz zählt, wenn er neu ist.',
      criterion:
        'Schläfenarterie, Kiefer, Kopfhaut, Sehen oder neuer Kopfschmerz ab {years} Jahren',
    },
    'hearing-recent': {
      advice:
        'Sofort überweisen, Vorstellung binnen 24 Stunden in HNO oder Notaufnahme: plötzlicher Hörverlust in den letzten 30 Tagen, den äußeres oder Mittelohr nicht erklärt.',
      criterion: 'Plötzlicher Hörverlust in den letzten 30 Tagen',
    },
    'hearing-older': {
      advice:
        'Dringend überweisen, Vorstellung binnen 2 Wochen: plötzlicher Hörverlust vor mehr als 30 Tagen, den äußeres oder Mittelohr nicht erklärt.',
      criterion: 'Plötzlicher Hörverlust vor mehr als 30 Tagen',
    },
    'hearing-rapid': {
      advice:
        'Dringend überweisen, Vorstellung binnen 2 Wochen: Gehör, das in 4 bis 90 Tagen schlechter wurde, was äußeres oder Mittelohr nicht erklärt.',
      criterion: 'Gehör, das in 4 bis 90 Tagen schlechter wurde',
    },
    'hearing-face': {
      advice:
        'Sofort überweisen, Vorstellung binnen 24 Stunden, bei Verdacht auf Schlaganfall auf dessen örtlichem Weg: erworbener Hörverlust nur {side} mit Schwäche oder veränderter Sensibilität dieser Gesichtsseite.',
      criterion: 'Hörverlust {side} mit Schwäche oder veränderter Sensibilität dieser Seite',
    },
  },
  pictures: {
    'drooping-lid-small-pupil': 'Hängendes Lid und enge Pupille',
    'drooping-lid-wide-pupil': 'Hängendes Lid und weite oder schlecht reagierende Pupille',
    'drooping-lid-double-vision': 'Hängendes Lid mit Doppelbildern',
    'tiring-lid-with-throat-or-breath':
      'Lid oder Sehen ermüdet, dazu schwaches Schlucken, Sprechen oder Atmen',
    'weak-face-with-stroke-sign':
      'Gesichtsschwäche mit Störung von Sprache, Gliedmaßen, Sehen oder Bewusstsein',
    'weak-lower-face': 'Schwaches Untergesicht bei beweglicher Stirn',
    'weak-face-ear-blisters': 'Gesichtsschwäche mit Bläschen am Ohr',
    'weak-face-parotid-lump': 'Gesichtsschwäche mit Knoten der Ohrspeicheldrüse',
    'weak-face-ear-infection': 'Gesichtsschwäche mit entzündetem oder laufendem Ohr',
    'several-cranial-nerves':
      'Veränderte Sensibilität des Gesichts mit einem weiteren Nerven dieser Seite',
    'numb-chin': 'Taubes Kinn oder taube Unterlippe',
    'forehead-zoster-eye': 'Bläschen an Stirn, Oberlid oder Nase mit betroffenem Auge',
    'swollen-lids-orbit':
      'Geschwollene oder gerötete Lider mit Zeichen der Augenhöhle und Schmerz oder Fieber',
    'swollen-red-lids': 'Geschwollene, gerötete Lider mit Fieber oder bei einem Kind',
    'painful-red-eye':
      'Rotes Auge mit Lichtschmerz, trüber Hornhaut, auffälliger Pupille oder Schmerz bei schlechtem Sehen oder Kontaktlinse',
    'sight-lost': 'Sehverlust seit kurzer Zeit',
    'afferent-defect': 'Relativer afferenter Pupillendefekt',
    'forward-eye-sight':
      'Vorstehendes oder weit offenes Auge mit schlechtem Sehen oder trüber Hornhaut',
    'eye-forward': 'Vorstehendes Auge ohne bekannte Schilddrüsenerkrankung',
    'injured-orbit':
      'Verletzung mit Doppelbildern, tauber Wange, eingesunkenem Auge oder Luft unter der Lidhaut',
    'injured-globe': 'Verletzung mit entrundeter Pupille oder Sehverlust',
    'temple-jaw-sight-from-50':
      'Ab 50 Jahren: Schläfe, Kopfhaut, Kiefer oder Zunge, oder neuer Kopfschmerz mit Sehen oder Kauen',
    'behind-the-ear':
      'Hinter dem Ohr druckschmerzhaft, gerötet oder geschwollen, oder Ohr nach vorn verdrängt, mit entzündetem Ohr oder Fieber',
    'ear-infection-with-spinning': 'Entzündetes oder laufendes Ohr mit Drehschwindel',
    'ear-pain-low-defence':
      'Laufendes oder entzündetes Ohr mit Schmerz seit drei Tagen oder länger bei Diabetes oder Immunschwäche',
    'hearing-lost-suddenly': 'Plötzlicher Hörverlust',
    'septum-haematoma': 'Bluterguss der Nasenscheidewand',
    'nasal-mass': 'Raumforderung in der Nase',
    'blocked-bleeding-one-side':
      'Verstopfte Nase mit Blutung dieser Seite oder mit Zeichen an Auge oder Wange',
    'skull-base':
      'Verletzung mit Bluterguss hinter dem Ohr, Blut oder Flüssigkeit aus dem Ohr oder klarer Flüssigkeit aus der Nase',
    'noisy-breath': 'Geräuschvolle oder angestrengte Atmung',
    'deep-neck-infection':
      'Kloßige Stimme, Speichelfluss, Kieferklemme, schiefer oder geschwollener Hals, mit Halsschmerz oder Fieber',
    'swelling-and-airway':
      'Schwellung von Gesicht, Lippen oder Hals oder Quaddeln, Stimme oder Atem betroffen',
    'crackling-skin': 'Knistern unter der Haut des Halses',
    meningism:
      'Nackensteife mit Fieber oder getrübtem Bewusstsein, oder kleine Hautblutungen bei Krankheit',
    'full-neck-veins': 'Gefüllte Halsvenen mit geschwollenem Gesicht oder Hals',
    'neck-lump-lasting':
      'Knoten an Hals oder Drüse seit drei Wochen oder länger oder seit unbekannter Zeit',
    'neck-lump-hard-or-fixed':
      'Knoten an Hals oder Drüse, hart, fixiert oder ulzeriert, oder über dem Schlüsselbein',
    'node-with-sweats':
      'Vergrößerter Lymphknoten mit Nachtschweiß, Gewichtsverlust, Atemnot oder anhaltendem Fieber',
    'node-of-a-child':
      'Vergrößerter Lymphknoten bei einem Kind oder jungen Menschen ohne Zeichen einer Infektion',
    'thyroid-lump-voice':
      'Knoten oder Struma der Schilddrüse mit Heiserkeit, Lymphknoten, schnellem Wachstum oder Schluckbeschwerden',
    'thyroid-lump-child': 'Knoten der Schilddrüse bis 16 Jahre',
    'lasting-hoarseness':
      'Heiserkeit oder einseitiger Halsschmerz seit drei Wochen oder länger bei Erwachsenen',
    'suspicious-mole': 'Verdächtig aussehende pigmentierte Läsion',
    'changing-mole':
      'Pigmentierte Läsion, die sich verändert, blutet oder mehrfach unregelmäßig ist',
    'sore-not-healing': 'Ulkus oder Wunde ohne Heilung',
    'growing-nodule': 'Knoten der Haut, neu, wachsend, blutend oder ulzeriert',
    'lip-nodule': 'Knoten, Ulkus oder Verdickung der Lippe',
    'skin-cancer-suspected': 'Verdacht auf Plattenepithelkarzinom',
    'basal-cell-at-eye-or-ear': 'Verdacht auf Basalzellkarzinom an Auge oder Gehörgang',
    'lesion-low-defence': 'Knoten oder Ulkus der Haut bei Immunschwäche',
    'spreading-redness':
      'Fortschreitende Rötung des Gesichts mit Fieber oder Krankheit oder nahe Auge oder Nase',
    'ng12-node-adult':
      'Vergrößerter Lymphknoten bei Erwachsenen, wegen Lymphoms, mit begleitenden Zeichen',
    'ng12-node-young': 'Vergrößerter Lymphknoten bei Kind oder jungem Menschen, wegen Lymphoms',
    'scotland-throat-pain': 'Ständiger einseitiger Halsschmerz seit drei Wochen oder länger',
    'scotland-mole':
      'Muttermal, das sich verändert, unregelmäßig oder größer als 6 mm ist oder verdächtig aussieht',
    'scotland-skin-lesion':
      'Neuer wachsender Knoten, Ulkus oder blutende Läsion seit mehr als vier Wochen, oder Verdacht auf Hautkrebs',
    'ng98-ear-low-defence':
      'Schmerzendes laufendes Ohr bei Immunschwäche, das sich in drei Tagen Behandlung nicht besserte',
  },
  advice: {
    consider: {
      now: 'sofortige Notfallbeurteilung erwägen',
      'same-day': 'Beurteilung am selben Tag erwägen',
      days: 'Beurteilung binnen zwei Tagen erwägen',
      weeks: 'dringende Überweisung erwägen',
      routine: 'Überweisung erwägen',
    },
    refer: {
      now: 'als Notfall überweisen',
      'same-day': 'zur Vorstellung am selben Tag überweisen',
      days: 'zur Vorstellung binnen zwei Tagen überweisen',
      weeks: 'dringend überweisen',
      routine: 'überweisen',
    },
  },
  remarks: {
    unexplained: 'Es zählt, wo nichts anderes es erklärt.',
    'not-excluded': 'Eine freie Nase schließt eine Augenbeteiligung nicht aus.',
    'no-instrument': 'Die Person sitzen lassen und kein Instrument in den Mund führen.',
    'ask-onset': 'Ein unbekannter Beginn ist kein Grund zu warten.',
    'no-pressure': 'Nicht auf das Auge drücken.',
    'whole-side': 'Eine schwache Stirn schließt einen Schlaganfall nicht aus.',
    'eye-care': 'Das Auge schützen, wenn es nicht schließt.',
  },
  headings: {
    prompts: 'Hinweise',
    open: 'Nicht zu entscheiden, und daher kein negativer Befund',
    missing: 'nicht bekannt',
    setAside: 'zurückgestellt',
    more: 'und {count} weitere',
    mind: 'Beim Untersuchen zu beachten',
  },
  untold: '{criterion}: nach dieser Untersuchung nicht zu sagen.',
  unmet: '{criterion}: trifft nach den Angaben dieser Untersuchung nicht zu.',
  examinerCautions: {
    'carotid-one-side':
      'Halsschlagadern: eine Seite nach der anderen tasten, sacht und tief am Hals; nie beide zugleich.',
    'neck-after-injury':
      'Bewegung des Halses: nach einer Verletzung erst, wenn die Halswirbelsäule nach örtlicher Regel freigegeben ist.',
    'perforated-drum':
      'Ohr: keine pneumatische Otoskopie und keine Spülung, wo das Trommelfell perforiert ist oder sein kann.',
    'injured-globe':
      'Auge: nach einer Verletzung oder wo Berührung schmerzt nicht auf das Auge drücken und die Lider nicht mit Kraft öffnen.',
    'airway-first':
      'Hals: bei Stridor, Speichelfluss oder angestrengter Atmung die Person sitzen lassen; kein Instrument in den Mund, nichts zu schlucken geben.',
  },
  cautions: [
    'Ein Hinweis stützt die Beurteilung der untersuchenden Person und den örtlichen Weg und ersetzt sie nie.',
    'Er beruht nur auf dem, was hier angegeben ist; was fehlt, ist genannt und galt nicht als unauffällig.',
    'Er nennt keine Krankheit als vorhanden und ändert weder Befund noch Status.',
    'Leitlinien unterscheiden sich nach Land und ändern sich: die am Ort geltende Fassung prüfen.',
  ],
};
