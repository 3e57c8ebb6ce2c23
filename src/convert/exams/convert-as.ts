import { within } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import { endedIssue, longTextIssues } from '../../issues/issue-list.ts';
import { issue } from '../issue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { Plan } from '../mapping/plan.ts';
import type { Source } from '../mapping/source.ts';
import { type MappingOptions, prepareMapping } from '../prepare/prepare-mapping.ts';
import type { RawUnit, Reader } from '../record/record.ts';
import { type ConvertResult, convertRecords, convertUnits } from './convert-text.ts';
import { noFields } from './ledger.ts';

type Syntax = Source['syntax'];
type SourceOf<S extends Syntax> = Extract<Source, { readonly syntax: S }>;

/** What a syntax brings to a conversion. */
interface Way<S extends Syntax> {
  readonly syntax: S;
  readonly readerOf: (source: SourceOf<S>) => Reader;
  /** What is to be said of the text as a whole. */
  readonly issuesOf?: (units: readonly RawUnit[], plan: Plan) => readonly Issue[];
}

/** Converts a text of one syntax, within its budget; a mapping that is wrong gives issues and no exam. */
export function convertAs<S extends Syntax>(
  { syntax, readerOf, issuesOf }: Way<S>,
  text: string,
  mapping: WrittenMapping,
  options: MappingOptions = {},
): ConvertResult {
  return convertWithin(text, options, () => {
    const { value: plan, issues } = prepareMapping(mapping, options);
    const none = { exams: [], quarantine: [], ledger: noFields };
    if (plan === undefined) return { ...none, issues };
    const { source } = plan.mapping;
    if (!isOf(source, syntax)) {
      const wrong = issue('invalid-value', ['source', 'syntax'], {
        reason: 'syntax',
        code: syntax,
      });
      return { ...none, issues: [...issues, wrong] };
    }
    const reader = readerOf(source);
    const result = convertRecords(
      text,
      reader,
      (units) => convertUnits(units, reader, plan),
      (units) => issuesOf?.(units, plan) ?? [],
    );
    return { ...result, issues: [...issues, ...result.issues] };
  });
}

/** A conversion within its budget; where that is spent, no exam comes out. */
export function convertWithin(
  text: string,
  { budget }: MappingOptions,
  convert: () => ConvertResult,
): ConvertResult {
  const none = { exams: [], quarantine: [], ledger: noFields };
  return within(
    'legacy',
    budget,
    () => {
      const long = longTextIssues(text);
      return long.length > 0 ? { ...none, issues: long } : convert();
    },
    (why) => ({ ...none, issues: [endedIssue(why)] }),
  );
}

function isOf<S extends Syntax>(source: Source, syntax: S): source is SourceOf<S> {
  return source.syntax === syntax;
}
