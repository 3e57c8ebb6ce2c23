import type { Encounter } from '../model/people.ts';

/** v3-ActCode for each kind of visit. @see http://terminology.hl7.org/CodeSystem/v3-ActCode */
export const encounterClass: Readonly<Record<NonNullable<Encounter['class']>, string>> = {
  ambulatory: 'AMB',
  virtual: 'VR',
  home: 'HH',
  field: 'FLD',
  emergency: 'EMER',
  inpatient: 'IMP',
};
