import type { Negatives } from './negatives.ts';

/** German, from memory, to be read over by clinicians who work in German. */
export const germanDeniedComplaints: Negatives = {
  before: {
    Kein: `
      sym-general.fever sym-general.night-sweats sym-general.weight-loss sym-general.headache
      sym-general.vomiting sym-skin.itch sym-skin.pain sym-sensory.numbness sym-sensory.tingling
      sym-sensory.burning sym-sensory.touch-evoked-pain sym-motor.drooling sym-eye.gritty
      sym-eye.itch sym-eye.visual-loss sym-eye.pain sym-nose.bleeding sym-nose.loss-of-smell
      sym-nose.facial-pressure sym-ear.pain sym-ear.discharge sym-ear.hearing-loss
      sym-ear.tinnitus sym-ear.vertigo sym-ear.itch sym-ear.fullness sym-jaw.pain sym-jaw.click
      sym-jaw.clenching sym-jaw.pain-on-chewing sym-neck.lump sym-throat.odynophagia
      sym-throat.globus sym-throat.cough-on-swallow sym-thyroid.palpitations sym-thyroid.tremor`,
    Keine: `
      sym-general.fatigue sym-general.breathlessness sym-general.limb-weakness
      sym-general.speech-trouble sym-skin.bleeding sym-motor.weakness sym-motor.twitching
      sym-eye.swelling sym-eye.double-vision sym-eye.photophobia sym-neck.swelling
      sym-throat.dysphagia sym-throat.hoarseness sym-throat.sore-throat`,
  },
  lowered: false,
  denying: ['kein', 'keine', 'keinen', 'nicht'],
  own: {
    'sym-general.confusion': 'Keine neu aufgetretene Verwirrtheit',
    'sym-skin.new-lesion': 'Keine neue Läsion',
    'sym-skin.flushing': 'Keine anfallsweise Rötung',
    'sym-skin.dryness': 'Keine trockene Haut',
    'sym-sensory.shooting-pain': 'Kein einschießender Schmerz',
    'sym-eye.dry': 'Kein trockenes Auge',
    'sym-eye.watering': 'Kein tränendes Auge',
    'sym-eye.droop': 'Kein hängendes Lid',
    'sym-eye.blurred-vision': 'Kein verschwommenes Sehen',
    'sym-nose.blocked': 'Keine verstopfte Nase',
    'sym-nose.runny': 'Keine laufende Nase',
    'sym-nose.one-sided-discharge': 'Kein einseitiges Sekret',
    'sym-ear.hearing-loss-sudden': 'Kein plötzlicher Hörverlust',
    'sym-ear.hearing-loss-gradual': 'Kein allmählicher Hörverlust',
    'sym-jaw.bite-change': 'Kein veränderter Biss',
    'sym-neck.stiffness': 'Nacken nicht steif',
    'sym-throat.one-sided-pain': 'Kein ständiger Halsschmerz auf einer Seite',
    'sym-throat.stridor': 'Kein geräuschvolles Atmen',
    'sym-general.scalp-tenderness': 'Kopfhaut schmerzt nicht bei Berührung oder beim Kämmen',
    'sym-general.limb-claudication': 'Kein Arm oder Bein, das bei Belastung ermüdet und schmerzt',
    'sym-skin.changing-lesion': 'Keine Läsion, die sich verändert',
    'sym-skin.non-healing-sore': 'Keine Wunde, die nicht heilt',
    'sym-motor.unable-to-close-eye': 'Kein Auge, das sich nicht schließen lässt',
    'sym-eye.painful-movement': 'Bewegen des Auges schmerzt nicht',
    'sym-eye.tires': 'Kein Hängen des Lids und keine Doppelbilder, die bei Belastung zunehmen',
    'sym-jaw.locking': 'Kiefer blockiert nicht',
    'sym-jaw.limited-opening': 'Öffnen des Mundes nicht eingeschränkt',
    'sym-jaw.jaw-claudication': 'Kein Kiefer, der beim Kauen ermüdet und schmerzt',
    'sym-jaw.tongue-claudication': 'Keine Zunge, die beim Kauen oder Sprechen ermüdet und schmerzt',
    'sym-neck.pain': 'Kein äußerlicher Halsschmerz',
    'sym-throat.swelling': 'Kein Gefühl, dass Hals oder Zunge geschwollen ist',
    'sym-thyroid.heat-intolerance': 'Wärme wird nicht schlecht vertragen',
    'sym-thyroid.cold-intolerance': 'Kälte wird nicht schlecht vertragen',
    'sym-thyroid.rapid-growth': 'Kein Knoten, der schnell wächst',
  },
};
