import type { Path } from '../../issues/path.ts';
import type { RuleContext } from '../../model/rules/rule.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Unit } from '../../terminology/tables/units.ts';
import type { Reason, StatementBase } from './base.ts';

/** What stands somewhere in a statement; `path` leads there from the statement. */
type At<T> = T & { readonly path: Path };

/**
 * What the rules of form ask of a kind of statement: facet of its `statement.ts`, listed in
 * `forms.ts`. What all kinds have alike (region, side, methods, times of its own) needs no facet.
 */
export interface Form<S extends StatementBase> {
  /** Its codes and their tables, besides region, methods and reason. */
  codes?(
    statement: S,
  ): readonly At<{ readonly table: TableName; readonly code: string | undefined }>[];
  /** Reports answers that its sign, test or scale does not have. */
  answers?(statement: S, path: Path, context: RuleContext): void;
  /** For each thing it says, the reason that stands where there is no result. */
  reasons?(statement: S): readonly At<{ readonly reason: Reason | undefined }>[];
  /** Reports what else it must carry to be understood. */
  complete?(statement: S, path: Path, context: RuleContext): void;
  /** Regions in which what it is about is expected; none where anywhere. */
  expected?(statement: S, catalogue: Catalogue): readonly string[];
  /** Units that no row of a table fixes, and what they must measure. */
  units?(statement: S): readonly At<{ readonly unit: string; readonly kind: Unit['kind'] }>[];
  /** Its own times besides `at`, none of which lies after the record, and what to say where one does. */
  times?(
    statement: S,
  ): readonly At<{ readonly time: string | undefined; readonly after: 'onset' }>[];
  /** Keys of the statements that it is about. */
  about?(statement: S): readonly At<{ readonly key: string }>[];
}
