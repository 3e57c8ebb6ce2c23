/** Lists of regions that several examples go through, one by one. */

/** The skin, zone by zone, by eye, then magnified, then by touch. All but the glabella have sides. */
export const skinZones = [
  'scalp-margin',
  'forehead',
  'temple',
  'eyebrow',
  'cheek-malar',
  'cheek-buccal',
  'nasolabial',
  'preauricular',
  'parotid-skin',
  'jaw-angle',
  'jawline',
  'chin',
  'lip-upper',
  'lip-lower',
  'vermilion',
  'commissure',
  'neck-ant-skin',
  'neck-lat-skin',
  'neck-post-skin',
  'supraclav-skin',
  'mastoid-skin',
] as const;

export type SkinZone = (typeof skinZones)[number];

export const skinMethods = ['inspection', 'inspection-magnified', 'palpation'] as const;

/** The zones of one side without those that have something to tell. */
export function rightSkin(except: readonly SkinZone[] = []) {
  return skinZones
    .filter((zone) => !except.includes(zone))
    .map((region) => ({ region, side: 'right', methods: skinMethods }) as const);
}

export function leftSkin(except: readonly SkinZone[] = []) {
  return skinZones
    .filter((zone) => !except.includes(zone))
    .map((region) => ({ region, side: 'left', methods: skinMethods }) as const);
}

/** Node levels with two sides. IA and VI lie in the midline. */
export const nodeLevels = [
  'ln-ib',
  'ln-iia',
  'ln-iib',
  'ln-iii',
  'ln-iv',
  'ln-va',
  'ln-vb',
  'ln-supraclav',
  'ln-preauricular',
  'ln-postauricular',
  'ln-occipital',
  'ln-facial',
] as const;

export const facialMovements = [
  'frontalis',
  'corrugator',
  'orb-oculi-gentle',
  'orb-oculi-forced',
  'nasalis',
  'zygomaticus',
  'buccinator',
  'orb-oris',
  'dep-labii',
  'platysma',
] as const;

/** Points that take both light touch and pinprick. */
export const sensationPoints = [
  'v1',
  'v1-nose',
  'v2',
  'v3',
  'v3-pre',
  'ga',
  'lo',
  'tc',
  'sc',
] as const;

export const bothSides = ['right', 'left'] as const;
