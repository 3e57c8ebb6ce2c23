import type { Conclusion } from '../model/conclusion.ts';
import type { Exam } from '../model/exam.ts';
import { type OptionalPart, optionalParts } from '../model/optional-parts.ts';
import type { ShownPrompt } from '../model/prompts.ts';
import type { RecordEvent } from '../model/record-event.ts';
import type { Statement } from '../model/statement.ts';

/**
 * The exam with these statements and these parts alone. What named a statement or instrument that is
 * gone names it no more, so that an exam without errors stays one.
 */
export function withOnly(
  exam: Exam,
  statements: readonly Statement[],
  parts: ReadonlySet<OptionalPart>,
): Exam {
  const keys = new Set(statements.map(({ key }) => key));
  const left = Object.entries(exam).filter(
    ([name]) => !optionalParts.some((part) => part === name && !parts.has(part)),
  );
  // The same exam without some of its optional properties.
  const { judgements, ...rest } = Object.fromEntries(left) as unknown as Exam;
  const judged = judgements?.filter(({ statement }) => keys.has(statement)) ?? [];
  return {
    ...rest,
    statements: statements.map((statement) =>
      reduced(statement, keys, parts.has('instruments') ? undefined : noInstruments),
    ),
    ...(rest.conclusion && { conclusion: reducedConclusion(rest.conclusion, keys) }),
    ...(rest.prompts && { prompts: rest.prompts.map((one) => reducedPrompt(one, keys)) }),
    ...(judged.length > 0 && { judgements: judged }),
    ...(rest.history && { history: rest.history.map((event) => reducedEvent(event, keys)) }),
  };
}

function reducedPrompt({ about, ...prompt }: ShownPrompt, keys: Keys): ShownPrompt {
  const rests = known(about, keys);
  return { ...prompt, ...(rests && { about: rests }) };
}

const noInstruments = ['instruments'] as const;

type Keys = ReadonlySet<string>;

function reduced(statement: Statement, keys: Keys, dropped: readonly string[] = []): Statement {
  const about = 'about' in statement ? statement.about : undefined;
  const kept =
    typeof about === 'string' ? (keys.has(about) ? about : undefined) : known(about, keys);
  const entries = Object.entries(statement).filter(
    ([name]) => name !== 'about' && !dropped.includes(name),
  );
  // The same statement without some of its optional properties.
  return {
    ...Object.fromEntries(entries),
    ...(kept !== undefined && { about: kept }),
  } as Statement;
}

function known(list: readonly string[] | undefined, keys: Keys): readonly string[] | undefined {
  const left = list?.filter((key) => keys.has(key));
  return left === undefined || left.length === 0 ? undefined : left;
}

function reducedConclusion({ basedOn, plan, ...rest }: Conclusion, keys: Keys): Conclusion {
  const rests = known(basedOn, keys);
  return {
    ...rest,
    ...(rests && { basedOn: rests }),
    ...(plan && {
      plan: plan.map(({ reasons, ...item }) => {
        const because = known(reasons, keys);
        return { ...item, ...(because && { reasons: because }) };
      }),
    }),
  };
}

function reducedEvent({ changed, ...event }: RecordEvent, keys: Keys): RecordEvent {
  const left = known(changed, keys);
  return { ...event, ...(left && { changed: left }) };
}
