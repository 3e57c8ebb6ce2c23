/**
 * Signs that a letter to the patient names by itself, chosen because they name no disease and raise no
 * suspicion (common practice, no source): all others are left for a person to tell.
 */
export const spokenSigns: ReadonlySet<string> = new Set(
  `naevus spider-naevus skin-tag milia comedones scar solar-lentigo bruise abrasion excoriation
  telangiectasia hair-loss skin-moisture.dry skin-moisture.oily crusting scaling
  lid-scales lid-swelling excess-lid-skin epiphora
  septum.deviated-right septum.deviated-left septum.s-shaped turbinate-hypertrophy airflow.reduced
  nasal-crusting ext-nose.deviated-right ext-nose.deviated-left
  eac-wax eac-wax-amount.partial eac-wax-amount.occluding tm-view.compromised tm-view.occluded-wax
  ear-tag preauricular-pit auricle-shape.altered
  tmj-click tmj-crepitus jaw-path.deviates-right jaw-path.deviates-left bruxism muscle-spasm`
    .trim()
    .split(/\s+/),
);
