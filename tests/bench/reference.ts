import { startValidator } from '../reference/corpus.ts';
import { extensionsPack } from '../reference/definitions.ts';
import { processorTimeOf } from './timing.ts';

/**
 * Mean processor time in milliseconds of HL7's validator (R4) on a text: one process, warmed up by as
 * many rounds on the same text as are timed, with its extensions pack. Where the processor time of
 * another process is not told, the time of the clock. Java 17 and Maven are needed.
 */
export async function referenceMean(text: string, rounds: number): Promise<number> {
  const load = (await extensionsPack()).filter(({ version }) => version === 'R4');
  const validator = await startValidator({ load });
  const now = () => processorTimeOf(validator.pid) ?? performance.now();
  const validateAll = async (): Promise<void> => {
    for (let round = 0; round < rounds; round++) {
      const { valid } = await validator.validate({ id: 'bench', version: 'R4', text });
      if (!valid) throw new Error('the bundle of the benchmark is not valid');
    }
  };
  try {
    await validateAll();
    const start = now();
    await validateAll();
    return (now() - start) / rounds;
  } finally {
    await validator.stop();
  }
}
