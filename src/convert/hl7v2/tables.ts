import type { RecordStatus } from '../../model/record-event.ts';
import type { ItemStatus, SideWithin } from '../mapping/mapping.ts';

/**
 * What OBX-11 says about its value: table 0085 (code system v2-0085 of HL7 terminology 7.0.1). F, P,
 * C, A, D, W, X and N follow HL7's own v2-to-FHIR concept map for 0085; the others have no map there
 * and are our choice. N is "not asked" and X "cannot be obtained": neither is ever normal.
 */
export const resultStatusWords: { readonly [code: string]: ItemStatus } = {
  F: 'stated',
  P: 'stated',
  C: 'stated',
  A: 'stated',
  D: 'withdrawn',
  W: 'withdrawn',
  X: { state: 'not-examined', reason: 'other', text: 'OBX-11 X: results cannot be obtained' },
  N: { state: 'not-examined', reason: 'not-sought', text: 'OBX-11 N: not asked' },
  B: 'stated',
  V: 'stated',
  U: 'stated',
  R: 'stated',
  // No result came with these.
  S: 'text',
  I: 'text',
  O: 'text',
};

/** Codes of table 0085 for a value that is not yet final. */
export const unverifiedResult: ReadonlySet<string> = new Set(['P', 'R', 'S', 'I']);

/**
 * Status of the exam by OBR-25: table 0123 (code system v2-0123 of HL7 terminology 7.0.1), where a
 * code has a counterpart. P, C, F and X follow HL7's v2-to-FHIR concept map for 0123; R ("stored; not
 * yet verified") is preliminary here because an exam has no partial state. O, I, S, A, M, N, Y and Z
 * are left out: they say that there is no exam yet, or not all of it.
 */
export const reportStatusWords: { readonly [code: string]: RecordStatus } = {
  F: 'final',
  C: 'corrected',
  P: 'preliminary',
  R: 'preliminary',
  X: 'cancelled',
};

/**
 * Status of the exam by TXA-17: table 0271 (code system v2-0271 of HL7 terminology 7.0.1). Our
 * choice: authenticated documents are final, the others preliminary.
 */
export const documentStatusWords: { readonly [code: string]: RecordStatus } = {
  AU: 'final',
  LA: 'final',
  DI: 'preliminary',
  DO: 'preliminary',
  IP: 'preliminary',
  IN: 'preliminary',
  PA: 'preliminary',
};

/**
 * Sides by the codes of table 0163 that lie on face and neck (code system v2-0163 of HL7
 * terminology 7.0.1). RE and LE are the ears and LN and RN the nostrils, whatever an eye clinic or a
 * note on lymph nodes means by them, so each code counts within its own part of the body only. LT
 * and RT, the left and right thigh there, are left out.
 */
export const siteSideWords: { readonly [code: string]: SideWithin } = {
  OD: { side: 'right', within: 'eyes' },
  OS: { side: 'left', within: 'eyes' },
  OU: { side: 'both', within: 'eyes' },
  RE: { side: 'right', within: 'ears' },
  LE: { side: 'left', within: 'ears' },
  BE: { side: 'both', within: 'ears' },
  RN: { side: 'right', within: 'nose' },
  LN: { side: 'left', within: 'nose' },
  BN: { side: 'both', within: 'nose' },
};
