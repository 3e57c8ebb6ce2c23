import { type Issue, issue } from '../../issues/issue.ts';
import { coverBy } from '../../kinds/registries/checks.ts';
import type { Exam } from '../../model/exam.ts';
import type { Key } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Lean, Protocol } from '../../terminology/types.ts';
import type { OneSide } from '../places/sides.ts';
import {
  type ExaminerCaution,
  type ExaminerCautionId,
  examinerCautions,
} from '../tables/cautions.ts';
import { type Marks, marker } from './marks.ts';
import { type CoverageMark, findMark } from './places.ts';
import { type Required, requiredBy } from './required.ts';

/**
 * `documented`: not examined or not testable, and the exam says so with a reason. `carried`: taken
 * over from an earlier exam and not looked at again, so not known today. `gap`: silence.
 */
export type CoverageStatus = 'covered' | 'documented' | 'carried' | 'gap';

/** One thing that the protocol asks for, and what the exam says to it. */
export interface CoverageItem {
  readonly kind: 'region' | 'method' | 'point' | 'test' | 'measure';
  /** Code of the region, point, test or measure. */
  readonly code: string;
  /** Code of the section of the exam. */
  readonly section: string;
  /** Left out where the item has no side. */
  readonly side?: OneSide;
  /** For `method`. */
  readonly method?: string;
  /** For `point`. */
  readonly modality?: string;
  readonly status: CoverageStatus;
  /** Examined in part, as the statement says, or only single signs are told of the place. */
  readonly partial?: true;
  /** For `region`: nothing is said of the region itself, and a test made there by a method asked for covers it. */
  readonly derived?: true;
  /** Keys of the statements that cover or document it. */
  readonly statements: readonly Key[];
}

/** `complete / required` is the least: what was examined as a whole. The others say what is short of it. */
export interface CoverageCount {
  /** Items that the protocol asks for. */
  readonly required: number;
  /** `complete`, `partial` and `derived`. */
  readonly covered: number;
  /** Examined as a whole. */
  readonly complete: number;
  /** Examined in part. */
  readonly partial: number;
  /** Regions covered by tests made there alone. */
  readonly derived: number;
  /** Taken over from an earlier exam and not looked at again. */
  readonly carried: number;
  /** Not examined, with the reason. */
  readonly documented: number;
  /** Items on which the exam is silent. */
  readonly gaps: number;
}

/** How much of a protocol an exam covers. */
export interface Coverage {
  /** The protocol that the exam was held to. */
  readonly protocol: { readonly id: string; readonly version: string; readonly display: string };
  /** Region and side: the count that stands for the exam as a whole. */
  readonly regions: CoverageCount;
  /** Region, side and method. */
  readonly methods: CoverageCount;
  /** Test point, side and modality. */
  readonly points: CoverageCount;
  /** Test and side. */
  readonly tests: CoverageCount;
  /** Measure and side. */
  readonly measures: CoverageCount;
  /** Region and side, by section of the exam, in the order of the protocol. */
  readonly sections: readonly { readonly section: string; readonly count: CoverageCount }[];
  /** Everything asked for, in the order of the protocol. */
  readonly items: readonly CoverageItem[];
  /** What the protocol leaves out: printed as "not part of this exam". */
  readonly outside: readonly string[];
  /** What the examiner is to mind at steps that the protocol asks for. */
  readonly cautions: readonly ExaminerCautionId[];
}

/**
 * Works out how much of a protocol an exam covers. A region is covered by a region state of normal,
 * abnormal or partial, by a test made there, or in part by a sign stated there. It is documented by
 * "not examined" with a reason, also where that is said of a region above it. Otherwise it is a
 * gap, and a gap is never normal.
 *
 * @param exam An exam that `parseExam` accepts.
 * @param protocol A row of the table `protocols`, or a protocol of the same form.
 * @param catalogue The tables that the codes of both come from.
 * @returns The coverage, and an issue for each code of the protocol that the catalogue does not
 *   hold.
 * @example
 * const full = builtInCatalogue.protocols.get('full');
 * if (full) console.log(coverExam(exam, full, builtInCatalogue).coverage.regions.gaps);
 */
export function coverExam(
  exam: Exam,
  protocol: Lean<Protocol>,
  catalogue: Catalogue,
): { readonly coverage: Coverage; readonly issues: readonly Issue[] } {
  const { required, unknown } = requiredBy(protocol, catalogue);
  const marks = marker(catalogue);
  for (const statement of exam.statements) coverBy(statement, marks);
  const items = required.map((one) => itemOf(one, marks));
  const count = (kind: CoverageItem['kind']): CoverageCount =>
    countOf(items.filter((one) => one.kind === kind));
  const coverage: Coverage = {
    protocol: { id: protocol.code, version: protocol.version, display: protocol.display },
    regions: count('region'),
    methods: count('method'),
    points: count('point'),
    tests: count('test'),
    measures: count('measure'),
    sections: bySection(items),
    items,
    outside: protocol.outside ?? [],
    cautions: cautionsFor(items),
  };
  const issues = unknown.map(({ table, path }) =>
    issue(
      'unknown-code',
      ['protocol', ...path],
      { reason: 'protocol', table },
      {
        rule: 'R01',
      },
    ),
  );
  return { coverage, issues };
}

function cautionsFor(items: readonly CoverageItem[]): readonly ExaminerCautionId[] {
  const rows = Object.entries(examinerCautions) as readonly (readonly [
    ExaminerCautionId,
    ExaminerCaution,
  ])[]; // entries of that literal
  return rows
    .filter(([, caution]) => items.some((item) => isStepOf(item, caution)))
    .map(([id]) => id);
}

function isStepOf(
  { kind, code, method }: CoverageItem,
  { regions = [], methods, tests = [] }: ExaminerCaution,
): boolean {
  const has = (list: readonly string[], one: string): boolean => list.includes(one);
  if (kind === 'test') return has(tests, code);
  if (!has(regions, code)) return false;
  if (methods === undefined) return kind === 'region';
  return kind === 'method' && method !== undefined && has(methods, method);
}

/**
 * Lists what the protocol asks for and the exam is silent on.
 *
 * @param coverage From `coverExam`, or from the result of `checkExam`.
 * @returns The items with the status `gap`, in the order of the protocol.
 * @example
 * const { coverage } = checkExam(exam);
 * const gaps = coverage === undefined ? [] : coverageGaps(coverage);
 */
export function coverageGaps(coverage: Coverage): readonly CoverageItem[] {
  return coverage.items.filter((one) => one.status === 'gap');
}

function itemOf({ item, own, documented }: Required, marks: Marks): CoverageItem {
  const covering: CoverageMark[] = [];
  for (const place of own) {
    const mark = findMark(marks.covered, place);
    if (mark !== undefined) covering.push(mark);
  }
  if (covering.length > 0) {
    const statements = keysOf(covering);
    const covered: CoverageItem = { ...item, status: 'covered', statements };
    if (covering.every((mark) => mark.partial)) return { ...covered, partial: true };
    const [itself] = own;
    const isTold = itself !== undefined && findMark(marks.covered, itself) !== undefined;
    return isTold ? covered : { ...covered, derived: true };
  }
  const said = documented.map((places) =>
    places.flatMap((place) => findMark(marks.documented, place) ?? []),
  );
  if (said.some((found) => found.length === 0)) {
    const carried = own.flatMap((place) => findMark(marks.carried, place) ?? []);
    return carried.length > 0
      ? { ...item, status: 'carried', statements: keysOf(carried) }
      : { ...item, status: 'gap', statements: [] };
  }
  return { ...item, status: 'documented', statements: keysOf(said.flat()) };
}

function keysOf(marks: readonly CoverageMark[]): readonly Key[] {
  const [only] = marks;
  if (marks.length === 1 && only !== undefined) return only.keys;
  return [...new Set(marks.flatMap((mark) => mark.keys))];
}

function countOf(items: readonly CoverageItem[]): CoverageCount {
  const having = (status: CoverageStatus): number =>
    items.filter((one) => one.status === status).length;
  return {
    required: items.length,
    covered: having('covered'),
    complete: items.filter(
      ({ status, partial, derived }) =>
        status === 'covered' && partial !== true && derived !== true,
    ).length,
    partial: items.filter((one) => one.partial === true).length,
    derived: items.filter((one) => one.derived === true).length,
    carried: having('carried'),
    documented: having('documented'),
    gaps: having('gap'),
  };
}

function bySection(items: readonly CoverageItem[]): Coverage['sections'] {
  const sections = new Map<string, CoverageItem[]>();
  for (const item of items) {
    if (item.kind !== 'region') continue;
    const known = sections.get(item.section);
    if (known === undefined) sections.set(item.section, [item]);
    else known.push(item);
  }
  return [...sections].map(([section, members]) => ({ section, count: countOf(members) }));
}
