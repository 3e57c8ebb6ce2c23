import { ageBelow, ageFrom, all, any, atLeast, ifFound, sign, told, unlessFound } from '../condition.ts';
import type { Picture } from '../picture.ts';

const noisyBreath = any(
  sign('stridor'),
  told('sym-throat.stridor'),
  sign('breathing-laboured'),
);
const throatComplaint = told([
  'sym-throat.sore-throat',
  'sym-throat.odynophagia',
  'sym-throat.one-sided-pain',
  'sym-throat.dysphagia',
]);
const muffled = sign('voice.muffled', { at: ['general', 'swallow'] });
const dribbling = any(sign('drooling', { at: ['general', 'swallow'] }), told('sym-motor.drooling'));
const trismus = any(sign('jaw-limited-opening'), told('sym-jaw.limited-opening'));
const neckSwollen = any(sign('neck-swelling'), told('sym-neck.swelling'));
const unwell = any(told('sym-general.fever'), sign('ill-looking'));
const stiff = any(sign('stiff-neck'), told('sym-neck.stiffness'));
const purple = sign(['petechiae', 'purpura']);
const clouded = any(sign('consciousness-reduced'), told('sym-general.confusion'));
const lump = any(
  sign(['neck-mass', 'node-enlarged', 'parotid-mass', 'submandibular-mass']),
  told('sym-neck.lump'),
);
const node = sign('node-enlarged');
const infection = any(
  told(['sym-throat.sore-throat', 'sym-ear.discharge', 'sym-throat.odynophagia']),
  sign(['otitis-externa', 'eac-discharge-kind.purulent', 'herpes-labialis']),
);
const thyroidLump = sign([
  'thyroid-mass',
  'thy-surface.single-nodule',
  'thy-surface.multinodular',
]);
const goitre = sign('thy-size.enlarged');

/** Airway, throat, neck, nodes and thyroid. */
export const neckAndThroat = {
  'noisy-breath': {
    ruleSet: 'red-flags',
    title: 'Noisy or laboured breathing',
    urgency: 'now',
    service: 'emergency',
    anchor: noisyBreath,
    remarks: ['no-instrument'],
    source:
      'Scottish Referral Guidelines for Suspected Cancer, head and neck (airway: same day); Therapeutic Guidelines, sore throat (airway obstruction)',
    evidence: 'read',
  },
  'deep-neck-infection': {
    ruleSet: 'red-flags',
    title: 'Muffled voice, drooling, stiff jaw, twisted or swollen neck, with throat pain or fever',
    urgency: 'now',
    service: 'emergency',
    anchor: any(muffled, dribbling, trismus, sign('torticollis'), neckSwollen),
    with: atLeast(2, throatComplaint, unwell, muffled, dribbling, trismus, neckSwollen, sign('torticollis')),
    remarks: ['no-instrument'],
    source:
      'NHS Greater Glasgow and Clyde, deep neck space infection and supraglottitis, 2025; Therapeutic Guidelines, sore throat; entsho.com',
    evidence: 'read',
  },
  'swelling-and-airway': {
    ruleSet: 'red-flags',
    title: 'Swelling of face, lips or throat, or wheals, with voice or breath affected',
    urgency: 'now',
    service: 'emergency',
    anchor: any(
      sign(['facial-swelling', 'facial-oedema', 'wheal']),
      sign('swelling', { at: ['lip-upper', 'lip-lower', 'vermilion'] }),
      told('sym-throat.swelling'),
    ),
    with: any(
      noisyBreath,
      told('sym-general.breathlessness'),
      sign(['voice.hoarse', 'voice.lost', 'voice.muffled'], { at: ['general', 'swallow'] }),
    ),
    source: 'Resuscitation Council UK, emergency treatment of anaphylaxis, 2008 to 2021 (signs of the airway)',
    evidence: 'second-hand',
  },
  'crackling-skin': {
    ruleSet: 'red-flags',
    title: 'Crackling under the skin of the neck',
    urgency: 'now',
    service: 'emergency',
    anchor: sign('emphysema-skin', {
      at: ['neck', 'neck-ant-skin', 'neck-lat-skin', 'supraclav-skin'],
    }),
    source:
      'Laryngoscope 2002;112:791-795 (neck crepitance); Terzic A 2012, Eur Arch Otorhinolaryngol 269:303-308',
    evidence: 'read',
  },
  meningism: {
    ruleSet: 'red-flags',
    title: 'Stiff neck with fever or clouded mind, or small bleeds in the skin with illness',
    urgency: 'now',
    service: 'emergency',
    anchor: any(stiff, purple),
    with: any(
      all(ifFound(stiff), any(unwell, clouded)),
      all(ifFound(purple), any(unwell, stiff, clouded, told('sym-general.headache'))),
    ),
    source: 'NICE NG240 2024, recommendations 1.1.4 and following; Oxford University Hospitals summary',
    evidence: 'read',
  },
  'full-neck-veins': {
    ruleSet: 'red-flags',
    title: 'Full neck veins with a swollen face or neck',
    urgency: 'same-day',
    raised: {
      by: any(noisyBreath, told(['sym-general.breathlessness', 'sym-general.headache']), clouded),
      to: 'now',
    },
    service: 'emergency',
    anchor: sign('neck-veins-full'),
    with: any(sign(['facial-swelling', 'facial-oedema', 'cyanosis']), neckSwollen),
    source:
      'Scottish Palliative Care Guidelines, superior vena cava obstruction; NHS Lothian RefHelp, 2022',
    evidence: 'read',
  },
  'neck-lump-lasting': {
    ruleSet: 'red-flags',
    title: 'Neck or gland lump for three weeks or more, or for an unknown time',
    urgency: 'weeks',
    service: 'ear-nose-throat',
    anchor: lump,
    with: all(
      unlessFound(ageBelow(16)),
      unlessFound(told(['sym-neck.lump', 'sym-neck.swelling'], { underDays: 21 })),
      any(
        told(['sym-neck.lump', 'sym-neck.swelling'], { fromDays: 21 }),
        unlessFound(any(infection, told('sym-general.fever'))),
      ),
    ),
    remarks: ['unexplained'],
    source:
      'Scottish Referral Guidelines for Suspected Cancer (three weeks); Pynnonen MA et al. 2017, AAO-HNS (uncertain duration); NHS Greater Glasgow and Clyde, lymphadenopathy',
    evidence: 'read',
  },
  'neck-lump-hard-or-fixed': {
    ruleSet: 'red-flags',
    title: 'Neck or gland lump that is hard, fixed or ulcerated, or above the collar bone',
    urgency: 'weeks',
    service: 'ear-nose-throat',
    anchor: any(
      sign(['neck-mass', 'node-enlarged', 'parotid-mass', 'submandibular-mass']),
      sign('node-palpable', { at: ['ln-supraclav'] }),
    ),
    with: any(
      sign(['node-enlarged', 'node-palpable'], { at: ['ln-supraclav'] }),
      { quality: 'node-consistency', values: ['hard'], of: ['node-enlarged', 'node-palpable'] },
      { quality: 'node-mobility', values: ['fixed'], of: ['node-enlarged', 'node-palpable'] },
      { quality: 'node-skin', values: ['ulcerated'], of: ['node-enlarged', 'node-palpable'] },
      {
        quality: 'lump-consistency',
        values: ['hard'],
        of: ['neck-mass', 'parotid-mass', 'submandibular-mass'],
      },
      {
        quality: 'lump-mobility',
        values: ['fixed'],
        of: ['neck-mass', 'parotid-mass', 'submandibular-mass'],
      },
    ),
    source:
      'ent4gp.com, neck lump (hard, fixed, supraclavicular); Pynnonen MA et al. 2017, AAO-HNS (fixed, firm, ulcerated)',
    evidence: 'read',
  },
  'node-with-sweats': {
    ruleSet: 'red-flags',
    title: 'Enlarged node with night sweats, weight loss, breathlessness or lasting fever',
    urgency: 'weeks',
    raised: { by: ageBelow(25), to: 'days' },
    service: 'general-practice',
    anchor: node,
    with: any(
      told(['sym-general.night-sweats', 'sym-general.weight-loss', 'sym-general.breathlessness']),
      all(told('sym-general.fever'), unlessFound(infection)),
    ),
    source:
      'NICE NG12, lymphadenopathy in adults and in children and young people (summaries of 2018 and 2022), and its terms (nice.org.uk)',
    evidence: 'read',
  },
  'node-of-a-child': {
    ruleSet: 'red-flags',
    title: 'Enlarged node of a child or young person without signs of an infection',
    urgency: 'days',
    service: 'general-practice',
    anchor: node,
    with: all(
      ageBelow(16),
      unlessFound(any(infection, told('sym-general.fever'))),
    ),
    remarks: ['unexplained'],
    source: 'NICE NG12, unexplained lymphadenopathy in children and young people, summary of 2022, and its terms (nice.org.uk)',
    evidence: 'read',
  },
  'thyroid-lump-voice': {
    ruleSet: 'red-flags',
    title: 'Lump or goitre of the thyroid with hoarseness, nodes, fast growth or trouble swallowing',
    urgency: 'weeks',
    raised: { by: noisyBreath, to: 'now' },
    service: 'ear-nose-throat',
    anchor: any(thyroidLump, goitre),
    with: any(
      sign('voice.hoarse', { at: ['general', 'swallow'] }),
      told(['sym-throat.hoarseness', 'sym-thyroid.rapid-growth', 'sym-throat.dysphagia']),
      node,
      noisyBreath,
    ),
    source:
      'British Thyroid Foundation, thyroid nodules, referral times; entascent.org, thyroid lumps in primary care',
    evidence: 'read',
  },
  'thyroid-lump-child': {
    ruleSet: 'red-flags',
    title: 'Lump of the thyroid at 16 or under',
    urgency: 'weeks',
    service: 'endocrinology',
    anchor: thyroidLump,
    with: ageBelow(17),
    source: 'Scottish Referral Guidelines for Suspected Cancer, thyroid cancer',
    evidence: 'read',
  },
  'lasting-hoarseness': {
    ruleSet: 'red-flags',
    title: 'Hoarseness, or throat pain of one side, for three weeks or more in an adult',
    urgency: 'weeks',
    service: 'ear-nose-throat',
    anchor: told(['sym-throat.hoarseness', 'sym-throat.one-sided-pain']),
    with: all(
      ageFrom(18),
      told(['sym-throat.hoarseness', 'sym-throat.one-sided-pain'], { fromDays: 21 }),
    ),
    remarks: ['unexplained'],
    source:
      'Scottish quick reference guide 2019, head and neck cancers (persistent hoarseness and throat pain, three weeks)',
    evidence: 'read',
  },
} as const satisfies Record<string, Picture>;
