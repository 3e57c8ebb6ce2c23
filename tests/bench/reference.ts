import { startValidator } from '../reference/corpus.ts';
import { extensionsPack } from '../reference/definitions.ts';
import { middle } from './timing.ts';

/**
 * Median time in milliseconds of HL7's validator (R4) on a text: one process, warmed up on the same
 * text, with its extensions pack. Java 17 and Maven are needed.
 */
export async function referenceMedian(text: string, rounds: number): Promise<number> {
  const load = (await extensionsPack()).filter(({ version }) => version === 'R4');
  const validator = await startValidator({ load });
  try {
    const times: number[] = [];
    for (let round = 0; round < rounds * 2; round++) {
      const start = process.hrtime.bigint();
      const { valid } = await validator.validate({ id: 'bench', version: 'R4', text });
      if (!valid) throw new Error('the bundle of the benchmark is not valid');
      if (round >= rounds) times.push(Number(process.hrtime.bigint() - start) / 1e6);
    }
    return middle(times);
  } finally {
    await validator.stop();
  }
}
