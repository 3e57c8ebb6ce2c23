import fc, { type GeneratorValue } from 'fast-check';
import { expect } from 'vitest';
import { type ConvertResult, convertText } from '../../src/convert/exams/convert-text.ts';
import type { ItemRecords, Mapping } from '../../src/convert/mapping/mapping.ts';
import type { Plan } from '../../src/convert/mapping/plan.ts';
import type { Source } from '../../src/convert/mapping/source.ts';
import type { Target } from '../../src/convert/mapping/target.ts';
import { prepareMapping } from '../../src/convert/prepare/prepare-mapping.ts';
import { readerFor } from '../../src/convert/reader-for.ts';
import { issueText } from '../../src/issues/issue.ts';

/** What one value of a generated export is about. The value itself is unlike any other. */
export interface Truth {
  readonly value: string;
  readonly sides: readonly ('R' | 'L')[];
  readonly unit: 'mm' | 'cm';
  readonly note: string;
}

export interface Person {
  /** The clinic's number, and one that must never be taken for it. */
  readonly mr: string;
  readonly ss: string;
}

/** An export in which one field was left out, or none, and what is true of it. */
export interface ContextCase {
  readonly mapping: Mapping;
  readonly text: string;
  readonly truths: readonly Truth[];
  readonly person: Person;
}

export type Writer = (draw: Draw) => ContextCase;

/** Draws of one case. Fields are written through `field`: exactly one of them may be lost. */
export interface Draw {
  readonly below: (count: number) => number;
  readonly pick: <Item>(items: readonly Item[]) => Item;
  readonly shuffled: <Item>(items: readonly Item[]) => Item[];
  /** The text, or the blank one where this is the field that is lost. */
  readonly field: (text: string, blank?: string) => string;
  readonly truths: readonly Truth[];
  readonly person: Person;
}

/** Most fields of a generated case. */
const FIELDS = 60;

export function drawOf(g: GeneratorValue): Draw {
  const below = (count: number): number => g(fc.nat, { max: count - 1 });
  const pick = <Item>(items: readonly Item[]): Item => {
    const item = items[below(items.length)];
    if (item === undefined) throw new Error('nothing to pick from');
    return item;
  };
  const shuffled = <Item>(items: readonly Item[]): Item[] => {
    const left = [...items];
    const result: Item[] = [];
    while (left.length > 0) result.push(...left.splice(below(left.length), 1));
    return result;
  };
  const lost = below(2) === 0 ? -1 : below(FIELDS);
  let written = -1;
  const truths = Array.from(
    { length: 1 + below(4) },
    (_, at): Truth => ({
      value: `${at + 1}.${below(9)}${at}`,
      sides: pick([['R'], ['L'], ['R'], ['L'], ['R', 'L'], ['L', 'R']] as const),
      unit: pick(['mm', 'cm'] as const),
      note: `note-${at}`,
    }),
  );
  return {
    below,
    pick,
    shuffled,
    field: (text, blank = '') => {
      written += 1;
      return written === lost ? blank : text;
    },
    truths,
    person: { mr: `MR${below(9)}`, ss: `SS${below(9)}` },
  };
}

/** The measure of all cases: paired, so that a value without a side cannot be coded. */
export const target = { kind: 'measurement', measure: 'mrd1' } as const satisfies Target;

export function mappingOf(
  source: Source,
  parts: Pick<Mapping, 'fields' | 'items'> & {
    readonly id: string;
    readonly person: string;
    readonly type: string;
  },
): Mapping {
  return {
    format: 'face-neck-mapping/1',
    source,
    exam: {
      id: { prefix: 'c', from: [parts.id] },
      status: { value: 'final' },
      subject: {
        identifiers: [
          {
            from: parts.person,
            system: 'https://clinic.example/mrn',
            where: { field: parts.type, is: 'MR' },
          },
        ],
        reference: { from: parts.id, prefix: 'Patient/' },
      },
      performed: { start: parts.id },
      recorded: { value: '2024-02-05T10:00:00Z' },
      examiner: { fixed: { name: 'Harbour clinic' } },
      protocol: { id: 'full', version: '1.0.0' },
    },
    dates: { formats: ['YYYYMMDD'] },
    sides: { R: 'right', L: 'left', '24028007': 'right', '7771000': 'left' },
    units: { mm: 'mm', cm: 'cm' },
    ...(parts.fields && { fields: parts.fields }),
    ...(parts.items && { items: parts.items }),
  };
}

export function itemsOf(items: Omit<ItemRecords, 'map'>): readonly ItemRecords[] {
  return [{ ...items, map: { MRD1: target } }];
}

const plans = new Map<string, Plan>();

function planOf(mapping: Mapping): Plan {
  const key = JSON.stringify(mapping);
  const known = plans.get(key);
  if (known !== undefined) return known;
  const { value, issues } = prepareMapping(mapping);
  if (value === undefined) throw new Error(issues.map(issueText).join('\n'));
  plans.set(key, value);
  return value;
}

/** Values that were coded, over all cases that were checked. */
export interface Coded {
  statements: number;
}

/** Whatever was coded is said by the export of this very value and person. */
export function checkContext({ mapping, text, truths, person }: ContextCase, coded: Coded): void {
  const plan = planOf(mapping);
  const result: ConvertResult = convertText(text, readerFor(mapping.source), plan);
  expect(result.exams.length + result.quarantine.length).toBe(1);
  for (const { exam } of result.exams) {
    for (const { value } of exam.subject.identifiers ?? []) expect(value).toBe(person.mr);
    for (const statement of exam.statements) {
      if (statement.kind !== 'measurement') continue;
      const truth = truths.find(({ value }) => value === statement.value);
      if (truth === undefined) throw new Error(`a value that was not written: ${text}`);
      const side = statement.side === 'right' ? 'R' : 'L';
      expect(truth.sides, text).toContain(side);
      expect(statement.unit, text).toBe(truth.unit);
      const others = truths.filter((other) => other !== truth).map(({ note }) => note);
      expect(
        others.filter((note) => statement.note?.includes(note)),
        text,
      ).toEqual([]);
      coded.statements += 1;
    }
  }
}

export function runContext(write: Writer, runs: number): Coded {
  const coded: Coded = { statements: 0 };
  fc.assert(
    fc.property(fc.gen(), (g) => checkContext(write(drawOf(g)), coded)),
    { numRuns: runs },
  );
  return coded;
}
