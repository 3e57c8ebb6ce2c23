import type { Statement } from '../model/statement.ts';

/** Our profiles of R4 and R5, by the last part of their canonical URL; their sources stand in profiles/fsh. */
export const profileNames = [
  'face-neck-observation',
  'face-neck-finding',
  'face-neck-region-state',
  'face-neck-sensation',
  'face-neck-sensation-comparison',
  'face-neck-test',
  'face-neck-measurement',
  'face-neck-symptom',
  'face-neck-region-group',
  'face-neck-report',
  'face-neck-composition',
  'face-neck-document',
] as const;

export type ProfileName = (typeof profileNames)[number];

export function profileUrl(base: string, name: ProfileName): string {
  return `${base}/StructureDefinition/${name}`;
}

/** The profile of the observation of a statement; the general one where it has none of its own. */
export const statementProfile: Readonly<Record<Statement['kind'], ProfileName>> = {
  finding: 'face-neck-finding',
  'region-state': 'face-neck-region-state',
  sensation: 'face-neck-sensation',
  'sensation-comparison': 'face-neck-sensation-comparison',
  movement: 'face-neck-test',
  'function-test': 'face-neck-test',
  measurement: 'face-neck-measurement',
  'scale-score': 'face-neck-observation',
  symptom: 'face-neck-symptom',
  note: 'face-neck-observation',
  image: 'face-neck-observation',
};
