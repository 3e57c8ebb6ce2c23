import { checkAgainstSchema } from '../../data/schema-check.ts';
import { identitySystems } from '../../fhir/names/part-names.ts';
import { CANONICAL_BASE } from '../../fhir/names/systems.ts';
import { within } from '../../issues/budget.ts';
import { failure, hasErrors, type Outcome, success } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import { examForms } from '../../model/words.ts';
import type { ReadOptions, Supplied } from '../../read/options.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { fhirMappingValidator } from '../compiled/fhir-mapping.js';
import type { FhirExam, FhirMapping } from '../mapping/fhir-mapping.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import { unknownCode } from '../prepare/targets.ts';
import type { OwnSystems } from './group/piece.ts';

/** A mapping of FHIR that has passed its checks. */
export interface FhirPlan {
  readonly mapping: FhirMapping;
  readonly read: ReadOptions;
  /** Systems of the identifiers of this library, as at the export. */
  readonly systems: OwnSystems;
}

/** The mapping, checked. It fails when anything is wrong. */
export function prepareFhir(value: unknown, options: MappingOptions = {}): Outcome<FhirPlan> {
  return within(
    'mapping',
    options.budget,
    () => prepared(value, options),
    (why) => failure([endedIssue(why)]),
  );
}

function prepared(value: unknown, options: MappingOptions): Outcome<FhirPlan> {
  const catalogue = options.catalogue ?? builtInCatalogue;
  // A mapping holds no patient data, so its values may be told.
  const issues = checkAgainstSchema(value, {
    validator: fhirMappingValidator,
    forms: examForms,
    includeValues: true,
  });
  if (hasErrors(issues)) return failure(issues);
  const mapping = value as FhirMapping; // the schema, generated from this type, has accepted it
  const { source, exam = {} } = mapping;
  const { protocol } = exam;
  const unknown =
    protocol && unknownCode('protocols', protocol.id, ['exam', 'protocol', 'id'], catalogue);
  if (unknown !== undefined && hasErrors(unknown)) return failure(unknown);
  const { canonicalBase, identity } = source;
  return success(
    {
      mapping,
      read: {
        catalogue,
        supplied: suppliedBy(exam),
        ...(canonicalBase !== undefined && { canonicalBase }),
        ...(identity !== undefined && { identity }),
      },
      systems: identitySystems(canonicalBase ?? CANONICAL_BASE, identity),
    },
    issues,
  );
}

function suppliedBy({ status, protocol, recorded, examiner }: FhirExam): Supplied {
  const { name, role, reference } = examiner ?? {};
  return {
    ...(status !== undefined && { status }),
    ...(protocol && { protocol }),
    ...(recorded !== undefined && { recorded }),
    ...(examiner && {
      examiners: [
        {
          key: 'examiner',
          ...(reference !== undefined && { reference }),
          ...(name !== undefined && { name: { text: name } }),
          ...(role !== undefined && { role }),
        },
      ],
    }),
  };
}
