import { loincCopyright, snomedCopyright } from '../../fhir/licence/copyright.ts';
import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { relationships } from '../../fhir/names/definition-names.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { kebab } from '../../terminology/named-table.ts';
import { loincDisplay } from '../../terminology/published/loinc.ts';
import { isFreeSnomed, snomedDisplay } from '../../terminology/published/snomed.ts';
import { standardSystems } from '../../terminology/system-names.ts';
import type { Mapping, Relation } from '../../terminology/types.ts';
import type { TableFile } from '../terminology/terminology-check.ts';
import type { PackageConcept } from './concepts.ts';
import { type Definition, head, ownCopyright, type PackageOrder } from './head.ts';

/** Where a table is mapped to. */
const targets = {
  snomed: {
    name: 'SNOMED CT, free set',
    // R5 would have each target checked against the set, which needs SNOMED CT itself.
    scope: {
      R4: { targetCanonical: 'http://terminology.hl7.org/ValueSet/snomed-intl-gps' },
      R5: {},
    },
    copyright: `${ownCopyright} ${snomedCopyright}`,
    display: snomedDisplay,
    free: isFreeSnomed,
  },
  loinc: {
    name: 'LOINC',
    // All of LOINC. @see https://hl7.org/fhir/R4/loinc.html
    scope: {
      R4: { targetUri: 'http://loinc.org/vs' },
      R5: { targetScopeUri: 'http://loinc.org/vs' },
    },
    copyright: `${ownCopyright} ${loincCopyright}`,
    display: loincDisplay,
    free: () => true,
  },
} as const;

/** What a reader must know of each relation that is not equivalence. */
const comments: { readonly [R in Relation]?: string } = {
  wider: 'The target means more; sent for what is present, not for what is absent.',
  narrower: 'The target means less than the source; never sent in its place.',
  relatedto: 'The target is near and not the same; never sent in place of the source.',
};

/** Concept maps of a table to SNOMED CT and LOINC; none where no row has a mapping. */
export function conceptMaps(
  order: PackageOrder,
  table: TableName,
  file: TableFile,
  concepts: readonly PackageConcept[],
): Definition[] {
  return (['snomed', 'loinc'] as const).flatMap((system) => {
    const elements = concepts.flatMap((concept) => elementOf(order, system, concept));
    const matched = elements.some(({ target }) => target?.some(({ code }) => code !== undefined));
    return matched ? [conceptMap(order, table, file, system, elements)] : [];
  });
}

interface Element {
  readonly code: string;
  readonly display: string;
  readonly target?: readonly { readonly code?: string }[];
  readonly noMap?: true;
}

function elementOf(
  order: PackageOrder,
  system: Mapping['system'],
  { code, display, maps, side }: PackageConcept,
): Element[] {
  const { free } = targets[system];
  const found = maps.filter((map) => map.system === system && free(map.code));
  if (found.length > 0) {
    return [{ code, display, target: found.map((map) => targetOf(order, system, map)) }];
  }
  // A side without a match follows from its region.
  if (side !== undefined) return [];
  return order.version === 'R4'
    ? [{ code, display, target: [{ equivalence: 'unmatched' } as object] }]
    : [{ code, display, noMap: true }];
}

function targetOf(
  order: PackageOrder,
  system: Mapping['system'],
  { code, relation }: Mapping,
): { readonly code: string } {
  const display = targets[system].display(code);
  const comment = comments[relation];
  return {
    code,
    ...(display !== undefined && { display }),
    ...(order.version === 'R4'
      ? { equivalence: relation }
      : { relationship: relationships[relation] }),
    ...(comment !== undefined && { comment }),
  };
}

function conceptMap(
  order: PackageOrder,
  table: TableName,
  file: TableFile,
  system: Mapping['system'],
  element: readonly Element[],
): Definition {
  const { name, scope, copyright } = targets[system];
  const id = `${kebab(table)}-to-${system}`;
  const description = `${file.title}: codes of ${name}, with the relation of each. What has no code there is named.`;
  const source = `${order.base}/ValueSet/${kebab(table)}`;
  return {
    ...head(order, 'ConceptMap', id, {
      title: `${file.title} to ${name}`,
      version: file.version,
      description,
    }),
    copyright,
    ...(order.version === 'R4' ? { sourceCanonical: source } : { sourceScopeCanonical: source }),
    ...scope[order.version],
    group: [{ source: codeSystemUrl(order.base, table), target: standardSystems[system], element }],
  };
}
