/**
 * Things that a clinician does not state together of one place. Each row names the two and why; the
 * rule R48 reads the table. Where a source is not named it is common practice of the trade.
 */

/** One thing that an exam can state. */
export type Thing =
  | { readonly sign: string; readonly is: 'present' | 'absent' }
  | { readonly state: 'normal' | 'not-there'; readonly region: string }
  | { readonly measure: string; readonly than: 'under' | 'over'; readonly figure: string }
  | { readonly test: string; readonly results: readonly string[] }
  | { readonly scale: string; readonly grades: readonly string[] }
  | { readonly concern: 'none' }
  | { readonly refused: 'touch' | 'photograph' | 'examine' }
  | { readonly doneBy: 'palpation' | 'picture' | 'any' };

export interface Exclusion {
  readonly one: Thing;
  readonly other: readonly Thing[];
  /** How near the two must be: one region and side, one side, or one exam. */
  readonly within: 'place' | 'side' | 'exam';
  readonly severity: 'error' | 'check';
  readonly why: string;
}

const there = (...signs: string[]): Thing[] =>
  signs.map((sign): Thing => ({ sign, is: 'present' }));
const here = (sign: string): Thing => ({ sign, is: 'present' });
const no = (sign: string): Thing => ({ sign, is: 'absent' });
const test = (code: string, ...results: string[]): Thing => ({ test: code, results });
const grade = (scale: string, ...grades: string[]): Thing => ({ scale, grades });
const over = (measure: string, figure: string): Thing => ({ measure, than: 'over', figure });
const under = (measure: string, figure: string): Thing => ({ measure, than: 'under', figure });

function row(
  within: Exclusion['within'],
  severity: Exclusion['severity'],
  one: Thing,
  other: readonly Thing[],
  why: string,
): Exclusion {
  return { within, severity, one, other, why };
}

const weak = ['obvious-weakness', 'trace', 'none'];
const muscles = [
  'frontalis',
  'orb-oculi-gentle',
  'orb-oculi-forced',
  'zygomaticus',
  'orb-oris',
  'dep-labii',
  'buccinator',
  'nasalis',
  'corrugator',
  'platysma',
];
const drumSigns = there(
  ...['tm-intact.intact', 'tm-intact.perforated', 'tm-colour.pearl-grey', 'tm-colour.red'],
  ...['tm-colour.yellow', 'tm-colour.blue', 'tm-colour.white-patch', 'tm-appearance.translucent'],
  ...[
    'tm-appearance.opaque',
    'tm-position.neutral',
    'tm-position.retracted',
    'tm-position.bulging',
  ],
  ...[
    'tm-mobility.mobile',
    'tm-mobility.hypomobile',
    'tm-mobility.immobile',
    'tm-fluid',
    'tm-bullae',
  ],
);
const cancers = there(
  ...['melanoma', 'basal-cell-carcinoma', 'basal-cell-carcinoma-face', 'basal-cell-carcinoma-nose'],
  ...['basal-cell-carcinoma-eyelid', 'basal-cell-carcinoma-ear', 'basal-cell-carcinoma-neck'],
  ...['basal-cell-carcinoma-scalp', 'squamous-cell-carcinoma', 'suspicious-pigmented-lesion'],
);
const lesions = there(
  ...['naevus', 'papule', 'plaque', 'nodule', 'pustule', 'melanoma', 'basal-cell-carcinoma'],
  ...[
    'squamous-cell-carcinoma',
    'actinic-keratosis',
    'solar-lentigo',
    'pigmented-lesion',
    'skin-ulcer',
  ],
);
const occluded = [
  'occluded-wax',
  'occluded-discharge',
  'occluded-foreign-body',
  'occluded-stenosis',
].map((kind) => `tm-view.${kind}`);

export const exclusions: readonly Exclusion[] = [
  // Eyes and lids
  row(
    'place',
    'error',
    here('conjunctiva-quiet'),
    there('conjunctival-injection', 'chemosis', 'subconjunctival-haemorrhage'),
    'a quiet conjunctiva is neither red nor swollen',
  ),
  row(
    'place',
    'check',
    here('conjunctiva-quiet'),
    there('eye-discharge', 'conjunctival-follicles', 'conjunctival-papillae'),
    'a quiet conjunctiva has no discharge, follicles or papillae',
  ),
  row(
    'place',
    'error',
    here('cornea-clear'),
    there('corneal-opacity', 'corneal-foreign-body'),
    'a clear cornea holds no opacity',
  ),
  row(
    'place',
    'error',
    here('lid-margin-clean'),
    there('lid-scales', 'collarettes', 'lid-margin-inflamed', 'blepharitis'),
    'a clean margin has no scales and is not inflamed',
  ),
  row(
    'place',
    'error',
    here('meibomian-orifices-clear'),
    there('meibomian-plugged', 'meibomian-inspissated'),
    'clear orifices are not plugged',
  ),
  row(
    'place',
    'error',
    here('brow-level'),
    there('brow-ptosis'),
    'a brow in its place does not droop',
  ),
  row(
    'side',
    'check',
    no('lid-position.ptosis'),
    [under('mrd1', '1')],
    'no droop, and the margin stands at or below the reflex',
  ),
  row(
    'side',
    'check',
    here('lid-position.usual'),
    [under('mrd1', '1')],
    'lid in its place, and the margin stands at or below the reflex',
  ),
  row(
    'side',
    'check',
    here('lid-position.ptosis'),
    [over('mrd1', '5')],
    'a droop, and the margin stands high',
  ),
  row(
    'side',
    'check',
    here('lid-position.retraction'),
    [under('mrd1', '3')],
    'a retracted lid, and the margin stands low',
  ),
  row(
    'side',
    'check',
    no('lagophthalmos'),
    [over('lagophthalmos', '0.5'), test('orb-oculi-gentle', 'none', 'trace')],
    'lids said to close, and a gap measured or no closure seen',
  ),
  row(
    'side',
    'check',
    here('lagophthalmos'),
    [test('orb-oculi-gentle', 'normal')],
    'lids said not to close, and closure graded normal',
  ),
  row(
    'side',
    'check',
    here('lid-crease-absent'),
    [over('lid-crease', '0.5')],
    'no crease, and its height measured',
  ),
  row(
    'side',
    'check',
    here('globe-position.usual'),
    [over('hertel', '25')],
    'eye in its place, and far forward by measurement',
  ),
  row(
    'side',
    'check',
    here('globe-position.forward'),
    [under('hertel', '12')],
    'eye forward, and far back by measurement',
  ),
  row(
    'side',
    'check',
    here('globe-position.sunken'),
    [over('hertel', '22')],
    'eye sunken, and far forward by measurement',
  ),
  row('place', 'error', here('pupil-small'), there('pupil-large'), 'one pupil is not both'),
  row(
    'side',
    'check',
    here('pupil-small'),
    [over('pupil-diam', '5')],
    'a small pupil, and a wide one measured',
  ),
  row(
    'side',
    'check',
    here('pupil-large'),
    [under('pupil-diam', '3')],
    'a large pupil, and a narrow one measured',
  ),
  row(
    'exam',
    'check',
    here('pupil-equality.equal'),
    there('pupil-small', 'pupil-large'),
    'equal pupils, and one called small or large',
  ),
  row(
    'side',
    'error',
    { state: 'not-there', region: 'globe' },
    [
      ...there(
        'cornea-clear',
        'conjunctiva-quiet',
        'pupil-shape.round',
        'pupil-light.brisk',
        'pupil-light.sluggish',
      ),
      over('pupil-diam', '0'),
      over('hertel', '0'),
    ],
    'the eye is not there, and is described',
  ),
  row(
    'place',
    'check',
    no('lid-lesion'),
    there('chalazion', 'hordeolum', 'lid-cyst', 'xanthelasma', 'basal-cell-carcinoma-eyelid'),
    'no lesion of the lid, and one named',
  ),
  row(
    'place',
    'check',
    no('lid-redness'),
    there('blepharitis', 'hordeolum'),
    'no redness, and an inflamed lid',
  ),
  row(
    'place',
    'check',
    no('blepharitis'),
    there('collarettes', 'lid-margin-inflamed'),
    'no blepharitis, and its signs',
  ),
  row(
    'side',
    'check',
    no('epiphora'),
    there('lacrimal-reflux'),
    'no watering, and reflux from the sac',
  ),
  // Ears
  row(
    'place',
    'error',
    here('eac-clear'),
    there(
      'eac-wax',
      'eac-wax-amount.partial',
      'eac-wax-amount.occluding',
      'eac-discharge',
      'eac-blood',
      'eac-foreign-body',
    ),
    'a clear canal holds nothing',
  ),
  row(
    'place',
    'error',
    here('eac-clear'),
    there(
      'eac-discharge-kind.serous',
      'eac-discharge-kind.mucoid',
      'eac-discharge-kind.mucopurulent',
      'eac-discharge-kind.purulent',
      'eac-discharge-kind.blood-stained',
    ),
    'a clear canal holds no discharge',
  ),
  row(
    'place',
    'check',
    here('eac-clear'),
    there('otitis-externa', 'eac-swollen', 'eac-red'),
    'a clear canal is not inflamed',
  ),
  row(
    'place',
    'error',
    no('eac-wax'),
    there('eac-wax-amount.partial', 'eac-wax-amount.occluding'),
    'no wax, and an amount of it',
  ),
  row(
    'place',
    'error',
    no('eac-discharge'),
    there(
      'eac-discharge-kind.serous',
      'eac-discharge-kind.mucoid',
      'eac-discharge-kind.mucopurulent',
      'eac-discharge-kind.purulent',
      'eac-discharge-kind.blood-stained',
    ),
    'no discharge, and a kind of it',
  ),
  row(
    'place',
    'check',
    no('otitis-externa'),
    there('eac-swollen'),
    'no inflammation of the canal, and a swollen one',
  ),
  ...occluded.map((view) =>
    row('place', 'error', here(view), drumSigns, 'the drum was hidden, and is described'),
  ),
  ...occluded.map((view) =>
    row(
      'place',
      'error',
      here(view),
      [{ state: 'normal', region: 'tm' }],
      'the drum was hidden, and is called normal',
    ),
  ),
  row(
    'side',
    'error',
    here('eac-wax-amount.occluding'),
    [...drumSigns, { state: 'normal', region: 'tm' }, here('tm-view.adequate')],
    'wax fills the canal, and the drum behind it is described',
  ),
  row(
    'place',
    'error',
    here('tm-intact.intact'),
    there('tm-tube.in-situ'),
    'a drum with a tube in it is not intact',
  ),
  row(
    'place',
    'check',
    here('tm-intact.perforated'),
    there('tm-mobility.mobile', 'tm-position.bulging', 'tm-fluid'),
    'a perforated drum does not move or bulge on pressure and holds no fluid back',
  ),
  row(
    'place',
    'check',
    here('tm-position.bulging'),
    there('tm-retraction-pocket'),
    'a drum bulges or is drawn in',
  ),
  row(
    'place',
    'error',
    no('tm-fluid'),
    there('tm-fluid-kind.level', 'tm-fluid-kind.bubbles'),
    'no fluid, and a kind of it',
  ),
  row(
    'side',
    'check',
    test('cn8-whisper', 'pass'),
    [under('whisper', '2')],
    'whisper heard, and two items or fewer repeated',
  ),
  row(
    'side',
    'check',
    test('cn8-whisper', 'fail'),
    [over('whisper', '5')],
    'whisper not heard, and five items or more repeated',
  ),
  row(
    'place',
    'check',
    here('auricle-shape.usual'),
    there('ear-tag', 'tophus'),
    'an auricle of the usual shape, and a tag or tophus on it',
  ),
  row(
    'place',
    'check',
    no('ear-lesion'),
    there('basal-cell-carcinoma-ear', 'tophus'),
    'no lesion of the ear, and one named',
  ),
  // Nose
  row(
    'place',
    'error',
    here('turbinate-usual'),
    there('turbinate-hypertrophy', 'turbinate-pale', 'turbinate-oedema', 'turbinate-red'),
    'a usual turbinate is none of these',
  ),
  row(
    'place',
    'error',
    no('nasal-discharge'),
    there(
      'nasal-discharge-kind.clear',
      'nasal-discharge-kind.mucoid',
      'nasal-discharge-kind.purulent',
    ),
    'no discharge, and a kind of it',
  ),
  row(
    'side',
    'check',
    here('airflow.free'),
    there('nasal-mass'),
    'air passes freely, and a mass lies in the nose',
  ),
  row(
    'side',
    'check',
    here('airflow.free'),
    there('nasal-valve-collapse'),
    'air passes freely, and the valve collapses',
  ),
  row(
    'exam',
    'check',
    here('septum.midline'),
    there('septal-haematoma'),
    'a septum swollen by blood is seldom in the midline',
  ),
  row(
    'place',
    'check',
    here('ext-nose.straight'),
    there('saddle-nose'),
    'a straight nose, and a sunken bridge',
  ),
  row(
    'place',
    'check',
    no('nose-lesion'),
    there('basal-cell-carcinoma-nose', 'rhinophyma'),
    'no lesion of the nose, and one named',
  ),
  row('place', 'check', no('nasal-mass'), there('nasal-polyp'), 'no mass in the nose, and a polyp'),
  // Face, skin, movement
  row(
    'place',
    'check',
    here('colour-usual'),
    there('pallor', 'flushing', 'cyanosis', 'jaundice'),
    'colour as usual, and another one',
  ),
  row(
    'place',
    'check',
    here('symmetry-rest.symmetric'),
    there('facial-palsy', 'bells-palsy'),
    'symmetric at rest, and a palsy',
  ),
  row(
    'exam',
    'check',
    no('facial-weakness'),
    [...muscles.map((one) => test(one, ...weak)), ...there('facial-palsy', 'bells-palsy')],
    'no weakness of the face, and a movement that fails',
  ),
  row(
    'exam',
    'check',
    no('facial-palsy'),
    [test('zygomaticus', ...weak), here('bells-palsy')],
    'no palsy, and a movement that fails',
  ),
  row(
    'side',
    'check',
    grade('hb', 'hb-1'),
    [
      ...muscles.map((one) => test(one, ...weak)),
      ...there('facial-weakness', 'facial-palsy', 'bells-palsy', 'lagophthalmos', 'synkinesis'),
    ],
    'House-Brackmann grade I is normal in all areas',
  ),
  row(
    'side',
    'check',
    grade('hb', 'hb-6'),
    muscles.map((one) => test(one, 'normal', 'slight-weakness')),
    'House-Brackmann grade VI is no movement',
  ),
  row(
    'place',
    'check',
    no('facial-swelling'),
    there('facial-oedema'),
    'no swelling of the face, and oedema',
  ),
  row('place', 'check', no('skin-lesion'), lesions, 'no lesion of the skin, and one named'),
  row(
    'place',
    'check',
    no('pigmented-lesion'),
    there('suspicious-pigmented-lesion', 'naevus', 'solar-lentigo', 'melanoma'),
    'no pigmented lesion, and one named',
  ),
  row(
    'place',
    'check',
    no('rash'),
    there('macular-rash', 'vesicles', 'herpes-zoster', 'wheal'),
    'no rash, and one named',
  ),
  row('place', 'check', no('skin-neoplasm'), cancers, 'no growth of the skin, and one named'),
  row(
    'place',
    'check',
    no('erythema'),
    there('spreading-erythema'),
    'no redness, and spreading redness',
  ),
  row(
    'place',
    'check',
    no('vesicles'),
    there('herpes-zoster', 'herpes-labialis'),
    'no vesicles, and herpes: it can be healing',
  ),
  row(
    'place',
    'check',
    no('skin-ulcer'),
    there('non-healing-ulcer'),
    'no ulcer, and one that does not heal',
  ),
  row('place', 'check', no('scar'), there('hypertrophic-scar', 'keloid'), 'no scar, and one named'),
  row(
    'place',
    'check',
    no('lip-lesion'),
    there('herpes-labialis', 'angular-cheilitis'),
    'no lesion of the lip, and one named',
  ),
  row(
    'exam',
    'check',
    here('head-posture.straight'),
    there('torticollis'),
    'head held straight, and a wry neck',
  ),
  row(
    'exam',
    'check',
    here('voice.clear'),
    there('stridor'),
    'a clear voice seldom goes with stridor',
  ),
  row('exam', 'error', here('voice.lost'), there('speech.clear'), 'no voice, and clear speech'),
  // Jaw
  row(
    'exam',
    'check',
    here('jaw-limited-opening'),
    [over('mio', '45')],
    'opening limited, and wide by measurement',
  ),
  row(
    'exam',
    'check',
    no('jaw-limited-opening'),
    [under('mio', '30')],
    'opening not limited, and narrow by measurement',
  ),
  row(
    'exam',
    'check',
    here('jaw-path.straight'),
    [over('jaw-deviation', '3'), test('cn5-open', 'to-right', 'to-left')],
    'a straight path, and a deviation',
  ),
  row(
    'side',
    'check',
    here('muscle-bulk.usual'),
    [test('cn5-masseter', 'wasting')],
    'bulk as usual, and wasted',
  ),
  row(
    'side',
    'check',
    no('tmj-tender'),
    there('jaw-pain-on-movement'),
    'joint not tender, and painful on movement: said by one of them alone',
  ),
  row(
    'place',
    'check',
    no('tmj-disorder'),
    there('jaw-locking'),
    'no disorder of the joint, and locking',
  ),
  // Neck and glands
  row(
    'place',
    'error',
    no('node-palpable'),
    [here('node-enlarged'), over('node-size', '0')],
    'no node felt, and one called enlarged or measured',
  ),
  row(
    'place',
    'check',
    no('node-enlarged'),
    [over('node-size', '15')],
    'not enlarged, and above 15 mm',
  ),
  row(
    'side',
    'check',
    no('parotid-swelling'),
    there('parotid-mass'),
    'no swelling of the parotid, and a mass',
  ),
  row(
    'place',
    'check',
    no('gland-enlarged'),
    there('parotid-mass', 'parotid-swelling', 'submandibular-mass'),
    'gland not enlarged, and a mass or swelling of it',
  ),
  row(
    'place',
    'check',
    here('artery-pulse.absent'),
    there('carotid-bruit', 'pulsatile-mass'),
    'no pulse, and a sound or pulsation of flow',
  ),
  row('place', 'check', no('neck-mass'), [over('neck-mass', '0')], 'no mass, and one measured'),
  row(
    'place',
    'check',
    no('neck-swelling'),
    there('neck-mass'),
    'no swelling of the neck, and a mass',
  ),
  row(
    'exam',
    'check',
    here('stiff-neck'),
    [test('neck-flexion', 'full')],
    'a stiff neck, and full flexion',
  ),
  row(
    'exam',
    'check',
    here('torticollis'),
    [test('neck-rotation', 'full')],
    'a wry neck, and full rotation',
  ),
  row(
    'exam',
    'error',
    here('thy-size.not-palpable'),
    there(
      'thyroid-mass',
      'thy-surface.single-nodule',
      'thy-surface.multinodular',
      'thy-consist.hard',
      'thy-consist.firm',
    ),
    'thyroid not felt, and described by touch',
  ),
  row(
    'exam',
    'error',
    grade('goitre', 'goitre-0'),
    there(
      'thyroid-mass',
      'thy-size.enlarged',
      'thy-surface.single-nodule',
      'thy-surface.multinodular',
    ),
    'goitre grade 0 is not felt and not seen',
  ),
  row(
    'exam',
    'check',
    grade('goitre', 'goitre-1', 'goitre-2'),
    there('thy-size.not-palpable'),
    'goitre of grade 1 or 2 is felt',
  ),
  row(
    'exam',
    'check',
    no('thyroid-mass'),
    there('thy-surface.single-nodule', 'thy-surface.multinodular'),
    'no mass of the thyroid, and nodules',
  ),
  row(
    'exam',
    'check',
    here('thy-surface.smooth'),
    [here('thyroid-mass'), over('thyroid-nodule', '10')],
    'a smooth thyroid, and a mass or nodule in it',
  ),
  row(
    'exam',
    'check',
    test('swallow-water', 'normal'),
    there('swallow-difficult', 'swallow-cough'),
    'water swallowed normally, and difficulty seen',
  ),
  // Places called normal or not there
  row(
    'place',
    'check',
    { state: 'normal', region: 'neck' },
    [over('node-size', '10'), over('neck-mass', '0')],
    'place normal, and a node above 10 mm or a mass measured there',
  ),
  row(
    'place',
    'check',
    { state: 'normal', region: 'thyroid' },
    [over('thyroid-nodule', '0'), grade('goitre', 'goitre-1', 'goitre-2')],
    'thyroid normal, and a nodule or goitre',
  ),
  row(
    'place',
    'check',
    { state: 'normal', region: 'skin' },
    [over('lesion-max', '6')],
    'skin normal, and a lesion above 6 mm measured there',
  ),
  // What was agreed to, and what was done
  row(
    'exam',
    'error',
    { refused: 'touch' },
    [{ doneBy: 'palpation' }],
    'touch was refused, and something was felt',
  ),
  row(
    'exam',
    'error',
    { refused: 'photograph' },
    [{ doneBy: 'picture' }],
    'pictures were refused, and one was taken with consent',
  ),
  row(
    'exam',
    'error',
    { refused: 'examine' },
    [{ doneBy: 'any' }],
    'the examination was refused, and something was examined',
  ),
  row(
    'exam',
    'check',
    { concern: 'none' },
    [...cancers, ...there('stridor', 'septal-haematoma', 'non-healing-ulcer', 'pulsatile-mass')],
    'no concern, and a finding that calls for one',
  ),
];
