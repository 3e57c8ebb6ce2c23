import type { Identifier } from 'fhir/r4.js';
import { identifierSystem } from './code-systems.ts';

/** Identifier systems under which the clinic's own numbers travel. Each defaults to a name below `canonicalBase`. */
export interface IdentitySystems {
  /** Of the exam's id. */
  readonly exam?: string;
  /** Of statement keys, written as `exam|key`. */
  readonly statement?: string;
  /** Of lesion, node and lump identities that last over exams. */
  readonly tracking?: string;
}

/** The systems in use: those of the clinic, or else ours. */
export function identitySystems(
  base: string,
  given: IdentitySystems | undefined,
): Required<IdentitySystems> {
  return {
    exam: given?.exam ?? identifierSystem(base, 'exam'),
    statement: given?.statement ?? identifierSystem(base, 'statement'),
    tracking: given?.tracking ?? identifierSystem(base, 'tracking'),
  };
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
} as const;

/** Identifier of a part or statement of an exam: `exam|key`, `exam|group|skin`. */
export function partIdentifier(system: string, exam: string, name: string): Identifier {
  return { system, value: `${exam}|${name}` };
}
