import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { FhirVersion } from '../../fhir/version.ts';
import { versionSources } from '../fhir-schema/sources.ts';
import { published } from '../published.ts';

export { typeName, withoutVersion } from '../../validate/profiles/structure.ts';

export interface Context {
  readonly type: string;
  readonly expression: string;
  readonly extension?: readonly VersionUse[];
}

/** Between which versions of FHIR an extension, or a place of one, may be used. */
export interface VersionUse {
  readonly url: string;
  readonly extension?: readonly { readonly url: string; readonly valueCode?: string }[];
}

/** The part of a StructureDefinition that the tables are made from. */
export interface StructureDefinition {
  readonly resourceType: 'StructureDefinition';
  readonly url: string;
  readonly type: string;
  readonly kind: string;
  readonly abstract: boolean;
  readonly derivation?: string;
  readonly context?: readonly Context[];
  readonly extension?: readonly VersionUse[];
  readonly snapshot: { readonly element: readonly ElementDefinition[] };
}

export interface ElementDefinition {
  readonly id: string;
  readonly path: string;
  readonly sliceName?: string;
  readonly min: number;
  readonly max: string;
  readonly isModifier?: boolean;
  readonly contentReference?: string;
  readonly fixedUri?: string;
  readonly type?: readonly {
    readonly code: string;
    readonly profile?: readonly string[];
    readonly targetProfile?: readonly string[];
    readonly extension?: readonly { readonly url: string; readonly valueUrl?: string }[];
  }[];
  readonly binding?: {
    readonly strength: string;
    readonly valueSet?: string;
    readonly extension?: readonly { readonly url: string; readonly valueCanonical?: string }[];
    readonly additional?: readonly { readonly purpose: string; readonly valueSet: string }[];
  };
  readonly constraint?: readonly {
    readonly key: string;
    readonly severity: 'error' | 'warning';
    readonly expression?: string;
  }[];
}

export interface Concept {
  readonly code: string;
  readonly display?: string;
  readonly designation?: readonly { readonly value: string }[];
  readonly property?: readonly {
    readonly code: string;
    readonly valueCode?: string;
    readonly valueBoolean?: boolean;
  }[];
  readonly concept?: readonly Concept[];
}

export interface CodeSystem {
  readonly resourceType: 'CodeSystem';
  readonly url: string;
  readonly content: string;
  readonly concept?: readonly Concept[];
}

export interface ValueSetPart {
  readonly system?: string;
  readonly valueSet?: readonly string[];
  readonly concept?: readonly Concept[];
  readonly filter?: readonly {
    readonly property: string;
    readonly op: string;
    readonly value: string;
  }[];
}

export interface ExpandedConcept {
  readonly system?: string;
  readonly code?: string;
  readonly display?: string;
  readonly abstract?: boolean;
  readonly contains?: readonly ExpandedConcept[];
}

export interface ValueSet {
  readonly resourceType: 'ValueSet';
  readonly url: string;
  readonly compose?: {
    readonly include: readonly ValueSetPart[];
    readonly exclude?: readonly ValueSetPart[];
  };
  readonly expansion?: {
    readonly total?: number;
    readonly contains?: readonly ExpandedConcept[];
    readonly extension?: readonly unknown[];
  };
}

/** The part of a ConceptMap that tells between what it maps, in the words of R4 and of R5. */
export interface ConceptMap {
  readonly resourceType: 'ConceptMap';
  readonly url: string;
  readonly sourceCanonical?: string;
  readonly targetCanonical?: string;
  readonly sourceScopeCanonical?: string;
  readonly targetScopeCanonical?: string;
  readonly group?: readonly { readonly source?: string; readonly target?: string }[];
}

/** What HL7 publishes for one version; its own package first, then those that hold for all. */
export interface Definitions {
  readonly version: FhirVersion;
  readonly packages: readonly string[];
  readonly structures: ReadonlyMap<string, StructureDefinition>;
  /** Where every published edition of an extension lets it stand. */
  readonly contexts: ReadonlyMap<string, readonly Context[]>;
  /** By canonical URL; the same system may stand in several packages, the first is the version's own. */
  readonly codeSystems: ReadonlyMap<string, readonly CodeSystem[]>;
  readonly valueSets: ReadonlyMap<string, ValueSet>;
  readonly conceptMaps: readonly ConceptMap[];
  readonly expansions: ReadonlyMap<string, ValueSet>;
}

/** There is no edition for R4B, which has the data types of R4. */
const extensionsPacks = {
  R4: ['hl7.fhir.uv.extensions.r4', '5.3.0-ballot-tc1'],
  R4B: ['hl7.fhir.uv.extensions.r4', '5.3.0-ballot-tc1'],
  R5: ['hl7.fhir.uv.extensions.r5', '5.3.0-ballot-tc1'],
} as const;
const terminology = ['hl7.terminology.r4', '7.0.1'] as const;
/** R4 carries the code systems of HL7's terminology as they stood in 2019; later ones dropped codes. */
const terminologyThen = ['hl7.fhir.r4.examples', '4.0.1'] as const;

export async function readDefinitions(version: FhirVersion): Promise<Definitions> {
  const source = versionSources.find(({ fhirVersion }) => fhirVersion === version);
  if (source === undefined) throw new Error(`no published packages of FHIR ${version}`);
  const { definitions, expansions } = source;
  const own = [definitions.name, definitions.version] as const;
  const general = [extensionsPacks[version], terminology, terminologyThen];
  const sources = [own, ...general.filter(([name]) => name !== own[0])];
  const found: Found = {
    contexts: new Map(),
    structures: new Map(),
    codeSystems: new Map(),
    valueSets: new Map(),
    conceptMaps: [],
  };
  for (const [name, edition] of sources) {
    // R4 stands last for its terminology alone, where it is not the version's own package.
    const terminologyOnly = name === terminologyThen[0] && version !== 'R4';
    for (const each of await readAll(name, edition)) add(found, each, terminologyOnly);
  }
  const expanded = new Map<string, ValueSet>();
  for (const each of await readAll(expansions.name, expansions.version)) {
    if (each.resourceType === 'ValueSet') expanded.set(each.url, each);
  }
  const packages = [...sources, [expansions.name, expansions.version] as const];
  return {
    version,
    packages: packages.map((each) => each.join('@')),
    ...found,
    expansions: expanded,
  };
}

interface Found {
  readonly contexts: Map<string, Context[]>;
  readonly structures: Map<string, StructureDefinition>;
  readonly codeSystems: Map<string, CodeSystem[]>;
  readonly valueSets: Map<string, ValueSet>;
  readonly conceptMaps: ConceptMap[];
}

/** The first package that has a structure or value set wins; of code systems all editions are kept. */
function add(found: Found, each: Definition, terminologyOnly: boolean): void {
  const { url } = each;
  if (each.resourceType === 'StructureDefinition' && each.type === 'Extension') {
    const more = each.context ?? [];
    found.contexts.set(url, [...(found.contexts.get(url) ?? []), ...more]);
  }
  if (each.resourceType === 'CodeSystem') {
    found.codeSystems.set(url, [...(found.codeSystems.get(url) ?? []), each]);
  } else if (each.resourceType === 'ValueSet') {
    if (!found.valueSets.has(url)) found.valueSets.set(url, each);
  } else if (each.resourceType === 'ConceptMap') {
    if (!terminologyOnly) found.conceptMaps.push(each);
  } else if (!terminologyOnly && !found.structures.has(url)) {
    found.structures.set(url, each);
  }
}

type Definition = StructureDefinition | CodeSystem | ValueSet | ConceptMap;

async function readAll(name: string, version: string): Promise<Definition[]> {
  const folder = await published(name, version);
  const files = (await readdir(folder)).filter((file) =>
    /^(StructureDefinition|CodeSystem|ValueSet|ConceptMap)-.*\.json$/.test(file),
  );
  const found: Definition[] = [];
  for (const file of files.sort()) {
    // A published file, held to its digest: its shape is known.
    found.push(JSON.parse(await readFile(join(folder, file), 'utf8')) as Definition);
  }
  return found;
}

export function structureUrl(type: string): string {
  return `http://hl7.org/fhir/StructureDefinition/${type}`;
}
