import type { Identifier } from 'fhir/r4.js';
import { identifierSystem } from './code-systems.ts';

/** Identifier systems under which the clinic's own numbers travel. */
export interface IdentitySystems {
  /** Of the exam's id. */
  readonly exam?: string;
  /** Of statement keys, written as `exam|key`. */
  readonly statement?: string;
  /** Of lesion, node and lump identities that last over exams. */
  readonly tracking?: string;
}

/**
 * A URI of the clinic below which its three systems stand (`…/exam`, `…/statement`, `…/tracking`), or
 * each of them. One that is left out stands below `canonicalBase`.
 */
export type ClinicIdentity = string | IdentitySystems;

/** The systems in use: those of the clinic, or else ours. */
export function identitySystems(
  base: string,
  given: ClinicIdentity | undefined,
): Required<IdentitySystems> {
  const system = (name: keyof IdentitySystems): string => {
    if (typeof given === 'string') return `${given.replace(/\/$/, '')}/${name}`;
    return given?.[name] ?? identifierSystem(base, name);
  };
  return { exam: system('exam'), statement: system('statement'), tracking: system('tracking') };
}

/**
 * Names of the parts of an exam that are not statements. They hold a bar, which no key can, so that
 * they never meet the key of a statement.
 */
export const partName = {
  group: (section: string): string => `group|${section}`,
  item: (item: string, at: number): string => `${item}|${at}`,
  examiner: (key: string): string => `examiner|${key}`,
  instrument: (key: string): string => `instrument|${key}`,
  used: (key: string): string => `used|${key}`,
  prompt: (at: number): string => `prompt|${at}`,
  plan: (key: string): string => `plan|${key}`,
  bodyStructure: (place: string): string => `place|${place}`,
  version: (version: number): string => `version|${version}`,
  document: 'document',
  filed: 'filed|document',
} as const;

/** Identifier of a part or statement of an exam: `exam|key`, `exam|group|skin`. */
export function partIdentifier(system: string, exam: string, name: string): Identifier {
  return { system, value: `${exam}|${name}` };
}
