import { sectionOf } from '../../kinds/meanings.ts';
import { type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Statement } from '../../model/statement.ts';
import type { Lean, Region } from '../../terminology/types.ts';
import { isMeasured, measurementStatements, scaleStatement } from './measures.ts';
import { regionStatements, type Stated } from './regions.ts';
import { maybe, type SampleSize, type Sampling } from './sampling.ts';
import { testStatements } from './tests.ts';
import { imageStatement, noteStatement, symptomStatement } from './told.ts';

/** How many rows of each table an exam of this size speaks of. */
const amounts: Readonly<
  Record<
    SampleSize,
    Readonly<
      Record<'regions' | 'tests' | 'measures' | 'scales' | 'symptoms' | 'notes' | 'images', number>
    >
  >
> = {
  small: { regions: 3, tests: 2, measures: 1, scales: 1, symptoms: 1, notes: 1, images: 0 },
  usual: { regions: 24, tests: 12, measures: 6, scales: 2, symptoms: 10, notes: 3, images: 1 },
  full: {
    regions: 1000,
    tests: 1000,
    measures: 1000,
    scales: 1000,
    symptoms: 1000,
    notes: 12,
    images: 4,
  },
  edge: { regions: 5, tests: 5, measures: 4, scales: 3, symptoms: 4, notes: 3, images: 3 },
};

/**
 * The draft with statements of every kind. They stand in the order in which the body is told, as a
 * reader finds them in a report; only an edge exam has them in any order.
 */
export function withStatements(draft: ExamDraft, sampling: Sampling): ExamDraft {
  const { random, size } = sampling;
  const examined = examinedStatements(sampling).reduce(keyed(sampling), draft);
  const complete = furtherStatements(sampling, examined.exam.statements).reduce(
    keyed(sampling),
    examined,
  );
  const { statements } = complete.exam;
  return {
    exam: {
      ...complete.exam,
      statements: size === 'edge' ? random.shuffled(statements) : inBodyOrder(statements, sampling),
    },
  };
}

function examinedStatements(sampling: Sampling): Stated[] {
  const { random, catalogue, size } = sampling;
  const amount = amounts[size];
  const regions = sitedRegions(sampling);
  const measures = random.some(
    [...catalogue.measures.values()].filter(isMeasured),
    amount.measures,
  );
  return [
    ...random.some(regions, amount.regions).flatMap((region) => regionStatements(sampling, region)),
    ...random
      .some([...catalogue.testPoints.values()], amount.tests)
      .flatMap((point) => testStatements(sampling, point)),
    ...measures.flatMap((measure) => {
      const own = catalogue.regions.get(measure.region);
      const region = measure.region === 'skin' || own === undefined ? random.pick(regions) : own;
      return measurementStatements(sampling, measure, region);
    }),
    ...random
      .some([...catalogue.symptoms.values()], amount.symptoms)
      .map((symptom) => symptomStatement(sampling, symptom)),
  ];
}

/** Statements that can be about others: scores, notes, pictures, and the measures of a lesion. */
function furtherStatements(sampling: Sampling, statements: readonly Statement[]): Stated[] {
  const { random, catalogue, size } = sampling;
  const amount = amounts[size];
  const regions = sitedRegions(sampling);
  const present = statements.filter(
    (statement) => statement.kind === 'finding' && statement.presence === 'present',
  );
  const lesion = present.find((statement) => statement.kind === 'finding');
  return [
    ...random
      .some([...catalogue.scales.values()], amount.scales)
      .map((scale) => scaleStatement(sampling, scale, lesion)),
    ...Array.from({ length: amount.notes }, () =>
      noteStatement(sampling, random.chance(0.7) ? random.pick(regions) : undefined),
    ),
    ...Array.from({ length: amount.images }, () =>
      imageStatement(sampling, random.pick(regions), present),
    ),
    ...(lesion === undefined ? [] : lesionSize(sampling, lesion)),
  ];
}

function lesionSize(
  sampling: Sampling,
  lesion: Statement & { readonly kind: 'finding' },
): Stated[] {
  const measure = sampling.catalogue.measures.get('lesion-max');
  const region = sampling.catalogue.regions.get(lesion.region);
  if (measure === undefined || region === undefined) return [];
  return measurementStatements(sampling, measure, region, lesion.key).slice(0, 1);
}

function sitedRegions({ catalogue }: Sampling): Lean<Region>[] {
  return [...catalogue.regions.values()].filter(({ group }) => group !== true);
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
