import { ageBelow, ageFrom, all, any, atLeast, history, sign, told, unlessFound } from '../condition.ts';
import type { Picture } from '../picture.ts';

const ptosis = any(sign('lid-position.ptosis'), told('sym-eye.droop'));
const widePupil = any(
  sign('pupil-large'),
  sign(['pupil-light.none', 'pupil-light.sluggish'], { at: ['pupil'] }),
);
const smallPupil = sign('pupil-small');
const injury = any(history('recent-injury'), history('previous-trauma'));
const headOrNeckPain = told(['sym-neck.pain', 'sym-general.headache', 'sym-eye.pain'], {
  anySide: true,
});
const lowVision = any(
  told(['sym-eye.visual-loss', 'sym-eye.blurred-vision']),
  {
    test: 'visual-acuity',
    results: ['reduced', 'counts-fingers', 'hand-movements', 'light-only', 'no-light'],
  },
);
const lidRed = any(sign('lid-redness'), sign(['erythema', 'spreading-erythema'], { at: ['eyes'] }));
const lidSwollen = any(sign('lid-swelling'), told('sym-eye.swelling'));
const unwell = any(told('sym-general.fever'), sign('ill-looking'));
const styes = sign(['hordeolum', 'chalazion'], { at: ['eyes'] });
const lowerFace = ['zygomaticus', 'buccinator', 'orb-oris', 'dep-labii'] as const;
export const faceWeak = any(
  sign(['facial-weakness', 'facial-palsy', 'bells-palsy'], { at: ['general'] }),
  told('sym-motor.weakness'),
  { weak: lowerFace },
);
const firstDivision = [
  'forehead',
  'scalp-margin',
  'eyebrow',
  'glabella',
  'lid-upper',
  'nose-root',
  'nose-tip',
  'nose-sidewall',
] as const;
const zosterRash = sign(['vesicles', 'blister', 'herpes-zoster'], { at: firstDivision });
const anyDivision = any(
  { lost: ['v1', 'v2', 'v3', 'v3-pre'] },
  told('sym-sensory.numbness', { at: ['skin'] }),
);

/** Eyes, and nerves of eye and face. */
export const eyesAndNerves = {
  'drooping-lid-small-pupil': {
    ruleSet: 'red-flags',
    title: 'Drooping lid and small pupil',
    urgency: 'days',
    raised: { by: any(headOrNeckPain, injury), to: 'same-day' },
    service: 'emergency',
    eachSide: true,
    anchor: any(sign('lid-position.ptosis'), smallPupil),
    with: all(ptosis, smallPupil, unlessFound(all(unlessFound(smallPupil), sign('pupil-large')))),
    source:
      "Emerg Med J 2008;25:295 (dissection to be suspected in Horner's with pain of head, face or neck); Davagnanam I et al. 2013, Eye 27:291-298; East Yorkshire LOC, acute referral guidance (acute Horner's)",
    evidence: 'read',
  },
  'drooping-lid-wide-pupil': {
    ruleSet: 'red-flags',
    title: 'Drooping lid and wide or poorly reacting pupil',
    urgency: 'now',
    service: 'emergency',
    eachSide: true,
    anchor: any(sign('lid-position.ptosis'), sign(['pupil-large', 'pupil-light.none'], { at: ['pupil'] })),
    with: all(ptosis, widePupil, unlessFound(smallPupil)),
    source:
      'Kim and Choi 2014, Clin Exp Emerg Med 1:65-66; Mebust D 2013, Permanente Journal 17(3):e120',
    evidence: 'read',
  },
  'drooping-lid-double-vision': {
    ruleSet: 'red-flags',
    title: 'Drooping lid with double vision',
    urgency: 'same-day',
    service: 'ophthalmology',
    eachSide: true,
    anchor: sign('lid-position.ptosis'),
    with: told('sym-eye.double-vision', { anySide: true }),
    source:
      'East Yorkshire LOC, acute referral guidance (acute ptosis, acute double vision); Contini V 2024, Oftalmol Clin Exp 17(3):e446 (a sound pupil does not exclude an aneurysm)',
    evidence: 'read',
  },
  'tiring-lid-with-throat-or-breath': {
    ruleSet: 'red-flags',
    title: 'Lid or sight that tires, with weak swallowing, speech or breath',
    urgency: 'same-day',
    raised: {
      by: any(told('sym-general.breathlessness'), sign('breathing-laboured')),
      to: 'now',
    },
    service: 'neurology',
    anchor: any(sign('lid-fatigue'), told('sym-eye.tires')),
    with: any(
      told(['sym-throat.dysphagia', 'sym-general.breathlessness', 'sym-general.speech-trouble']),
      sign(['swallow-difficult', 'speech.slurred', 'voice.weak', 'breathing-laboured'], {
        at: ['general', 'swallow'],
      }),
    ),
    source:
      'BMJ Best Practice, myasthenia gravis, history and examination; FICM key messages on myasthenic crisis',
    evidence: 'read',
  },
  'weak-face-with-stroke-sign': {
    ruleSet: 'red-flags',
    title: 'Weak face with trouble of speech, limb, sight or consciousness',
    urgency: 'now',
    service: 'emergency',
    anchor: faceWeak,
    with: any(
      sign(['speech.slurred', 'consciousness-reduced'], { at: ['general'] }),
      told([
        'sym-general.limb-weakness',
        'sym-general.speech-trouble',
        'sym-general.confusion',
        'sym-eye.visual-loss',
      ]),
    ),
    remarks: ['ask-onset', 'whole-side'],
    source: 'FAST test, page of North West Ambulance Service (nwas.nhs.uk); Wongwandee M 2025, Neurol Int 17:12',
    evidence: 'read',
  },
  'weak-lower-face': {
    ruleSet: 'red-flags',
    title: 'Weak lower face with a forehead that moves',
    urgency: 'now',
    service: 'emergency',
    eachSide: true,
    anchor: faceWeak,
    with: all({ weak: lowerFace }, { test: 'frontalis', results: ['normal'] }),
    remarks: ['ask-onset'],
    source:
      'gpni.co.uk, Bell’s palsy (forehead spared: exclude stroke); Wongwandee M 2025, Neurol Int 17:12 (closing the eyes is weak in many central palsies)',
    evidence: 'read',
  },
  'weak-face-ear-blisters': {
    ruleSet: 'red-flags',
    title: 'Weak face with blisters of the ear',
    urgency: 'same-day',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: any(
      faceWeak,
      sign(['vesicles', 'blister', 'herpes-zoster'], { at: ['ears'] }),
    ),
    with: all(
      faceWeak,
      any(sign(['vesicles', 'blister', 'herpes-zoster'], { at: ['ears'] }), sign('tm-bullae')),
    ),
    remarks: ['eye-care'],
    source: 'BMJ Best Practice, Ramsay Hunt syndrome, diagnosis; gpni.co.uk, Bell’s palsy (to be excluded)',
    evidence: 'read',
  },
  'weak-face-parotid-lump': {
    ruleSet: 'red-flags',
    title: 'Weak face with a lump of the parotid gland',
    urgency: 'weeks',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: any(faceWeak, sign('parotid-mass')),
    with: all(
      faceWeak,
      any(sign(['parotid-mass', 'parotid-swelling']), sign('lump-felt', { at: ['parotid'] })),
    ),
    source:
      'NHS Borders, Bell’s palsy (parotid mass: urgent suspicion of cancer); gpni.co.uk, Bell’s palsy',
    evidence: 'read',
  },
  'weak-face-ear-infection': {
    ruleSet: 'red-flags',
    title: 'Weak face with an inflamed or discharging ear',
    urgency: 'same-day',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: faceWeak,
    with: any(
      sign(['eac-discharge', 'otitis-externa', 'tm-colour.red', 'tm-position.bulging']),
      sign('eac-discharge-kind.purulent'),
      told('sym-ear.discharge'),
    ),
    source:
      'NHS Borders, Bell’s palsy (infection: same day); NHS Cornwall, acute otitis media (new facial palsy)',
    evidence: 'read',
  },
  'several-cranial-nerves': {
    ruleSet: 'red-flags',
    title: 'Altered sensation of the face with another nerve of that side',
    urgency: 'weeks',
    service: 'neurology',
    eachSide: true,
    anchor: anyDivision,
    with: any(
      faceWeak,
      told(['sym-eye.double-vision', 'sym-ear.hearing-loss', 'sym-ear.hearing-loss-sudden']),
      sign('lid-position.ptosis'),
    ),
    source: 'NHS Borders, Bell’s palsy (several cranial nerves suggest another cause)',
    evidence: 'read',
  },
  'numb-chin': {
    ruleSet: 'red-flags',
    title: 'Numb chin or lower lip',
    urgency: 'weeks',
    service: 'oral-maxillofacial',
    eachSide: true,
    anchor: any({ lost: ['v3'] }, told('sym-sensory.numbness', { at: ['chin', 'lip-lower'] })),
    with: unlessFound(any({ lost: ['v2'] }, history('recent-injury'))),
    remarks: ['unexplained'],
    source:
      'Crit Rev Oncol Hematol 2000;34:71-79, mental neuropathy; Br Dent J 2010;208, numb chin syndrome',
    evidence: 'read',
  },
  'forehead-zoster-eye': {
    ruleSet: 'red-flags',
    title: 'Blistering rash of forehead, upper lid or nose with a troubled eye',
    urgency: 'same-day',
    service: 'ophthalmology',
    eachSide: true,
    anchor: zosterRash,
    with: any(
      sign(['conjunctival-injection', 'corneal-opacity']),
      sign(['vesicles', 'blister'], { at: ['nose-tip', 'nose-sidewall', 'lid-margin-upper'] }),
      told(['sym-eye.pain', 'sym-eye.photophobia']),
      lowVision,
    ),
    remarks: ['not-excluded'],
    source:
      'eyes.nhs.scot 5.8, herpes zoster ophthalmicus, reviewed 2025; College of Optometrists, referral urgency annex 4',
    evidence: 'read',
  },
  'swollen-lids-orbit': {
    ruleSet: 'red-flags',
    title: 'Swollen or red lids with a sign of the orbit and pain or fever',
    urgency: 'now',
    service: 'emergency',
    eachSide: true,
    anchor: any(sign(['lid-swelling', 'lid-redness']), sign('globe-position.forward')),
    with: all(
      any(lidSwollen, lidRed),
      any(
        sign(['globe-position.forward', 'chemosis', 'afferent-defect']),
        told(['sym-eye.double-vision', 'sym-eye.painful-movement']),
        lowVision,
      ),
      any(unwell, told(['sym-eye.pain', 'sym-eye.painful-movement'])),
    ),
    source:
      'College of Optometrists, cellulitis, preseptal and orbital; eyes.nhs.scot 2.1 (emergency, same day)',
    evidence: 'read',
  },
  'swollen-red-lids': {
    ruleSet: 'red-flags',
    title: 'Swollen and red lids with fever, or in a child',
    urgency: 'same-day',
    service: 'ophthalmology',
    eachSide: true,
    anchor: sign('lid-swelling'),
    with: all(
      lidRed,
      any(unwell, all(ageBelow(16), unlessFound(styes))),
    ),
    source: 'eyes.nhs.scot 2.1, cellulitis (children, and adults who are unwell: same day)',
    evidence: 'read',
  },
  'painful-red-eye': {
    ruleSet: 'red-flags',
    title: 'Red eye with pain from light, cloudy cornea, odd pupil, or pain with poor sight or a contact lens',
    urgency: 'same-day',
    raised: {
      by: all(sign('corneal-opacity'), any(widePupil, lowVision)),
      to: 'now',
    },
    service: 'ophthalmology',
    eachSide: true,
    anchor: sign('conjunctival-injection'),
    with: any(
      sign(['corneal-opacity', 'pupil-shape.irregular', 'pupil-large', 'pupil-light.none']),
      told('sym-eye.photophobia'),
      all(told('sym-eye.pain'), any(lowVision, history('contact-lens', 'worn', 'removed'))),
    ),
    source:
      'College of Optometrists, referral urgency annex 4 (iritis, keratitis, angle closure); NHS Lothian, acutely raised intraocular pressure, 2026; NHS Oxfordshire ophthalmology referral guidelines 2010',
    evidence: 'read',
  },
  'sight-lost': {
    ruleSet: 'red-flags',
    title: 'Loss of sight of recent onset',
    urgency: 'same-day',
    service: 'ophthalmology',
    anchor: any(
      told('sym-eye.visual-loss'),
      { test: 'visual-acuity', results: ['counts-fingers', 'hand-movements', 'light-only', 'no-light'] },
    ),
    with: told('sym-eye.visual-loss', { underDays: 15 }),
    source:
      'College of Optometrists, referral urgency annex 4 (sudden loss of sight; change within two weeks)',
    evidence: 'read',
  },
  'afferent-defect': {
    ruleSet: 'red-flags',
    title: 'Relative afferent pupil defect',
    urgency: 'days',
    service: 'ophthalmology',
    eachSide: true,
    anchor: sign('afferent-defect'),
    source: 'College of Optometrists, referral urgency annex 4 (optic neuritis, detachment)',
    evidence: 'second-hand',
  },
  'forward-eye-sight': {
    ruleSet: 'red-flags',
    title: 'Forward or wide open eye with poor sight or a cloudy cornea',
    urgency: 'same-day',
    service: 'ophthalmology',
    eachSide: true,
    anchor: sign(['globe-position.forward', 'lid-position.retraction']),
    with: any(sign(['corneal-opacity', 'afferent-defect']), lowVision),
    source:
      'StatPearls, dysthyroid optic neuropathy; NHS Lothian, thyroid eye disease (features of active disease)',
    evidence: 'read',
  },
  'eye-forward': {
    ruleSet: 'red-flags',
    title: 'Eye that stands forward, without known thyroid disease',
    urgency: 'weeks',
    service: 'ophthalmology',
    eachSide: true,
    anchor: sign('globe-position.forward'),
    with: unlessFound(history('thyroid-disease')),
    source: 'East Yorkshire LOC, acute referral guidance (new proptosis)',
    evidence: 'read',
  },
  'injured-orbit': {
    ruleSet: 'red-flags',
    title: 'Injury with double vision, numb cheek, sunken eye or air under the skin of the lids',
    urgency: 'same-day',
    raised: {
      by: any(lowVision, sign(['globe-position.forward', 'afferent-defect', 'pupil-shape.irregular'])),
      to: 'now',
    },
    service: 'oral-maxillofacial',
    eachSide: true,
    anchor: any(injury, sign('bruise', { at: ['eyes', 'cheek-malar'] })),
    with: any(
      told('sym-eye.double-vision'),
      { lost: ['v2'] },
      told('sym-sensory.numbness', { at: ['cheek-malar', 'nasolabial', 'lip-upper'] }),
      sign('globe-position.sunken'),
      sign('emphysema-skin', { at: ['skin'] }),
    ),
    remarks: ['no-pressure'],
    source:
      'Wills Eye Manual, 8th edition, orbital blow-out fracture; Atlas of Emergency Medicine, orbital floor fracture',
    evidence: 'read',
  },
  'injured-globe': {
    ruleSet: 'red-flags',
    title: 'Injury with a pupil out of shape or loss of sight',
    urgency: 'now',
    service: 'ophthalmology',
    eachSide: true,
    anchor: injury,
    with: any(sign('pupil-shape.irregular'), told('sym-eye.visual-loss')),
    remarks: ['no-pressure'],
    source: 'Evaluation of suspected globe rupture, PMC3862938 table 2; Medscape 798223',
    evidence: 'read',
  },
  'temple-jaw-sight-from-50': {
    ruleSet: 'red-flags',
    title: 'At 50 or over: temple, scalp, jaw or tongue, or new headache with sight or chewing',
    urgency: 'same-day',
    raised: {
      by: told(['sym-eye.visual-loss', 'sym-eye.double-vision', 'sym-eye.blurred-vision']),
      to: 'now',
    },
    service: 'emergency',
    anchor: any(
      sign(
        ['tender', 'artery-thickened', 'artery-nodular', 'artery-pulse.absent', 'artery-pulse.reduced'],
        { at: ['temporal-artery'] },
      ),
      sign('skin-tender', { at: ['temple', 'scalp-margin'] }),
      told([
        'sym-general.scalp-tenderness',
        'sym-jaw.jaw-claudication',
        'sym-jaw.tongue-claudication',
        'sym-jaw.pain-on-chewing',
      ]),
      all(told('sym-general.headache'), told('sym-eye.visual-loss')),
    ),
    with: all(
      ageFrom(50),
      any(
        sign(
          ['tender', 'artery-thickened', 'artery-nodular', 'artery-pulse.absent', 'artery-pulse.reduced'],
          { at: ['temporal-artery'] },
        ),
        sign('skin-tender', { at: ['temple', 'scalp-margin'] }),
        told([
          'sym-general.scalp-tenderness',
          'sym-jaw.jaw-claudication',
          'sym-jaw.tongue-claudication',
        ]),
        atLeast(
          2,
          told('sym-general.headache', { underDays: 91, orTimeUnknown: true }),
          told('sym-jaw.pain-on-chewing'),
          told(['sym-eye.visual-loss', 'sym-eye.double-vision']),
          told('sym-general.limb-claudication'),
          told(['sym-general.fever', 'sym-general.weight-loss', 'sym-general.night-sweats']),
        ),
      ),
    ),
    source:
      'British Society for Rheumatology 2020, Rheumatology 59:e1-e23, executive summary; NHS Lanarkshire and BNSSG pathways on giant cell arteritis; what counts as new (about three months): common practice, no source',
    evidence: 'read',
  },
} as const satisfies Record<string, Picture>;
