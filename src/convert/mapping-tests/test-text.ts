import { printable } from '../exams/note.ts';
import type { MappingTestRun, TestFailure } from './test-mapping.ts';

/**
 * Writes the results of the tests of a mapping as text for a person.
 *
 * @param run From `testMapping`.
 * @returns A line for each test, and below it each failure.
 * @example
 * console.log(mappingTestText(testMapping(mapping)));
 */
export function mappingTestText({ results }: MappingTestRun): string {
  const lines = results.flatMap(({ title, failures }) => [
    `${failures.length === 0 ? 'holds' : 'fails'}  ${printable(title)}`,
    ...failures.map((one) => `  ${failureText(one)}`),
  ]);
  const failed = results.filter(({ failures }) => failures.length > 0).length;
  return `${[...lines, `${results.length} tests, ${failed} failed`].join('\n')}\n`;
}

function failureText(one: TestFailure): string {
  switch (one.failure) {
    case 'missing-statement':
      return `not there: ${JSON.stringify(one.expected)}`;
    case 'further-statement':
      return `not expected: ${JSON.stringify(one.found)}`;
    case 'forbidden-statement':
      return `must not be there: ${JSON.stringify(one.found)}`;
    case 'other-exam':
      return `the exam has ${JSON.stringify(one.found)} and not ${JSON.stringify(one.expected)}`;
    case 'exams':
      return `${one.found} exams, and not ${one.expected}`;
    case 'quarantine':
      return `set aside for ${listed(one.found)}, and not for ${listed(one.expected)}`;
  }
}

function listed(codes: readonly string[]): string {
  return codes.length === 0 ? 'nothing' : codes.join(', ');
}
