import { all, any, history, sign, told } from '../condition.ts';
import type { Picture } from '../picture.ts';

const injury = any(history('recent-injury'), history('previous-trauma'));
const infectedEar = any(
  sign(['eac-discharge', 'tm-colour.red', 'tm-position.bulging', 'otitis-externa']),
  sign('eac-discharge-kind.purulent'),
  told(['sym-ear.discharge', 'sym-ear.pain']),
);

/** Ears, hearing and nose. */
export const earsAndNose = {
  'behind-the-ear': {
    ruleSet: 'red-flags',
    title: 'Tender, red or swollen behind the ear, or ear pushed forward, with an inflamed ear or fever',
    urgency: 'same-day',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: any(
      sign(['tender', 'swelling'], { at: ['mastoid'] }),
      sign(['erythema', 'swelling', 'skin-tender'], { at: ['mastoid-skin'] }),
      sign('auricle-forward'),
    ),
    with: any(infectedEar, told('sym-general.fever'), sign('ill-looking')),
    source:
      'NHS Cornwall, acute otitis media (mastoiditis: refer immediately); Bristol Children’s Hospital guideline on acute otitis media',
    evidence: 'read',
  },
  'ear-infection-with-spinning': {
    ruleSet: 'red-flags',
    title: 'Inflamed or discharging ear with vertigo',
    urgency: 'same-day',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: any(
      sign(['eac-discharge', 'tm-colour.red', 'tm-position.bulging']),
      sign('eac-discharge-kind.purulent'),
    ),
    with: told('sym-ear.vertigo'),
    source: 'NHS Cornwall, acute otitis media (acute vertigo: refer immediately)',
    evidence: 'read',
  },
  'ear-pain-low-defence': {
    ruleSet: 'red-flags',
    title: 'Discharging or inflamed ear that hurts for three days or more, with diabetes or lowered immunity',
    urgency: 'same-day',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: all(
      any(
        sign(['eac-discharge', 'otitis-externa', 'eac-swollen']),
        sign('eac-discharge-kind.purulent'),
        told('sym-ear.discharge'),
      ),
      any(history('diabetes'), history('immunosuppression')),
    ),
    with: told('sym-ear.pain', { fromDays: 3 }),
    source:
      'Guideline on necrotising otitis externa, Journal of Laryngology and Otology; themedicalcookbook.com on NICE NG98 (72 hours)',
    evidence: 'read',
  },
  'hearing-lost-suddenly': {
    ruleSet: 'red-flags',
    title: 'Sudden loss of hearing',
    urgency: 'weeks',
    raised: { by: told('sym-ear.hearing-loss-sudden', { underDays: 31 }), to: 'same-day' },
    service: 'ear-nose-throat',
    anchor: told('sym-ear.hearing-loss-sudden'),
    remarks: ['unexplained'],
    source: 'NICE NG98 recommendation 1.1.2 and QS185 statement 2 (nice.org.uk)',
    evidence: 'read',
  },
  'septum-haematoma': {
    ruleSet: 'red-flags',
    title: 'Haematoma of the septum',
    urgency: 'same-day',
    service: 'ear-nose-throat',
    anchor: sign('septal-haematoma'),
    source: 'NHS Greater Glasgow and Clyde, nasal fracture and septal haematoma; RCEM Learning, nasal fracture',
    evidence: 'read',
  },
  'nasal-mass': {
    ruleSet: 'red-flags',
    title: 'Mass in the nose',
    urgency: 'weeks',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: sign('nasal-mass'),
    source: 'Devon formulary, recurrent nosebleeds (one-sided nasal mass is a red flag)',
    evidence: 'read',
  },
  'blocked-bleeding-one-side': {
    ruleSet: 'red-flags',
    title: 'Blocked nose with bleeding of that side, or with a sign of eye or cheek',
    urgency: 'weeks',
    service: 'ear-nose-throat',
    eachSide: true,
    anchor: any(
      sign(['airflow.blocked', 'airflow.reduced', 'nasal-polyp']),
      told('sym-nose.one-sided-discharge'),
    ),
    with: any(
      sign(['nasal-blood', 'globe-position.forward']),
      told(['sym-nose.bleeding', 'sym-eye.double-vision']),
      { lost: ['v2'] },
    ),
    source:
      'NHS Greater Glasgow and Clyde, nasal malignancy; BNSSG, nasal treatment (one-sided blockage with bloody discharge)',
    evidence: 'read',
  },
  'skull-base': {
    ruleSet: 'red-flags',
    title: 'Injury with bruise behind the ear, blood or fluid from the ear, or clear fluid from the nose',
    urgency: 'now',
    service: 'emergency',
    anchor: injury,
    with: any(
      sign('bruise', { at: ['mastoid-skin'] }),
      sign(['eac-blood', 'eac-discharge-kind.serous', 'tm-colour.blue', 'nasal-discharge-kind.clear']),
    ),
    source: 'ent4gp.com, nasal trauma (signs of a fracture of the skull base)',
    evidence: 'read',
  },
} as const satisfies Record<string, Picture>;
