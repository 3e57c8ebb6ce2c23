import { comparisonOf } from '../../kinds/registries/checks.ts';
import { subjectOf } from '../../kinds/registries/meanings.ts';
import type { Exam } from '../../model/exam.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { ExamIndex } from '../exam-index.ts';
import { listIn } from '../exam-index.ts';
import { type OneSide, oneSides } from '../places/sides.ts';

/** One thing that an exam says, under a name that is the same in every exam. */
export interface Comparable {
  readonly identity: string;
  /** As the identity, and without the conditions of a measurement. */
  readonly loose: string;
  readonly statement: Statement;
  readonly code: string;
  readonly side: Side | undefined;
  readonly modality?: string;
  readonly tracking?: Key;
}

/** What an exam says, by identity, in the order of the exam. Notes and pictures are left out. */
export function comparablesOf(exam: Exam, index: ExamIndex): ReadonlyMap<string, Comparable[]> {
  const found = new Map<string, Comparable[]>();
  for (const statement of exam.statements) {
    for (const comparable of comparables(statement, index)) {
      listIn(found, comparable.identity).push(comparable);
    }
  }
  return found;
}

function comparables(statement: Statement, index: ExamIndex): readonly Comparable[] {
  const compared = comparisonOf(statement);
  if (compared === undefined) return [];
  const { code } = subjectOf(statement);
  const tracking = compared.tracking?.(statement, index);
  const variants = compared.variants?.(statement) ?? [{}];
  const side = 'side' in statement ? statement.side : undefined;
  // A lesion keeps its identity when it spreads over the middle or is placed more exactly.
  const sides: readonly (Side | undefined)[] =
    tracking === undefined && side === 'both' ? oneSides : [side];
  return sides.flatMap((one) =>
    variants.map((variant) => {
      const place = tracking === undefined ? placeName(statement, one) : `tracked ${tracking}`;
      const loose = [statement.kind, code, place, variant.modality ?? ''].join('|');
      return {
        identity: variant.conditions === undefined ? loose : `${loose}|${variant.conditions}`,
        loose,
        statement,
        code,
        side: one,
        ...(variant.modality !== undefined && { modality: variant.modality }),
        ...(tracking !== undefined && { tracking }),
      };
    }),
  );
}

function placeName(statement: Statement, side: Side | OneSide | undefined): string {
  const region = 'region' in statement ? (statement.region ?? '') : '';
  return `${region} ${side ?? ''}`;
}
