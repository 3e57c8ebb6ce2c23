import type { Conclusion } from '../model/conclusion.ts';
import type { Exam } from '../model/exam.ts';
import type { RecordEvent } from '../model/record-event.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { Dates } from './dates.ts';
import type { Renaming } from './statements.ts';

/** Stands where a text must stand and none may leave. */
export const LEFT_OUT = 'Left out';

/** When it was performed and written. */
export function timesOf(
  { performed, recorded }: Exam,
  dates: Dates,
): Pick<Exam, 'performed' | 'recorded'> {
  const end = performed.end === undefined ? undefined : dates.dateTime(performed.end);
  return {
    // A start that can't be moved is cut with all the others, before it comes here.
    performed: { start: dates.dateTime(performed.start) ?? '', ...(end !== undefined && { end }) },
    recorded: dates.instant(recorded),
  };
}

/** Why, with what consent and under which conditions, without words. */
export function circumstancesOf(
  { indication, consents, conditions, protocol }: Exam,
  dates: Dates,
  catalogue: Catalogue,
): Pick<Exam, 'indication' | 'consents' | 'conditions' | 'protocol'> {
  const known = catalogue.protocols.get(protocol.id)?.version === protocol.version;
  return {
    ...(indication && {
      indication: {
        text: LEFT_OUT,
        ...(indication.visit && { visit: indication.visit }),
        ...(indication.urgency && { urgency: indication.urgency }),
      },
    }),
    ...(consents && {
      consents: consents.map(({ to, answer, by, at }) => {
        const moved = at === undefined ? undefined : dates.dateTime(at);
        return { to, answer, ...(by && { by }), ...(moved !== undefined && { at: moved }) };
      }),
    }),
    ...(conditions && {
      conditions: conditions.map(({ condition, value, regions, side }) => ({
        condition,
        ...(value !== undefined && { value }),
        ...(regions && { regions }),
        ...(side && { side }),
      })),
    }),
    protocol: { id: protocol.id, version: known ? protocol.version : LEFT_OUT },
  };
}

/** The level of concern, what it rests on and what kind of plan was made, without words. */
export function conclusionOf(
  { concern, basedOn, plan }: Conclusion,
  { dates, ...names }: Renaming,
): Conclusion {
  const statements = (keys: readonly string[] = []): readonly string[] =>
    keys.filter(names.leaves).map(names.statement);
  const based = statements(basedOn);
  return {
    text: LEFT_OUT,
    concern,
    ...(based.length > 0 && { basedOn: based }),
    ...(plan && {
      plan: plan.map(({ kind, urgency, due, reasons, service }, at) => {
        const moved = due === undefined ? undefined : dates.dateTime(due);
        const rests = statements(reasons);
        return {
          key: `p${at + 1}`,
          kind,
          text: LEFT_OUT,
          ...(urgency && { urgency }),
          ...(moved !== undefined && { due: moved }),
          ...(rests.length > 0 && { reasons: rests }),
          ...(service !== undefined && { service }),
        };
      }),
    }),
  };
}

/** Each step in the life of the record, without its reason in words. */
export function historyOf(
  history: readonly RecordEvent[],
  { dates, leaves, statement, examiner }: Renaming,
): readonly RecordEvent[] {
  return history.map(({ action, by, at, version, reason, changed = [], withdrawn }) => {
    const stated = changed.filter(leaves).map(statement);
    return {
      action,
      by: examiner(by),
      at: dates.instant(at),
      version,
      ...(reason !== undefined && { reason: LEFT_OUT }),
      ...(stated.length > 0 && { changed: stated }),
      ...(withdrawn && { withdrawn: withdrawn.map(statement) }),
    };
  });
}
