import type { CheckWords, PromptSentences } from './check-words.ts';

/** What a rule lacks. `name` is a display, `side` is "on the left" or empty. */
const phrases = {
  age: 'age (no date of birth)',
  'age-impossible': 'age (the date of birth or of the exam does not exist)',
  'age-inexact': 'whether the age is {years} or more (the date of birth is not exact enough)',
  'side-of': 'side of {name}',
  'place-of': 'place of {name}',
  unsure: '{name} (the answer was not sure)',
  declined: '{name} (the patient would not say)',
  'not-asked': '{name} (not asked)',
  'how-long': 'how long {name} has lasted',
  'how-long-words': 'how long {name} has lasted (given in words only)',
  course: 'whether {name} is getting worse',
  complaint: 'the complaint',
  at: '{name}, {place} {side}',
  named: '{name} {side}',
  'not-tested': '{name} {side} (not tested)',
  grade: 'grade of {name}',
  unusable: '{name}: the reading could not be used',
  'unit-unknown': '{name}: the unit is not known',
  'only-bound': '{name}: only a bound was given',
  'several-values': '{name}: several values, and which one is meant is not said',
  'inexact-figure': 'the exact figure: only a bound was given',
  diameter: 'greatest diameter of the lesion',
  'several-diameters': 'greatest diameter of the lesion: several values',
  'judge-unexplained': 'whether {name} is unexplained',
  'judge-persistent': 'whether {name} is persistent',
  'judge-constant': 'whether {name} is constant',
  'judge-infection': 'whether an infection explains it',
  'the-hoarseness': 'the hoarseness',
  'the-lump': 'the lump',
  'the-neck-lump': 'the neck lump',
  'the-thyroid-lump': 'the thyroid lump',
  'the-swallowing-pain': 'the pain on swallowing',
  'the-hearing-loss': 'the hearing loss',
  'lump-how-long': 'how long the lump has been there',
  'mass-how-long': 'how long the mass has been there',
  'its-size': 'its size',
  'its-mobility': 'its mobility',
  'its-consistency': 'its consistency',
  'its-skin': 'the skin over it',
  dermoscopy: 'what dermoscopy suggests',
  form: 'the form of the lesion',
  onset: 'when the weakness began',
  pupils: 'both pupils in the dark and in the light',
  sensation: 'sensation of the face {side}',
  'feature-time': 'there for two weeks or more, or for an unknown time, without signs of infection',
  'feature-fixed': 'fixed',
  'feature-firm': 'firm',
  'feature-size': 'larger than 15 mm',
  'feature-ulcerated': 'ulcerated skin',
  'taken-over':
    'what was taken over from an earlier exam to be looked at again: until then it is not known',
} as const;

export type Phrase = keyof typeof phrases;

/** Prompts of the rules that are written by hand, in the verbs of their guidelines. */
const prompts = {
  'skin-checklist': {
    advice:
      'Refer for melanoma, by a suspected cancer pathway referral, where the pigmented lesion is suspicious: weighted 7-point checklist of {points} (3 or more).',
    criterion: 'Weighted 7-point checklist of 3 or more',
  },
  'skin-squamous': {
    advice:
      'Consider a suspected cancer pathway referral for a lesion that raises the suspicion of squamous cell carcinoma.',
    criterion: 'Suspicion of squamous cell carcinoma',
  },
  'skin-basal': {
    advice:
      'Consider routine referral for a lesion that raises the suspicion of basal cell carcinoma; only consider a suspected cancer pathway referral where a delay may matter much because of its site or size.',
    criterion: 'Suspicion of basal cell carcinoma',
  },
  'skin-dermoscopy': {
    advice: 'Refer for melanoma, by a suspected cancer pathway referral: dermoscopy suggests it.',
    criterion: 'Suspicion of melanoma by dermoscopy or in a nodule',
  },
  'skin-nodular': {
    advice:
      'Consider a suspected cancer pathway referral for a lesion that suggests nodular melanoma.',
    criterion: 'Suspicion of melanoma by dermoscopy or in a nodule',
  },
  larynx: {
    advice:
      'Consider a suspected cancer pathway referral for laryngeal cancer at {years} years or over where hoarseness is persistent and unexplained or a lump in the neck is unexplained.',
    criterion: 'Hoarseness or neck lump at {years} years or over',
  },
  mouth: {
    advice:
      'Consider a suspected cancer pathway referral for oral cancer where a lump in the neck of an adult is persistent and unexplained. The mucosa of mouth and throat is not part of this exam.',
    criterion: 'Persistent, unexplained neck lump of an adult',
  },
  lip: {
    advice:
      'Consider an urgent referral for assessment by a dentist where there is a lump on the lip.',
    criterion: 'Lump on the lip',
  },
  'thyroid-lump': {
    advice:
      'Consider a suspected cancer pathway referral for thyroid cancer where a lump of the thyroid is unexplained.',
    criterion: 'Unexplained thyroid lump',
  },
  airway: {
    advice: 'Refer as an emergency on the same day: stridor, the upper airway may be compromised.',
    criterion: 'Stridor',
  },
  'constant-hoarseness': {
    advice:
      'Refer to the head and neck service with urgent suspicion of cancer: constant hoarseness for three weeks or more at {years} years or over, where it is unexplained.',
    criterion: 'Constant hoarseness for three weeks or more at {years} years or over',
  },
  'swallowing-pain': {
    advice:
      'Refer to the head and neck service with urgent suspicion of cancer: pain on swallowing for three weeks or more, where it is unexplained.',
    criterion: 'Pain on swallowing for three weeks or more',
  },
  'lasting-lump': {
    advice:
      'Refer to the head and neck service with urgent suspicion of cancer: neck or parotid lump for three weeks or more, where it is unexplained.',
    criterion: 'Neck or parotid lump for three weeks or more',
  },
  'thyroid-nodule': {
    advice:
      'Refer to the head and neck service with urgent suspicion of cancer: thyroid nodule with fast growth, unexplained hoarseness, enlarged nodes, earlier irradiation of the neck, an endocrine tumour in the family, or an age of {years} or under.',
    criterion: 'Thyroid nodule with a further feature',
  },
  'neck-mass': {
    advice:
      'Identify this neck mass of an adult as at increased risk, explain that, and examine or refer for examination of the mucosa of throat and larynx, which is not part of this exam: {features}.',
    criterion: 'Features that raise the risk of a neck mass in an adult',
  },
  'horner-pain': {
    advice:
      'Consider urgent assessment of the neck vessels and of the path of the sympathetic nerve: slight ptosis and a small pupil {side}, with pain or injury.',
    criterion: 'Ptosis with a small pupil {side}',
  },
  horner: {
    advice:
      'Consider assessment for a cause along the path of the sympathetic nerve: slight ptosis and a small pupil {side}. Ask for pain of head and neck and for injury, which would make it urgent.',
    criterion: 'Ptosis with a small pupil {side}',
  },
  'forehead-spared': {
    advice:
      'Consider the local stroke pathway without delay: the lower face is weak {side} and the forehead is spared. State when it began; an unknown onset is no reason to wait.',
    criterion: 'Weak lower face with the forehead spared {side}',
  },
  'open-eye': {
    advice:
      'Consider protection of the surface of the eye and an eye assessment: the eye {side} does not close fully.',
    criterion: 'Eye that does not close {side}',
  },
  'nose-zoster': {
    advice:
      'Consider urgent eye assessment {side}: a rash of the first division reaches the tip or side of the nose, which goes with trouble of the eye. Its absence would not exclude that.',
    criterion: 'Rash of the first division with the tip or side of the nose {side}',
  },
  'arteritis-eyes': {
    advice:
      'Where giant cell arteritis is suspected, symptoms of the eyes make it an emergency: assessment should be immediate, by the local guidance.',
    criterion: 'Temporal artery, jaw, scalp, sight or new headache at {years} years or over',
  },
  arteritis: {
    advice:
      'Where giant cell arteritis is suspected, a specialist should assess on the same day where possible, by the local guidance. A headache counts where it is new.',
    criterion: 'Temporal artery, jaw, scalp, sight or new headache at {years} years or over',
  },
  'hearing-recent': {
    advice:
      'Refer immediately, to be seen within 24 hours by an ear, nose and throat service or an emergency department: sudden hearing loss within the past 30 days, where the outer or middle ear does not explain it.',
    criterion: 'Sudden hearing loss within the past 30 days',
  },
  'hearing-older': {
    advice:
      'Refer urgently, to be seen within 2 weeks: sudden hearing loss more than 30 days ago, where the outer or middle ear does not explain it.',
    criterion: 'Sudden hearing loss more than 30 days ago',
  },
  'hearing-rapid': {
    advice:
      'Refer urgently, to be seen within 2 weeks: hearing that became worse over 4 to 90 days, where the outer or middle ear does not explain it.',
    criterion: 'Hearing that became worse over 4 to 90 days',
  },
  'hearing-face': {
    advice:
      'Refer immediately, to be seen within 24 hours, or by the local stroke pathway if stroke is suspected: acquired loss of hearing {side} alone with weakness or altered sensation of the face on that side.',
    criterion: 'Loss of hearing {side} with weakness or altered sensation of that side',
  },
} as const satisfies Record<string, PromptSentences>;

export type PromptId = keyof typeof prompts;

/** Sentences that pictures add to their advice. */
const remarks = {
  unexplained: 'It counts where nothing else explains it.',
  'not-excluded': 'A sound nose does not exclude trouble of the eye.',
  'no-instrument': 'Keep the person sitting and put no instrument into the mouth.',
  'ask-onset': 'An unknown onset is no reason to wait.',
  'no-pressure': 'Do not press on the eye.',
  'whole-side': 'A weak forehead does not exclude a stroke.',
  'eye-care': 'Protect the eye if it does not close.',
} as const;

export type Remark = keyof typeof remarks;

/** Displays that keep their capital within a sentence. */
const ownName = /^(Bell|Horner|House|Rinne|Weber|WHO)/;

/** A display as it stands within a sentence: "Lump in the neck" becomes "lump in the neck". */
export function lowered(display: string): string {
  return ownName.test(display) || !/^[A-Z][a-z -]/.test(display)
    ? display
    : `${display.charAt(0).toLowerCase()}${display.slice(1)}`;
}

export const englishChecks: CheckWords = {
  tag: 'en',
  within: lowered,
  sides: {
    right: 'on the right',
    left: 'on the left',
    both: 'on both sides',
    midline: 'in the midline',
    'right-of-midline': 'right of the midline',
    'left-of-midline': 'left of the midline',
  },
  and: 'and',
  phrases,
  prompts,
  advice: {
    consider: {
      now: 'consider emergency assessment at once',
      'same-day': 'consider assessment on the same day',
      days: 'consider assessment within two days',
      weeks: 'consider urgent referral',
      routine: 'consider referral',
    },
    refer: {
      now: 'refer as an emergency',
      'same-day': 'refer to be seen on the same day',
      days: 'refer to be seen within two days',
      weeks: 'refer urgently',
      routine: 'refer',
    },
  },
  remarks,
  headings: {
    prompts: 'Prompts',
    open: 'Could not be told, and so is no negative',
    missing: 'not known',
    setAside: 'set aside',
    more: 'and {count} more',
    mind: 'To mind when examining',
  },
  untold: '{criterion}: cannot be told from this exam.',
  unmet: '{criterion}: not met by what this exam states.',
  cautions: [
    "A prompt supports and never replaces the clinician's judgement and the local pathway.",
    'It rests only on what this record states; what is missing is listed and was not taken for normal.',
    'It names no disease as present and does not change any finding or the status of the record.',
    'Guidelines differ by country and change: check the edition in force where you practise.',
  ],
};
