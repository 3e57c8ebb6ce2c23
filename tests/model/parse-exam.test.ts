import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pathFromPointer, pathPointer } from '../../src/issues/path.ts';
import { parseExam, parseExamOrThrow } from '../../src/model/parse-exam.ts';

interface Case {
  readonly name: string;
  /** Values to put, by JSON Pointer. */
  readonly set?: Readonly<Record<string, unknown>>;
  readonly remove?: readonly string[];
  readonly repeat?: { readonly path: string; readonly text: string; readonly times: number };
  readonly issues: readonly {
    readonly code: string;
    readonly path: string;
    readonly severity?: string;
    readonly expected?: string;
  }[];
}

const folder = join(import.meta.dirname, '../cases/exam');
const read = (file: string): string => readFileSync(join(folder, file), 'utf8');
const base = read('base.json');

/** The base exam with the changes of a case. */
function changed({ set = {}, remove = [], repeat }: Case): unknown {
  const root = { '': JSON.parse(base) };
  const puts = Object.entries(set);
  if (repeat !== undefined) puts.push([repeat.path, repeat.text.repeat(repeat.times)]);
  for (const [pointer, value] of puts) {
    const [holder, name] = placeOf(root, pointer);
    // By definition, so that __proto__ is a property like any other.
    Object.defineProperty(holder, name, {
      value,
      enumerable: true,
      writable: true,
      configurable: true,
    });
  }
  for (const pointer of remove) {
    const [holder, name] = placeOf(root, pointer);
    expect(Object.hasOwn(holder, name)).toBe(true);
    Reflect.deleteProperty(holder, name);
  }
  return root[''];
}

function placeOf(root: object, pointer: string): [object, string] {
  const steps = ['', ...pathFromPointer(pointer)].map(String);
  const name = steps.pop() ?? '';
  let holder: unknown = root;
  for (const step of steps) holder = Reflect.get(Object(holder), step);
  return [Object(holder), name];
}

it('the base of the cases has no issue', () => {
  const exam = JSON.parse(base);
  const { value, issues } = parseExam(exam);
  expect(issues).toEqual([]);
  expect(value).toBe(exam);
});

const files = readdirSync(folder).filter((file) => file !== 'base.json');

describe.each(files)('%s', (file) => {
  const { cases }: { cases: readonly Case[] } = JSON.parse(read(file));

  it.each(cases)('$name', (one) => {
    const { value, issues } = parseExam(changed(one));
    const found = issues.map((issue, at) => ({
      code: issue.code,
      path: pathPointer(issue.path),
      ...(issue.severity !== 'error' && { severity: issue.severity }),
      // Not every case says what was expected.
      ...(one.issues[at]?.expected !== undefined && { expected: issue.expected }),
    }));
    expect(found).toEqual(one.issues);
    const failed = one.issues.some(({ severity }) => severity === undefined);
    expect(value === undefined).toBe(failed);
    expect(issues.every(({ received }) => received === undefined)).toBe(true);
  });
});

describe('parseExam', () => {
  it('returns what it was given and changes nothing', () => {
    const text = JSON.stringify(JSON.parse(base));
    const exam = JSON.parse(base);
    expect(parseExam(exam).value).toBe(exam);
    expect(JSON.stringify(exam)).toBe(text);
  });

  it('shows the value only where asked', () => {
    const exam = { ...JSON.parse(base), id: 'E 1' };
    expect(parseExam(exam).issues[0]?.received).toBeUndefined();
    expect(parseExam(exam, { includeValues: true }).issues[0]?.received).toBe('E 1');
    const code = JSON.parse(base);
    code.statements[0].finding = 'nevus';
    expect(parseExam(code, { includeValues: true }).issues[0]?.received).toBe('"nevus"');
  });

  it('a circle is not an exam', () => {
    const exam = JSON.parse(base);
    exam.subject.name = exam;
    expect(parseExam(exam).issues.map(({ code }) => code)).toContain('too-deep');
  });

  it.each([undefined, () => 1, Symbol('x'), 1n, new Date(), new Map()])(
    'never throws for %s',
    (value) => {
      expect(parseExam(value).value).toBeUndefined();
    },
  );

  it('the OrThrow form throws with the issues', () => {
    expect(() => parseExamOrThrow({})).toThrow(/^cannot read the exam: \d+ error\(s\), first: /);
    expect(parseExamOrThrow(JSON.parse(base)).id).toBe('E-1');
  });
});
