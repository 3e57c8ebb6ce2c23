import type { Exam, ExamCondition } from '../../model/exam.ts';
import type { Reason, Statement } from '../../model/statement.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { arrivingExaminer, arrivingSubject } from './arriving-people.ts';
import type { LegacyFormatName } from './format.ts';
import { ID_PREFIX, LEGACY_PROTOCOL } from './legacy-mapping.ts';
import { type Arriving, arriving } from './loss-work.ts';

export interface Arrival {
  /** The exam as its format and mapping carry it, its statements with numbered keys. */
  readonly exam: Exam;
  /** Ids of the losses of this exam, as in `formatLosses`. */
  readonly losses: readonly string[];
}

/**
 * What is left of an exam that was written in a format and read again by its mapping: the exam itself up
 * to the losses of `formatLosses`. Keys are numbered as `withNumberedKeys` does it, since a reader
 * makes keys of its own.
 */
export function whatArrives(exam: Exam, format: LegacyFormatName): Arrival {
  const work = arriving(format);
  const { indication, conclusion, performed, conditions } = work.without('exam', exam);
  const arrivedConditions = (conditions ?? []).flatMap((one) => arrivingCondition(one, work));
  const [firstCondition, ...moreConditions] = arrivedConditions;
  const statements = exam.statements.flatMap((one) => arrivingStatement(one, exam, work));
  if (exam.protocol.id !== LEGACY_PROTOCOL.id || exam.protocol.version !== LEGACY_PROTOCOL.version)
    work.lost('protocol');
  work.lost('exam-id');
  const arrived: Exam = {
    format: exam.format,
    id: `${ID_PREFIX}.${exam.id.replace(/[^A-Za-z0-9_-]/g, (mark) => `~${mark.charCodeAt(0).toString(16)}~`)}`,
    status: exam.status,
    subject: arrivingSubject(exam.subject, work),
    examiners: [arrivingExaminer(exam.examiners, work)],
    performed: {
      start: work.time(performed.start),
      ...(performed.end !== undefined && { end: work.time(performed.end) }),
    },
    recorded: work.time(exam.recorded),
    ...(indication !== undefined && {
      indication: { text: work.head(work.without('indication', indication).text) },
    }),
    protocol: LEGACY_PROTOCOL,
    ...(conclusion !== undefined && {
      conclusion: {
        ...work.without('conclusion', conclusion),
        text: work.head(conclusion.text),
      },
    }),
    ...(firstCondition !== undefined && { conditions: [firstCondition, ...moreConditions] }),
    statements,
  };
  return { exam: withNumberedKeys(arrived), losses: [...work.losses] };
}

/** The exam with the keys `statement-1`, `statement-2` ... in order, and references that follow them. */
export function withNumberedKeys(exam: Exam): Exam {
  const keys = new Map(exam.statements.map(({ key }, at) => [key, `statement-${at + 1}`]));
  const renamed = (key: string): string => keys.get(key) ?? key;
  const statements = exam.statements.map((statement): Statement => {
    const { key } = statement;
    if (!('about' in statement) || statement.about === undefined) {
      return { ...statement, key: renamed(key) };
    }
    if (statement.kind === 'image') {
      const [first, ...more] = statement.about.map(renamed);
      return { ...statement, key: renamed(key), ...(first && { about: [first, ...more] }) };
    }
    return { ...statement, key: renamed(key), about: renamed(statement.about) };
  });
  return { ...exam, statements };
}

function arrivingCondition(stated: ExamCondition, work: Arriving): ExamCondition[] {
  const { regions, ...rest } = stated;
  const row = builtInCatalogue.conditions.get(stated.condition);
  if (stated.value === undefined && row?.values !== undefined) {
    work.lost('condition-value');
    return [];
  }
  const noted = { ...rest, ...(rest.note !== undefined && { note: work.text(rest.note) }) };
  if (regions === undefined) return [noted];
  if (regions.length > 1) work.lost('condition-regions');
  return regions.map((region) => ({ ...noted, regions: [region] }));
}

function arrivingStatement(given: Statement, exam: Exam, work: Arriving): Statement[] {
  if (given.kind === 'image') {
    work.lost('images');
    return [];
  }
  const base = work.without(given.kind, work.without('statement', given));
  const statement: Statement = {
    ...base,
    ...(base.note !== undefined && { note: work.text(base.note) }),
    ...(base.at !== undefined && { at: work.time(base.at) }),
  };
  return [carried(statement, exam, work)];
}

function carried(statement: Statement, exam: Exam, work: Arriving): Statement {
  const reason = (given: Reason): Reason => work.without('reason', given);
  switch (statement.kind) {
    case 'region-state': {
      const told = methodsOf(statement, work);
      if (told.state === 'partial') return { ...told, limit: reason(told.limit) };
      return 'reason' in told ? { ...told, reason: reason(told.reason) } : told;
    }
    case 'finding':
      return methodsOf(statement, work);
    case 'sensation': {
      const [first, ...more] = statement.results.map((one) =>
        one.reason === undefined
          ? one
          : { ...one, result: untested(one.result, work), reason: reason(one.reason) },
      );
      return first === undefined ? statement : { ...statement, results: [first, ...more] };
    }
    case 'sensation-comparison':
      return withReason(statement, work);
    case 'movement':
      return statement.reason === undefined
        ? statement
        : { ...withReason(statement, work), grade: untested(statement.grade, work) };
    case 'function-test':
      return statement.reason === undefined
        ? statement
        : { ...withReason(statement, work), result: untested(statement.result, work) };
    case 'measurement':
      return measured(methodsOf(aboutFinding(statement, exam, work), work), work);
    case 'scale-score':
      return aboutFinding(statement, exam, work);
    case 'note':
      return { ...statement, text: work.text(statement.text) };
    default:
      return statement;
  }
}

function measured(
  statement: Extract<Statement, { kind: 'measurement' }>,
  work: Arriving,
): Statement {
  const { conditions, unusable } = statement;
  const kept =
    conditions === undefined ? statement : { ...statement, conditions: work.oneOf(conditions) };
  if (unusable === undefined) return kept;
  const unit = usualUnit(statement.measure, builtInCatalogue) ?? statement.unit;
  if (unit !== statement.unit) work.lost('unusable-unit');
  return { ...kept, unit, unusable: work.without('reason', unusable) };
}

function usualUnit(measure: string, { measures }: Catalogue): string | undefined {
  return measures.get(measure)?.unit;
}

function methodsOf<S extends { readonly methods?: readonly string[] }>(
  statement: S,
  work: Arriving,
): S {
  const { methods } = statement;
  return methods === undefined ? statement : { ...statement, methods: work.oneOf(methods) };
}

function withReason<S extends { readonly reason?: Reason }>(statement: S, work: Arriving): S {
  const { reason } = statement;
  return reason === undefined
    ? statement
    : { ...statement, reason: work.without('reason', reason) };
}

function untested(result: string, work: Arriving): string {
  if (result !== 'not-tested') work.lost('unable');
  return 'not-tested';
}

function aboutFinding<S extends { readonly about?: string }>(
  statement: S,
  exam: Exam,
  work: Arriving,
): S {
  const { about } = statement;
  if (about === undefined) return statement;
  const owner = exam.statements.find(({ key }) => key === about);
  if (owner?.kind === 'finding' && owner.presence === 'present') return statement;
  work.lost('about');
  const { about: _gone, ...rest } = statement;
  return rest as S; // S without an optional property
}
