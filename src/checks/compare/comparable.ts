import type { Exam } from '../../model/exam.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { ExamIndex } from '../exam-index.ts';
import { codeOf, listIn } from '../exam-index.ts';
import { type OneSide, oneSides } from '../sides.ts';

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
  const code = codeOf(statement);
  if (statement.kind === 'note' || statement.kind === 'image' || code === undefined) return [];
  const tracking = trackingOf(statement, index);
  const side = 'side' in statement ? statement.side : undefined;
  // A lesion keeps its identity when it spreads over the middle or is placed more exactly.
  const sides: readonly (Side | undefined)[] =
    tracking === undefined && side === 'both' ? oneSides : [side];
  return sides.flatMap((one) =>
    variants(statement).map((variant) => {
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

interface Variant {
  readonly modality?: string;
  readonly conditions?: string;
}

/** A sensation is compared for each modality, a measurement for the conditions it was taken under. */
function variants(statement: Statement): readonly Variant[] {
  if (statement.kind === 'sensation')
    return statement.results.map(({ modality }) => ({ modality }));
  if (statement.kind === 'sensation-comparison') return [{ modality: statement.modality }];
  if (statement.kind === 'measurement') {
    return [{ conditions: [...(statement.conditions ?? [])].sort().join(' ') }];
  }
  return [{}];
}

function placeName(statement: Statement, side: Side | OneSide | undefined): string {
  const region = 'region' in statement ? (statement.region ?? '') : '';
  return `${region} ${side ?? ''}`;
}

/** Key of the followed lesion: of the finding itself, or of the one that was measured or scored. */
function trackingOf(statement: Statement, index: ExamIndex): Key | undefined {
  if (statement.kind === 'finding') return statement.tracking;
  if (statement.kind !== 'measurement' && statement.kind !== 'scale-score') return undefined;
  const about = statement.about === undefined ? undefined : index.byKey.get(statement.about);
  return about?.kind === 'finding' ? about.tracking : undefined;
}
