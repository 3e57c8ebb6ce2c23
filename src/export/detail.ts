import { sayingsOf } from '../kinds/registries/meanings.ts';
import type { Exam } from '../model/exam.ts';
import type { Statement } from '../model/statement.ts';
import type { Catalogue } from '../terminology/catalogue.ts';

/**
 * How much of an exam leaves. `everything`: the exam comes back equal. `notable`: what is abnormal,
 * measured, noted, not examined or left open, the negatives that the catalogue lists as pertinent,
 * and whatever one of these, the conclusion, a prompt or a judgement rests on; what is merely normal or absent is left out,
 * and how much that is stands in the record. `report`: the report alone, whose presented form should
 * then hold the rest; it does not come back as an exam.
 */
export type Detail = 'everything' | 'notable' | 'report';

export interface Detailed {
  readonly exam: Exam;
  /** How many statements are left out. */
  readonly leftOut: number;
}

export function withDetail(exam: Exam, detail: Detail, catalogue: Catalogue): Detailed {
  if (detail === 'everything') return { exam, leftOut: 0 };
  const kept = detail === 'report' ? new Set<string>() : notableKeys(exam, catalogue);
  const statements = exam.statements.filter(({ key }) => kept.has(key));
  return { exam: { ...exam, statements }, leftOut: exam.statements.length - statements.length };
}

function notableKeys(exam: Exam, catalogue: Catalogue): Set<string> {
  const pertinent = new Set(
    [...catalogue.negatives.values()].flatMap(({ entries }) =>
      entries.map(({ finding }) => finding),
    ),
  );
  const statements = new Map(exam.statements.map((one) => [one.key, one]));
  const kept = new Set<string>();
  const keep = (key: string): void => {
    const statement = statements.get(key);
    if (statement === undefined || kept.has(key)) return;
    kept.add(key);
    for (const text of textsIn({ ...statement, key: undefined })) keep(text);
  };
  const { conclusion, history, prompts, judgements } = exam;
  for (const text of textsIn([conclusion, history, prompts, judgements])) keep(text);
  for (const statement of exam.statements) {
    if (isNotable(statement, pertinent, catalogue)) keep(statement.key);
  }
  return kept;
}

function isNotable(
  statement: Statement,
  pertinent: ReadonlySet<string>,
  catalogue: Catalogue,
): boolean {
  const sayings = sayingsOf(statement, catalogue);
  if (sayings.length === 0 || statement.note !== undefined || statement.codings) return true;
  return sayings.some(
    ({ polarity, usual = false, of, completeness, except, unconfirmed }) =>
      polarity !== (usual ? 'states' : 'denies') ||
      completeness !== 'whole' ||
      except.length > 0 ||
      unconfirmed ||
      (of.table === 'findings' && pertinent.has(of.code)),
  );
}

/** Every text in plain data: keys of statements are among them, wherever they are named. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(textsIn);
}
