import { sectionOf } from '../../kinds/registries/meanings.ts';
import { drawExamined, drawReferring } from '../../kinds/registries/samples.ts';
import { type ExamDraft, state } from '../../model/builder/draft.ts';
import { oppositesIn } from '../../model/rules/opposites.ts';
import type { Statement } from '../../model/statement.ts';
import { drawGroups } from './exceptions.ts';
import { maybe, type Sampling, type Stated } from './sampling.ts';

/**
 * The draft with statements of every kind. They stand in the order in which the body is told, as a
 * reader finds them in a report; only an edge exam has them in any order.
 */
export function withStatements(draft: ExamDraft, sampling: Sampling): ExamDraft {
  const { random, size } = sampling;
  const examined = withoutOpposites(
    drawExamined(sampling).reduce(keyed(sampling), draft),
    sampling,
  );
  const complete = drawReferring(sampling, examined.exam.statements).reduce(
    keyed(sampling),
    examined,
  );
  const grouped = drawGroups(sampling, complete.exam.statements).reduce(keyed(sampling), complete);
  const { statements } = grouped.exam;
  return {
    exam: {
      ...grouped.exam,
      statements: size === 'edge' ? random.shuffled(statements) : inBodyOrder(statements, sampling),
    },
  };
}

/** Regions are drawn one by one, so that a place and one that holds it can be drawn as opposites. */
function withoutOpposites({ exam }: ExamDraft, { catalogue }: Sampling): ExamDraft {
  const pairs = oppositesIn(exam.statements, catalogue);
  const dropped = new Set(pairs.map(([, key]) => key));
  const statements = exam.statements.filter(({ key }) => !dropped.has(key));
  return { exam: { ...exam, statements } };
}

/** Adds a statement; in an edge exam some keys are as odd as a key may be. */
function keyed(sampling: Sampling): (draft: ExamDraft, stated: Stated, at: number) => ExamDraft {
  return (draft, stated) => {
    if (sampling.size !== 'edge' || !maybe(sampling, 0.2)) return state(draft, stated);
    const key = `X${draft.exam.statements.length}~_:/-.`.padEnd(sampling.random.int(8, 200), 'z');
    return state(draft, { ...stated, key });
  };
}

function inBodyOrder(statements: readonly Statement[], { catalogue }: Sampling): Statement[] {
  const order = (statement: Statement): number =>
    catalogue.sections.get(sectionOf(statement, catalogue))?.order ?? Number.MAX_SAFE_INTEGER;
  return [...statements].sort((a, b) => order(a) - order(b));
}
