import { failure, type Outcome, success } from '../issues/issue.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { convertGroup } from './exams/convert-group.ts';
import type { ConvertedUnit } from './exams/converted-unit.ts';
import { contentOf } from './exams/note.ts';
import type { Plan } from './mapping/plan.ts';
import type { AnySource } from './mapping/source.ts';
import type { MappingTest } from './mapping/test.ts';
import { type MappingOptions, prepareMapping } from './prepare/prepare-mapping.ts';
import { readerFor } from './reader-for.ts';
import type { RawUnit, Reader } from './record/record.ts';

/** A mapping made ready: how a text is cut into exams, and what becomes of each. */
export interface Conversion extends Pick<Reader, 'splitter'> {
  readonly source: AnySource;
  readonly catalogue: Catalogue;
  readonly tests: readonly MappingTest[];
  /** The plan of a mapping of fields; none of FHIR. */
  readonly plan?: Plan;
  /** All inputs are one: what belongs together can stand in several files. */
  readonly joined?: true;
  /** One for each unit, in order. */
  readonly convert: (units: readonly RawUnit[]) => readonly ConvertedUnit[];
}

/** A conversion by a mapping of fields. It fails when anything is wrong with the mapping. */
export function prepareFields(value: unknown, options: MappingOptions = {}): Outcome<Conversion> {
  const { value: plan, issues } = prepareMapping(value, options);
  if (plan === undefined) return failure(issues);
  const { source, tests = [] } = plan.mapping;
  const reader = readerFor(source);
  const conversion: Conversion = {
    source,
    catalogue: options.catalogue ?? builtInCatalogue,
    tests,
    plan,
    splitter: reader.splitter,
    convert: (units) =>
      reader.read(units).map((group) => ({
        ...convertGroup(group, plan),
        at: group.at,
        texts: () => group.records.flatMap(({ fields }) => fields.map(contentOf)),
      })),
  };
  return success(conversion, issues);
}
