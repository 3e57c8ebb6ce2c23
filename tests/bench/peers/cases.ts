import { toJson } from '../../../src/index.ts';
import { keptBases } from '../../reference/bases.ts';
import { mutants } from '../../reference/mutants.ts';
import { keptVerdicts } from '../../reference/verdicts.ts';
import { bundleOf } from '../bundles.ts';

/** A bundle of R4 on which a validator has to say yes or no. */
export interface PeerCase {
  readonly id: string;
  readonly text: string;
}

export interface PeerCases {
  /** One fault each, which HL7's validator refuses. */
  readonly faults: readonly PeerCase[];
  /** The bundles that they were made from and seeded ones, which it accepts. */
  readonly sound: readonly PeerCase[];
}

const COUNT = 32;

/**
 * 32 single faults and 32 sound bundles, drawn by rule and not by what any validator finds: of the
 * kinds of fault of which HL7's validator refused every kept mutant, each so many-th in the order of
 * their names, and of that kind the first mutant. Sound are the bases of the mutants and, to make up
 * the number, seeded exams of some 20 to 130 entries, which the reference suite holds to HL7's validator.
 */
export function peerCases(): PeerCases {
  const verdicts = keptVerdicts().R4;
  const first = new Map<string, PeerCase>();
  for (const { fault, text } of mutants(keptBases(), 'R4')) {
    const refused = verdicts.get(fault)?.every(({ valid }) => !valid) ?? false;
    if (refused && !first.has(fault)) first.set(fault, { id: fault, text });
  }
  const kinds = [...first.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const step = kinds.length / COUNT;
  const faults = Array.from({ length: COUNT }, (_, at) => kinds[Math.floor(at * step)]);
  const bases = keptBases()
    .filter(({ version }) => version === 'R4')
    .map(({ name, text }) => ({ id: name, text }));
  const seeded = Array.from({ length: Math.max(0, COUNT - bases.length) }, (_, at) => {
    const entries = 20 + at * 5;
    return { id: `seeded-${entries}`, text: toJson(bundleOf(entries)) };
  });
  return {
    faults: faults.filter((one) => one !== undefined),
    sound: [...bases, ...seeded].slice(0, COUNT),
  };
}
