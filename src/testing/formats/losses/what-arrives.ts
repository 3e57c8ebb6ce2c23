import { isPicture } from '../../../kinds/image/sample.ts';
import { arrivalOf } from '../../../kinds/registries/samples.ts';
import type { Exam, ExamCondition } from '../../../model/exam.ts';
import type { Statement } from '../../../model/statement.ts';
import { builtInCatalogue } from '../../../terminology/catalogue.ts';
import type { LegacyFormatName } from '../format.ts';
import { keptBack } from '../kept-back.ts';
import { ID_PREFIX, LEGACY_PROTOCOL } from '../legacy-mapping.ts';
import { arrivingExaminer, arrivingSubject } from './arriving-people.ts';
import { type Arriving, arriving } from './loss-work.ts';

/** What to expect of a reader. */
export interface Arrival {
  /** The exam as its format and mapping carry it, its statements with numbered keys. */
  readonly exam: Exam;
  /** Ids of the losses of this exam, as in `formatLosses`. */
  readonly losses: readonly string[];
}

/**
 * Works out what is left of an exam that was written in a format and read again by its mapping: the
 * exam up to the losses of `formatLosses`. Keys are numbered as by {@link withNumberedKeys}, since
 * a reader makes keys of its own.
 *
 * @param exam The exam that is written.
 * @param format `csv`, `hl7v2`, `xml` or `cda`.
 * @returns The exam to expect, and the ids of the losses that it met.
 * @example
 * const { exam: expected, losses } = whatArrives(exam, 'csv');
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

/**
 * Renames the statements of an exam to `statement-1`, `statement-2` and so on, in order.
 *
 * @param exam The exam.
 * @returns A copy in which references between statements follow the new keys.
 * @example
 * const comparable = withNumberedKeys(exam);
 */
export function withNumberedKeys(exam: Exam): Exam {
  const keys = new Map(exam.statements.map(({ key }, at) => [key, `statement-${at + 1}`]));
  const renamed = (key: string): string => keys.get(key) ?? key;
  const statements = exam.statements.map((statement): Statement => {
    const { key } = statement;
    if (!('about' in statement) || statement.about === undefined) {
      return { ...statement, key: renamed(key) };
    }
    if (isPicture(statement)) {
      if (statement.about === undefined) return { ...statement, key: renamed(key) };
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
  const loss = keptBack(given);
  if (loss !== undefined) {
    work.lost(loss);
    return [];
  }
  const arrives = arrivalOf(given);
  if ('lost' in arrives) {
    work.lost(arrives.lost);
    return [];
  }
  const base = work.without(given.kind, work.without('statement', given));
  const statement: Statement = {
    ...base,
    ...(base.note !== undefined && { note: work.text(base.note) }),
    ...(base.at !== undefined && { at: work.time(base.at) }),
  };
  return [arrives(statement, exam, work)];
}
