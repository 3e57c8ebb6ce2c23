import { type Path, pathText } from '../../issues/path.ts';
import type { Exam } from '../../model/exam.ts';

/** Where two exams differ, statements compared by their keys: `statements[cheek-1].side`. */
export function examDifferences(wanted: Exam, given: Exam): string[] {
  const { statements: wantedOnes, ...wantedRest } = wanted;
  const { statements: givenOnes, ...givenRest } = given;
  const byKey = new Map(givenOnes.map((statement) => [statement.key, statement]));
  const expected = new Set(wantedOnes.map(({ key }) => key));
  return [
    ...differences(wantedRest, givenRest, []),
    ...wantedOnes.flatMap((statement) =>
      differences(statement, byKey.get(statement.key), [`statements[${statement.key}]`]),
    ),
    ...givenOnes
      .filter(({ key }) => !expected.has(key))
      .map(({ key }) => `statements[${key}]  was not expected`),
  ];
}

function differences(wanted: unknown, given: unknown, path: Path): string[] {
  if (wanted === given) return [];
  const where = pathText(path);
  if (given === undefined) return [`${where}  is missing`];
  if (wanted === undefined) return [`${where}  was not expected`];
  if (!isHolder(wanted) || !isHolder(given) || Array.isArray(wanted) !== Array.isArray(given)) {
    return [`${where}  differs`];
  }
  const names = new Set([...Object.keys(wanted), ...Object.keys(given)]);
  return [...names].flatMap((name) => {
    const step = Array.isArray(wanted) ? Number(name) : name;
    return differences(own(wanted, name), own(given, name), [...path, step]);
  });
}

function isHolder(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

function own(holder: object, name: string): unknown {
  return Object.getOwnPropertyDescriptor(holder, name)?.value;
}
