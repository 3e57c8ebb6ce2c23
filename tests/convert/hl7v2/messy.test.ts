import { describe, expect, it } from 'vitest';
import { hl7v2Reader } from '../../../src/convert/hl7v2/reader.ts';
import { sampled } from '../../sampled.ts';
import { checkMessy, checkMutated, mutated, syntaxOf } from '../messy.ts';
import { seeded } from '../random.ts';
import { messyMessages } from './messy-messages.ts';
import { hl7v2Suite } from './suite.ts';

const syntax = syntaxOf(hl7v2Suite.mapping, hl7v2Reader, true);

const MANY = sampled(40, 200);

describe('messy HL7 v2', () => {
  it.each([1, 2, 3])('loses nothing of many messages (seed %i)', (seed) => {
    const result = checkMessy(messyMessages(seed, MANY), syntax);
    // The mess must not be so bad that nothing is left to check, nor so tidy that nothing is wrong.
    expect(result.exams.length).toBeGreaterThan(100 * (MANY / 200));
    expect(result.quarantine.length).toBeGreaterThan(sampled(1, 10));
  });

  it('survives damage anywhere', () => {
    const random = seeded(4);
    for (let round = 0; round < sampled(20, 150); round++) {
      const { text } = messyMessages(round, 4);
      checkMutated(mutated(text, '|^~\\&\r\n\x0b\x1c"MSHOBX', random), syntax);
    }
  });
});
