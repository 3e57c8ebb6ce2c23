import type { MethodCode, RegionCode, TestPointCode } from '../../terminology/tables/code-types.ts';
import type { Evidence } from '../../terminology/types.ts';

/**
 * Steps of an examination that can hurt, and what to mind. Shown beside every protocol that asks for
 * one of them; the German stands in `words/german.ts`.
 */
export interface ExaminerCaution {
  readonly text: string;
  /** Any of these steps. */
  readonly regions?: readonly RegionCode[];
  /** Where given, these methods at those regions alone. */
  readonly methods?: readonly MethodCode[];
  readonly tests?: readonly TestPointCode[];
  readonly source: string;
  readonly evidence: Evidence;
}

export const examinerCautions = {
  'carotid-one-side': {
    text: 'Carotid arteries: feel one side at a time, gently and low in the neck; never both together.',
    regions: ['carotid'],
    methods: ['palpation'],
    source: 'Textbook of Physical Diagnosis, carotid pulse (mitchmedical.us); Bates, the carotid pulse',
    evidence: 'read',
  },
  'neck-after-injury': {
    text: 'Neck movement: not after an injury until the neck is cleared by the local rule.',
    tests: ['neck-flexion', 'neck-extension', 'neck-rotation', 'neck-side-bend'],
    regions: ['neck-motion'],
    methods: ['function-test', 'motor-test'],
    source: 'Canadian C-spine rule as in NICE guidance (movement is safe to test at low risk alone)',
    evidence: 'read',
  },
  'perforated-drum': {
    text: 'Ear: no pneumatic otoscopy and no irrigation where the drum is or may be perforated.',
    regions: ['tm'],
    methods: ['otoscopy', 'pneumatic-otoscopy'],
    source: 'MSD Manual, traumatic perforation of the tympanic membrane, 2024',
    evidence: 'read',
  },
  'injured-globe': {
    text: 'Eye: no pressure on the globe and no forced opening of the lids after an injury, or where touch hurts.',
    regions: ['globe', 'lid-upper'],
    methods: ['palpation', 'eversion'],
    source: 'Medscape 798223, ruptured globe; evaluation of suspected globe rupture, PMC3862938',
    evidence: 'read',
  },
  'airway-first': {
    text: 'Throat: with stridor, drooling or laboured breath keep the person sitting; no instrument in the mouth, nothing to swallow.',
    regions: ['swallow'],
    tests: ['cn9-10', 'cn12', 'swallow-water'],
    source: 'NHS page on epiglottitis (no examination of the throat, not lying down)',
    evidence: 'second-hand',
  },
} as const satisfies Record<string, ExaminerCaution>;

export type ExaminerCautionId = keyof typeof examinerCautions;
