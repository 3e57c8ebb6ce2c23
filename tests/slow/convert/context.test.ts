import { describe, expect, it } from 'vitest';
import { runContext } from '../../convert/context.ts';
import {
  writeCda,
  writeCsv,
  writeFixed,
  writeHl7v2,
  writeSheet,
  writeXml,
} from '../../convert/context-writers.ts';
import { writeJson } from '../../convert/json/context-writer.ts';

const RUNS = 100_000;
/** For all runs of one syntax, on a machine that does other things too. */
const TIMEOUT_MS = 3_600_000;

describe('context, not names: 100,000 inputs of each syntax', () => {
  it.each([
    ['csv', writeCsv],
    ['xlsx', writeSheet],
    ['fixed', writeFixed],
    ['hl7v2', writeHl7v2],
    ['xml', writeXml],
    ['cda', writeCda],
    ['json', writeJson],
  ] as const)(
    'no value of %s moves to another side, unit, note or person',
    (name, write) => {
      const { statements } = runContext(write, RUNS);
      console.log(`${name}: ${RUNS} inputs, ${statements} values coded, 0 moved`);
      expect(statements).toBeGreaterThan(RUNS / 2);
    },
    TIMEOUT_MS,
  );
});
