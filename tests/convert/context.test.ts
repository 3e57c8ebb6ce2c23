import { describe, expect, it } from 'vitest';
import { runContext } from './context.ts';
import {
  writeCda,
  writeCsv,
  writeFixed,
  writeHl7v2,
  writeSheet,
  writeXml,
} from './context-writers.ts';

/** A sample; tests/slow/convert/context.test.ts runs 100,000 of each. */
const RUNS = 40;

/**
 * Siblings in any order, blank, repeated and inside each other, and one field lost: what is coded is
 * what the export says of that very value. A value without its side or unit may become text; it never
 * takes those of another.
 */
describe('context, not names', () => {
  it.each([
    ['csv', writeCsv],
    ['xlsx', writeSheet],
    ['fixed', writeFixed],
    ['hl7v2', writeHl7v2],
    ['xml', writeXml],
    ['cda', writeCda],
  ] as const)('no value of %s moves to another side, unit, note or person', (_, write) => {
    const coded = runContext(write, RUNS);
    // Refusing everything would pass as well.
    expect(coded.statements).toBeGreaterThan(RUNS / 2);
  });
});
