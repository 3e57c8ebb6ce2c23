import { all, any, atLeast, history, ifFound, sign, told, unlessFound } from '../condition.ts';
import type { Picture } from '../picture.ts';

const moles = ['pigmented-lesion', 'naevus', 'solar-lentigo'] as const;
const lips = ['lip-upper', 'lip-lower', 'vermilion', 'commissure'] as const;
const nodules = ['nodule', 'papule', 'plaque', 'skin-lesion', 'face-lump', 'nose-lump'] as const;

/** Skin of face and neck, and lips. */
export const skinAndLips = {
  'suspicious-mole': {
    ruleSet: 'red-flags',
    title: 'Pigmented lesion that looks suspicious',
    urgency: 'weeks',
    service: 'dermatology',
    anchor: sign(['suspicious-pigmented-lesion', 'melanoma']),
    source: 'Scottish quick reference guide 2019, skin cancers; NHS Borders, skin cancer',
    evidence: 'read',
  },
  'changing-mole': {
    ruleSet: 'red-flags',
    title: 'Pigmented lesion that changes, bleeds, or is irregular in more than one way',
    urgency: 'weeks',
    service: 'dermatology',
    anchor: sign(moles),
    with: any(
      told(['sym-skin.changing-lesion', 'sym-skin.bleeding']),
      ifFound({ quality: 'lesion-symptom', values: ['bleeding'], of: moles }),
      atLeast(
        2,
        { quality: 'lesion-border', values: ['irregular'], of: moles },
        { quality: 'lesion-colour', values: ['variegated'], of: moles },
        { measure: 'lesion-max', over: '6' },
      ),
    ),
    source: 'Scottish quick reference guide 2019, skin cancers (change, ABCD, bleeding)',
    evidence: 'read',
  },
  'sore-not-healing': {
    ruleSet: 'red-flags',
    title: 'Ulcer or sore that does not heal',
    urgency: 'weeks',
    service: 'dermatology',
    anchor: any(sign(['non-healing-ulcer', 'skin-ulcer']), told('sym-skin.non-healing-sore')),
    with: any(
      sign('non-healing-ulcer'),
      told('sym-skin.non-healing-sore', { fromDays: 28, orTimeUnknown: true }),
    ),
    source: 'Scottish quick reference guide 2019, skin cancers (ulceration for more than four weeks)',
    evidence: 'read',
  },
  'growing-nodule': {
    ruleSet: 'red-flags',
    title: 'Nodule of the skin that is new, grows, bleeds or is ulcerated',
    urgency: 'weeks',
    service: 'dermatology',
    anchor: sign(nodules),
    with: any(
      told(['sym-skin.changing-lesion', 'sym-skin.new-lesion', 'sym-skin.bleeding']),
      ifFound(
        any(
          { quality: 'lesion-symptom', values: ['bleeding'], of: nodules },
          { quality: 'lesion-surface', values: ['ulcerated', 'keratotic'], of: nodules },
          { quality: 'lesion-secondary', values: ['ulcer'], of: nodules },
        ),
      ),
    ),
    source: 'Scottish quick reference guide 2019, skin cancers (new growing nodule, keratinising lesion)',
    evidence: 'read',
  },
  'lip-nodule': {
    ruleSet: 'red-flags',
    title: 'Nodule, ulcer or thickening of the lip',
    urgency: 'weeks',
    service: 'oral-maxillofacial',
    anchor: any(
      sign(['nodule', 'skin-ulcer', 'non-healing-ulcer', 'plaque', 'subcutaneous-nodule'], {
        at: lips,
      }),
      sign('lip-lesion'),
    ),
    with: any(
      ifFound(
        sign(['nodule', 'skin-ulcer', 'non-healing-ulcer', 'plaque', 'subcutaneous-nodule'], {
          at: lips,
        }),
      ),
      all(
        unlessFound(sign('herpes-labialis')),
        {
          quality: 'lesion-type',
          values: ['nodule', 'plaque', 'tumour', 'papule'],
          of: ['lip-lesion'],
        },
      ),
      all(sign('lip-lesion'), told('sym-skin.non-healing-sore', { fromDays: 21 })),
    ),
    source: 'Coventry and Rugby, head and neck referral (lump on the lip); Scottish referral guide, SCC of the lip',
    evidence: 'read',
  },
  'skin-cancer-suspected': {
    ruleSet: 'red-flags',
    title: 'Squamous cell carcinoma suspected',
    urgency: 'weeks',
    service: 'dermatology',
    anchor: sign('squamous-cell-carcinoma'),
    source: 'NHS Borders, skin cancer (lesion suspicious for squamous cell carcinoma)',
    evidence: 'read',
  },
  'basal-cell-at-eye-or-ear': {
    ruleSet: 'red-flags',
    title: 'Basal cell carcinoma suspected at the eye or the ear canal',
    urgency: 'weeks',
    service: 'dermatology',
    anchor: any(
      sign('basal-cell-carcinoma-eyelid'),
      sign('basal-cell-carcinoma', { at: ['eyes'] }),
      sign(['basal-cell-carcinoma-ear', 'basal-cell-carcinoma'], { at: ['eac'] }),
    ),
    source: 'Scottish quick reference guide 2019, skin cancers (invading dangerous areas)',
    evidence: 'read',
  },
  'lesion-low-defence': {
    ruleSet: 'red-flags',
    title: 'Nodule or ulcer of the skin with lowered immunity',
    urgency: 'weeks',
    service: 'dermatology',
    anchor: sign(['nodule', 'skin-ulcer', 'skin-lesion', 'non-healing-ulcer']),
    with: history('immunosuppression'),
    remarks: ['unexplained'],
    source: 'Scottish quick reference guide 2019, skin cancers (unexplained lesion and immune suppression)',
    evidence: 'read',
  },
  'spreading-redness': {
    ruleSet: 'red-flags',
    title: 'Spreading redness of the face with fever or illness, or near eye or nose',
    urgency: 'same-day',
    service: 'emergency',
    anchor: sign('spreading-erythema'),
    with: any(
      told('sym-general.fever'),
      sign('ill-looking'),
      sign('spreading-erythema', { at: ['eyes', 'nose', 'cheek-malar', 'nasolabial'] }),
    ),
    source: 'RCEM Learning, cellulitis and erysipelas (facial cellulitis unless very mild); NICE NG141 in summaries',
    evidence: 'read',
  },
} as const satisfies Record<string, Picture>;
