import { fhirVersionNumber } from '../../fhir/version.ts';
import type { ExtensionRow, ExtensionTable } from '../../validate/elements/table-types.ts';
import { contextPlaces, extensionRow } from '../../validate/profiles/extension-row.ts';
import { readStructure, typeName } from '../../validate/profiles/structure.ts';
import type { Definitions, VersionUse } from './definitions.ts';

/** Types beside the held ones, which contexts of extensions name too: those above them, and primitives. */
const furtherTypes = [
  ...['Base', 'Element', 'BackboneElement'],
  ...['Resource', 'DomainResource', 'CanonicalResource', 'MetadataResource'],
  ...['boolean', 'integer', 'decimal', 'string', 'code', 'markdown'],
  ...['uri', 'url', 'canonical', 'date', 'dateTime', 'instant', 'time'],
];

/** Where definitions that HL7 publishes carry an extension beside the places that it is defined for. */
const misplacedByHl7: Readonly<Record<string, readonly string[]>> = {
  'structuredefinition-fhir-type': ['ElementDefinition.type'],
  regex: ['ElementDefinition.type'],
  // US Core says so of each of its search parameters.
  'capabilitystatement-expectation': [
    ...['SearchParameter.multipleOr', 'SearchParameter.multipleAnd'],
    ...['SearchParameter.comparator', 'SearchParameter.modifier', 'SearchParameter.chain'],
  ],
};

/** Every extension that HL7 has published; of those that stand in none of the held types, only where. */
export function extensionTable(definitions: Definitions, types: readonly string[]): ExtensionTable {
  const version = Number.parseFloat(fhirVersionNumber[definitions.version]);
  const held = new Set<string>([...types, ...furtherTypes]);
  const rows: [string, ExtensionRow][] = [];
  for (const found of definitions.structures.values()) {
    const structure = readStructure(found);
    if (structure?.type !== 'Extension' || found.derivation !== 'constraint') continue;
    // A place that has ended stays one: HL7's own code systems of R5 carry comments where only R4 has them.
    const places = (definitions.contexts.get(structure.url) ?? []).filter(
      ({ extension }) => !(Number(usedBetween(extension).start) > version),
    );
    const placed = misplacedByHl7[typeName(structure.url)] ?? [];
    const on = [...new Set([...contextPlaces(places), ...placed])];
    const { end } = usedBetween(found.extension);
    const until = end !== undefined && Number(end) < version ? { until: end } : {};
    const within = on.some(
      (place) => place.startsWith('extension ') || held.has(place.split('.')[0] ?? ''),
    );
    rows.push([
      typeName(structure.url),
      within ? { ...extensionRow(structure), on, ...until } : { on },
    ]);
  }
  return Object.fromEntries(rows.sort(([one], [other]) => (one < other ? -1 : 1)));
}

/** @see https://hl7.org/fhir/extensions/StructureDefinition-version-specific-use.html */
function usedBetween(uses: readonly VersionUse[] = []): { start?: string; end?: string } {
  const url = 'http://hl7.org/fhir/StructureDefinition/version-specific-use';
  const parts = uses.find((use) => use.url === url)?.extension ?? [];
  const of = (name: string) => parts.find((part) => part.url === name)?.valueCode;
  const [start, end] = [of('startFhirVersion'), of('endFhirVersion')];
  return { ...(start !== undefined && { start }), ...(end !== undefined && { end }) };
}
