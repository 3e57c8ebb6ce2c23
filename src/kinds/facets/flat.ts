import type { Answer } from '../../flat/answer.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { StatementBase } from './base.ts';
import type { Polarity } from './meaning.ts';

/** What a kind of statement says in a row for analysis. */
export interface Flat<S extends StatementBase> {
  /**
   * The answers of a statement: one, or for a sensation one for each modality, in the order of its
   * sayings, whose polarities come along.
   */
  answers(statement: S, polarities: readonly Polarity[], catalogue: Catalogue): readonly Answer[];
}
