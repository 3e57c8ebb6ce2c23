import type { Told } from './shape.ts';

const places: readonly (readonly [string, string])[] = [
  ['skin-moisture.dry', 'temple'],
  ['scar', 'forehead'],
  ['rash', 'lid-upper'],
  ['erythema', 'temple'],
  ['papule', 'nasolabial'],
  ['pustule', 'chin'],
  ['nodule', 'eyebrow'],
  ['skin-ulcer', 'lip-lower'],
  ['actinic-keratosis', 'jawline'],
  ['acne', 'preauricular'],
  ['hair-loss', 'eyebrow'],
  ['facial-swelling', 'temple'],
  ['keloid', 'mastoid-skin'],
  ['purpura', 'eyebrow'],
  ['petechiae', 'lid-lower'],
  ['skin-tag', 'neck-lat-skin'],
  ['comedones', 'nose-ala'],
  ['naevus', 'nose-sidewall'],
  ['hyperpigmentation', 'supraclav-skin'],
  ['wheal', 'temple'],
  ['tender', 'parotid'],
  ['jaundice', 'forehead'],
  ['solar-lentigo', 'temple'],
  ['epidermoid-cyst', 'lip-upper'],
];

/** Findings of others, each with a place and a side. */
export const told: readonly Told[] = places.map(([finding, region], at) => ({
  finding,
  region,
  side: at % 2 === 0 ? 'right' : 'left',
}));
