import { sayingsOf } from '../kinds/registries/meanings.ts';
import type { Exam } from '../model/exam.ts';
import { personName } from '../model/people.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';

/** What few patients have in common: a sign or complaint that is there, with gender and year. */
export interface SmallCell {
  readonly table: string;
  readonly code: string;
  readonly gender: string;
  /** Of the exam, four digits. */
  readonly year: string;
  /** Fewer than the least that was asked for. */
  readonly patients: number;
}

/** Counts patients by what could tell them apart, exam by exam. */
export interface CellCounter {
  readonly add: (exam: Exam) => void;
  /** Cells that are too small so far, the smallest first. */
  readonly small: () => readonly SmallCell[];
}

/**
 * Counts, over any number of exams, how many patients have each sign or complaint in each year and of
 * each gender. A cell with few patients can tell who they are. It holds `least` patients a cell at most.
 *
 * @param options `least`: fewer patients are too few; default 5 (common practice, no source; local rules
 *   may ask for more). `catalogue`: default the built-in one.
 * @returns The counter. It takes exams as `deidentify` gives them.
 * @example
 * const cells = createCellCounter({ least: 10 });
 * cells.add(exam);
 * for (const { code, patients } of cells.small()) console.log(code, patients);
 */
export function createCellCounter(
  options: { readonly least?: number; readonly catalogue?: Catalogue } = {},
): CellCounter {
  const { least = 5, catalogue = builtInCatalogue } = options;
  const cells = new Map<
    string,
    { readonly cell: Omit<SmallCell, 'patients'>; readonly of: Set<string> }
  >();
  return {
    add: (exam) => {
      const patient = personName(exam.subject) ?? exam.id;
      for (const cell of cellsOf(exam, catalogue)) {
        const name = JSON.stringify(Object.values(cell));
        const known = cells.get(name) ?? { cell, of: new Set<string>() };
        if (known.of.size < least) known.of.add(patient);
        cells.set(name, known);
      }
    },
    small: () =>
      [...cells.values()]
        .filter(({ of }) => of.size < least)
        .map(({ cell, of }) => ({ ...cell, patients: of.size }))
        .sort((a, b) => a.patients - b.patients),
  };
}

function cellsOf(
  { subject, performed, statements }: Exam,
  catalogue: Catalogue,
): Omit<SmallCell, 'patients'>[] {
  const [gender, year] = [subject.gender ?? '', performed.start.slice(0, 4)];
  return statements
    .flatMap((statement) => sayingsOf(statement, catalogue))
    .filter(({ polarity, usual }) => polarity === 'states' && usual !== true)
    .map(({ of: { table, code } }) => ({ table, code, gender, year }));
}
