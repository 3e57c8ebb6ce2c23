import { ageBelow, ageFrom, all, any, atLeast, history, ifFound, sign, told } from '../condition.ts';
import type { Picture } from '../picture.ts';

const moles = ['pigmented-lesion', 'naevus', 'suspicious-pigmented-lesion'] as const;
const scotland = 'Scottish quick reference guide 2019, skin cancers; NHS Borders, skin cancer';

/** What published sets ask for beyond the rules that are written by hand, in the verbs of the sets. */
export const publishedSets = {
  'ng12-node-adult': {
    ruleSet: 'ng12-england',
    title: 'Enlarged lymph node of an adult, for lymphoma, with what else goes with it',
    urgency: 'weeks',
    service: 'general-practice',
    anchor: sign('node-enlarged'),
    with: ageFrom(25),
    remarks: ['unexplained'],
    source:
      'NICE NG12, unexplained lymphadenopathy in adults (summary of 2018); terms used in the guideline (nice.org.uk): young people to 24',
    evidence: 'read',
  },
  'ng12-node-young': {
    ruleSet: 'ng12-england',
    title: 'Enlarged lymph node of a child or young person, for lymphoma',
    urgency: 'days',
    service: 'general-practice',
    anchor: sign('node-enlarged'),
    with: ageBelow(25),
    remarks: ['unexplained'],
    source:
      'NICE NG12, unexplained lymphadenopathy in children and young people (summary of 2022); terms used in the guideline (nice.org.uk): to 24, within 48 hours',
    evidence: 'read',
  },
  'scotland-throat-pain': {
    ruleSet: 'suspected-cancer-scotland',
    title: 'Constant throat pain of one side for three weeks or more',
    urgency: 'weeks',
    service: 'ear-nose-throat',
    verb: 'refer',
    anchor: told('sym-throat.one-sided-pain'),
    with: told('sym-throat.one-sided-pain', { fromDays: 21 }),
    remarks: ['unexplained'],
    source: 'rightdecisions.scot.nhs.uk, Scottish Referral Guidelines for Suspected Cancer, head and neck cancer',
    evidence: 'read',
  },
  'scotland-mole': {
    ruleSet: 'suspected-cancer-scotland',
    title: 'Mole that changes, or is irregular or larger than 6 mm, or looks suspicious',
    urgency: 'weeks',
    service: 'dermatology',
    verb: 'refer',
    anchor: sign(moles),
    with: any(
      ifFound(sign('suspicious-pigmented-lesion')),
      told('sym-skin.changing-lesion'),
      atLeast(
        2,
        { quality: 'lesion-border', values: ['irregular'], of: moles },
        { quality: 'lesion-colour', values: ['variegated'], of: moles },
        { measure: 'lesion-max', over: '6' },
      ),
    ),
    source: scotland,
    evidence: 'read',
  },
  'scotland-skin-lesion': {
    ruleSet: 'suspected-cancer-scotland',
    title: 'New growing nodule, ulcer or bleeding lesion for more than four weeks, or suspected skin cancer',
    urgency: 'weeks',
    service: 'dermatology',
    verb: 'refer',
    anchor: any(
      sign([
        'nodule',
        'skin-ulcer',
        'non-healing-ulcer',
        'squamous-cell-carcinoma',
        'melanoma',
        'basal-cell-carcinoma-eyelid',
      ]),
      told('sym-skin.non-healing-sore'),
    ),
    with: any(
      ifFound(
        sign([
          'non-healing-ulcer',
          'squamous-cell-carcinoma',
          'melanoma',
          'basal-cell-carcinoma-eyelid',
        ]),
      ),
      all(ifFound(sign('nodule')), told(['sym-skin.changing-lesion', 'sym-skin.new-lesion'])),
      told(['sym-skin.non-healing-sore', 'sym-skin.bleeding'], { fromDays: 29 }),
      history('immunosuppression'),
    ),
    remarks: ['unexplained'],
    source: scotland,
    evidence: 'read',
  },
  'ng98-ear-low-defence': {
    ruleSet: 'hearing-loss-england',
    title: 'Painful discharging ear with lowered immunity that three days of treatment did not settle',
    urgency: 'same-day',
    service: 'ear-nose-throat',
    verb: 'refer',
    anchor: all(
      any(sign('eac-discharge'), told('sym-ear.discharge')),
      history('immunosuppression'),
    ),
    with: told('sym-ear.pain', { fromDays: 3 }),
    source: 'NICE NG98, as told by themedicalcookbook.com (72 hours, lowered immunity)',
    evidence: 'second-hand',
  },
} as const satisfies Record<string, Picture>;
