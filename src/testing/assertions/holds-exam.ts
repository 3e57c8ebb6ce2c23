import type { ExportOptions } from '../../export/options.ts';
import { toBundle } from '../../export/to-bundle.ts';
import { pathText } from '../../issues/path.ts';
import type { Exam } from '../../model/exam.ts';
import { fromBundle } from '../../read/from-bundle.ts';
import type { ReadOptions } from '../../read/options.ts';
import { examDifferences } from './differences.ts';
import { toldIn } from './told.ts';
import { issueLines, type Verdict, verdict } from './verdict.ts';

/** Options of the reading, with those of the export. */
export interface HoldsExamOptions extends ReadOptions {
  /** How the exam was exported, where that leaves something out: a licence policy, a code map. */
  readonly export?: ExportOptions;
}

/**
 * Checks whether a bundle, read back, gives the same exam: what it says and no more, whatever the
 * order of its entries and whatever a server added for its own bookkeeping.
 *
 * @param bundle The bundle as plain data.
 * @param exam The exam that it should hold.
 * @param options Options of the reading, and in `export` those of the export.
 * @returns The verdict, whose message names differences by their path in the exam and, for a
 *   statement, in the bundle; values are not shown.
 * @example
 * const { pass } = holdsExam(toBundleOrThrow(exam), exam);
 */
export function holdsExam(bundle: unknown, exam: Exam, options: HoldsExamOptions = {}): Verdict {
  const { export: exported, ...read } = options;
  const { value, issues, remainder } = fromBundle(bundle, { exam: exam.id, ...read });
  if (value === undefined) {
    return verdict(false, 'no exam can be read from the bundle', issueLines(issues));
  }
  const unread = remainder
    .filter(({ kind }) => kind === 'content')
    .map(({ what, path }) => `${pathText(path)}  ${what} is not part of the exam`);
  const lines = [...differencesOf(exam, value, exported, read), ...unread];
  return lines.length === 0
    ? verdict(true, 'the bundle holds the exam')
    : verdict(false, 'the bundle does not hold the same exam', located(lines, bundle, read));
}

/** What an export leaves out because it holds by default is not a difference. */
function differencesOf(
  exam: Exam,
  value: Exam,
  exported: ExportOptions | undefined,
  read: ReadOptions,
): string[] {
  const direct = examDifferences(exam, value);
  if (direct.length === 0) return direct;
  const normal = fromBundle(
    toBundle(exam, { ...sharedOptions(read), allowDraft: true, ...exported }).value,
    read,
  ).value;
  return normal === undefined ? direct : examDifferences(normal, value);
}

function sharedOptions({
  catalogue,
  canonicalBase,
  identity,
  codes,
  language,
}: ReadOptions): ExportOptions {
  return {
    ...(catalogue && { catalogue }),
    ...(canonicalBase !== undefined && { canonicalBase }),
    ...(identity && { identity }),
    ...(codes && { codes }),
    ...(language && { language }),
  };
}

function located(lines: readonly string[], bundle: unknown, read: ReadOptions): string[] {
  const places = new Map(
    toldIn(bundle, read).statements.map(({ statement, where }) => [statement.key, where]),
  );
  return lines.map((line) => {
    const key = /^statements\[([^\]]+)\]/.exec(line)?.[1];
    const where = key === undefined ? undefined : places.get(key);
    return where === undefined ? line : `${line} (${where})`;
  });
}
