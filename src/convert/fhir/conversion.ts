import { failure, type Outcome, success } from '../../issues/issue.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import type { Conversion } from '../conversion.ts';
import { lineSplitterOf } from '../json/lines.ts';
import { jsonSplitter } from '../json/split.ts';
import type { FhirSource } from '../mapping/source.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import type { Splitter } from '../record/record.ts';
import { elementSplitter } from '../xml/split.ts';
import { convertBundle } from './convert-bundle.ts';
import type { OwnSystems } from './group/piece.ts';
import { resourceSplitter } from './group/resource-splitter.ts';
import { byReport } from './group/split-reports.ts';
import { prepareFhir } from './prepare.ts';

/** The conversion of bundles, or what is wrong with the mapping. */
export function fhirConversion(value: unknown, options: MappingOptions): Outcome<Conversion> {
  const { value: plan, issues } = prepareFhir(value, options);
  if (plan === undefined) return failure(issues);
  const { source, tests = [] } = plan.mapping;
  const conversion: Conversion = {
    source,
    catalogue: options.catalogue ?? builtInCatalogue,
    tests,
    splitter: () => splitterOf(source, plan.systems),
    ...(source.form === 'resources' && { joined: true }),
    convert: (units) => units.map((unit) => convertBundle(unit, plan)),
  };
  return success(conversion, issues);
}

function splitterOf({ form, serverBase }: FhirSource, systems: OwnSystems): Splitter {
  switch (form) {
    case 'resources':
      return resourceSplitter({ systems, base: serverBase?.replace(/\/$/, '') });
    case 'lines':
      return byReport(lineSplitterOf(), systems);
    case 'xml':
      return elementSplitter(['*:Bundle']);
    default:
      return byReport(jsonSplitter([]), systems);
  }
}
