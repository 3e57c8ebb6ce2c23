import type { Path } from '../../issues/path.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import type { ExamRule } from './rule.ts';

/** Statements, examiners, instruments and plan items each have keys of their own. */
export const uniqueKeys: ExamRule = ({ exam, report }) => {
  const lists: readonly [Path, readonly { readonly key: string }[]][] = [
    [['statements'], exam.statements],
    [['examiners'], exam.examiners],
    [['instruments'], exam.instruments ?? []],
    [['conclusion', 'plan'], exam.conclusion?.plan ?? []],
  ];
  for (const [path, list] of lists) {
    const seen = new Set<string>();
    list.forEach(({ key }, at) => {
      if (seen.has(key)) {
        report(
          'duplicate-key',
          [...path, at, 'key'],
          { reason: 'twice' },
          {
            value: key,
          },
        );
      }
      seen.add(key);
    });
  }
};

/** What a step withdrew does not stand in the exam, unless a later step stated it anew. */
export const withdrawnKeys: ExamRule = ({ exam, report }) => {
  const gone = new Map<string, Path>();
  exam.history?.forEach((event, at) => {
    for (const key of event.changed ?? []) gone.delete(key);
    event.withdrawn?.forEach((key, i) => {
      gone.set(key, ['history', at, 'withdrawn', i]);
    });
  });
  for (const { key } of exam.statements) {
    const path = gone.get(key);
    if (path !== undefined) report('contradiction', path, { reason: 'withdrawn' });
  }
};

/** Every key that is named must be there. */
export const resolvedKeys: ExamRule = ({ exam, report }) => {
  const statements = new Map(exam.statements.map((statement) => [statement.key, statement]));
  const examiners = new Set(exam.examiners.map((examiner) => examiner.key));
  const instruments = new Set(exam.instruments?.map((instrument) => instrument.key));

  const need = (
    known: { has(key: string): boolean },
    key: string | undefined,
    ...path: Path
  ): void => {
    if (key !== undefined && !known.has(key)) {
      report('unresolved-key', path, { reason: 'exam' }, { value: key });
    }
  };
  exam.statements.forEach((statement, at) => {
    need(examiners, statement.examiner, 'statements', at, 'examiner');
    statement.instruments?.forEach((key, i) => {
      need(instruments, key, 'statements', at, 'instruments', i);
    });
    for (const { key, path } of formOf(statement).about?.(statement) ?? []) {
      need(statements, key, 'statements', at, ...path);
      if (key === statement.key) {
        report('contradiction', ['statements', at, ...path], { reason: 'itself' });
      }
    }
  });
  exam.conclusion?.basedOn?.forEach((key, i) => {
    need(statements, key, 'conclusion', 'basedOn', i);
  });
  exam.conclusion?.plan?.forEach((item, at) => {
    item.reasons?.forEach((key, i) => {
      need(statements, key, 'conclusion', 'plan', at, 'reasons', i);
    });
  });
  const withdrawn = new Set(exam.history?.flatMap((event) => event.withdrawn ?? []));
  const stated = { has: (key: string) => statements.has(key) || withdrawn.has(key) };
  exam.prompts?.forEach(({ about, answer }, at) => {
    need(examiners, answer?.by, 'prompts', at, 'answer', 'by');
    about?.forEach((key, i) => {
      need(stated, key, 'prompts', at, 'about', i);
    });
  });
  exam.judgements?.forEach(({ statement, by }, at) => {
    need(stated, statement, 'judgements', at, 'statement');
    need(examiners, by, 'judgements', at, 'by');
  });
  exam.history?.forEach((event, at) => {
    need(examiners, event.by, 'history', at, 'by');
    event.changed?.forEach((key, i) => {
      need(stated, key, 'history', at, 'changed', i);
    });
  });
};
