import type { Negatives } from './negatives.ts';

/** What is said of a complaint that was asked about and denied: each by itself, so that no list of them reads as told. */
export const englishDeniedComplaints: Negatives = {
  before: {
    No: `
      sym-general.fever sym-general.night-sweats sym-general.weight-loss sym-general.fatigue
      sym-general.headache sym-general.limb-weakness sym-general.vomiting sym-skin.itch
      sym-skin.pain sym-skin.bleeding sym-skin.new-lesion sym-skin.non-healing-sore
      sym-skin.flushing sym-skin.dryness sym-sensory.numbness sym-sensory.tingling
      sym-sensory.burning sym-sensory.shooting-pain sym-sensory.touch-evoked-pain
      sym-motor.weakness sym-motor.drooling sym-motor.twitching sym-eye.gritty sym-eye.dry
      sym-eye.watering sym-eye.itch sym-eye.swelling sym-eye.droop sym-eye.double-vision
      sym-eye.blurred-vision sym-eye.visual-loss sym-eye.pain sym-nose.blocked sym-nose.runny
      sym-nose.bleeding sym-nose.one-sided-discharge sym-nose.loss-of-smell
      sym-nose.facial-pressure sym-ear.pain sym-ear.discharge sym-ear.hearing-loss
      sym-ear.hearing-loss-sudden sym-ear.hearing-loss-gradual sym-ear.tinnitus sym-ear.vertigo
      sym-ear.itch sym-ear.fullness sym-jaw.pain sym-jaw.click sym-jaw.clenching
      sym-jaw.pain-on-chewing sym-neck.lump sym-neck.pain sym-neck.stiffness sym-neck.swelling
      sym-throat.dysphagia sym-throat.odynophagia sym-throat.hoarseness sym-throat.sore-throat
      sym-throat.one-sided-pain sym-throat.globus sym-throat.cough-on-swallow sym-throat.stridor
      sym-thyroid.palpitations sym-thyroid.tremor`,
  },
  lowered: true,
  denying: ['no', 'not'],
  own: {
    'sym-general.scalp-tenderness': 'Scalp does not hurt on touch or combing',
    'sym-general.limb-claudication': 'No arm or leg that tires and hurts on use',
    'sym-general.breathlessness': 'Not short of breath',
    'sym-general.confusion': 'Not newly confused',
    'sym-general.speech-trouble': 'No trouble speaking or finding words',
    'sym-skin.changing-lesion': 'No lesion that changes',
    'sym-motor.unable-to-close-eye': 'Not unable to close the eye',
    'sym-eye.photophobia': 'Light does not hurt',
    'sym-eye.painful-movement': 'Moving the eye does not hurt',
    'sym-eye.tires': 'No drooping of the lid or double vision that worsens with use',
    'sym-jaw.locking': 'Jaw does not lock',
    'sym-jaw.limited-opening': 'Mouth opening not limited',
    'sym-jaw.jaw-claudication': 'No jaw that tires and hurts on chewing',
    'sym-jaw.tongue-claudication': 'No tongue that tires and hurts on chewing or talking',
    'sym-jaw.bite-change': 'No change in the bite',
    'sym-throat.swelling': 'No throat or tongue that feels swollen',
    'sym-thyroid.heat-intolerance': 'No trouble tolerating heat',
    'sym-thyroid.cold-intolerance': 'No trouble tolerating cold',
    'sym-thyroid.rapid-growth': 'No fast growth of a lump',
  },
};
