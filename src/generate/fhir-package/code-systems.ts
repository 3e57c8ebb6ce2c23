import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { issueCodes } from '../../issues/codes.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { kebab } from '../../terminology/named-table.ts';
import type { TableFile } from '../terminology/terminology-check.ts';
import type { PackageConcept } from './concepts.ts';
import { type Definition, head, ownCopyright, type PackageOrder } from './head.ts';
import { nested } from './hierarchy.ts';

const standard = 'http://hl7.org/fhir/concept-properties';

/** Properties that concepts of our tables have. */
const properties = [
  {
    code: 'parent',
    uri: `${standard}#parent`,
    description: 'What it is a part or a case of',
    type: 'code',
  },
  { code: 'order', description: 'Place in the order of the body', type: 'integer' },
  { code: 'section', description: 'Part of the examination that it is told with', type: 'Coding' },
  { code: 'region', description: 'Where it is found or done', type: 'Coding' },
  {
    code: 'laterality',
    description: 'How the place is divided: paired, crossing, midline, whole',
    type: 'string',
  },
  { code: 'side', description: "The patient's own side", type: 'string' },
  { code: 'usual', description: 'A usual appearance or result', type: 'boolean' },
  {
    code: 'disorder',
    description: 'Names a disease: stated only where the examiner asserts it',
    type: 'boolean',
  },
  { code: 'unit', description: 'UCUM unit in which the library computes', type: 'string' },
  {
    code: 'evidence',
    description: 'How sure the row is: read, second-hand, memory, common-practice',
    type: 'string',
  },
  { code: 'source', description: 'Where the row comes from', type: 'string' },
] as const;

type Property = { readonly code: string; readonly [value: string]: unknown };

/** A table as CodeSystem, with every code that an export can give. */
export function codeSystem(
  order: PackageOrder,
  table: TableName,
  file: TableFile,
  concepts: readonly PackageConcept[],
): Definition {
  const flat = concepts.map((concept) => conceptOf(order, concept));
  const made = table === 'regions' ? withSidesOfGroups(flat) : flat;
  const used = new Set(made.flatMap(({ property }) => property.map(({ code }) => code)));
  const description = `${file.title}. A code is never given another meaning and never used again.`;
  return {
    ...head(order, 'CodeSystem', kebab(table), { ...file, description }),
    copyright: ownCopyright,
    caseSensitive: true,
    valueSet: `${order.base}/ValueSet/${kebab(table)}`,
    // A region means itself or a part of it, as a structure of SNOMED CT does: what is said of a part is said of it.
    ...(used.has('parent') && { hierarchyMeaning: table === 'regions' ? 'is-a' : 'grouped-by' }),
    compositional: false,
    versionNeeded: false,
    content: 'complete',
    count: made.length,
    property: properties.filter(({ code }) => used.has(code)),
    concept: table === 'regions' ? nested(made) : made,
  };
}

/** The left upper lid is a part of the left eye too. */
function withSidesOfGroups(concepts: readonly PrintedConcept[]): PrintedConcept[] {
  const known = new Set(concepts.map(({ code }) => code));
  const parents = new Map(concepts.map(({ code, property }) => [code, parentOf(property)]));
  return concepts.map((concept) => {
    const row = parentOf(concept.property);
    const above = row === undefined ? undefined : parents.get(row);
    const sided = `${above}${concept.code.slice(row?.length)}`;
    if (!concept.code.includes('.') || !known.has(sided)) return concept;
    return { ...concept, property: [...concept.property, { code: 'parent', valueCode: sided }] };
  });
}

function parentOf(properties: readonly Property[]): string | undefined {
  const found = properties.find(({ code }) => code === 'parent')?.['valueCode'];
  return typeof found === 'string' ? found : undefined;
}

interface PrintedConcept {
  readonly code: string;
  readonly display: string;
  readonly definition?: string;
  readonly designation?: PackageConcept['designations'];
  readonly property: readonly Property[];
}

function conceptOf(order: PackageOrder, concept: PackageConcept): PrintedConcept {
  const { code, display, definition, designations } = concept;
  return {
    code,
    display,
    ...(definition !== undefined && { definition }),
    ...(designations.length > 0 && { designation: designations }),
    property: propertiesOf(order, concept),
  };
}

function propertiesOf(order: PackageOrder, concept: PackageConcept): Property[] {
  const { code, row, side, value, source } = concept;
  if (code !== row) {
    return [
      { code: 'parent', valueCode: row },
      ...(side === undefined ? [] : [{ code: 'side', valueString: side }]),
      ...(value?.usual === true ? [{ code: 'usual', valueBoolean: true }] : []),
    ];
  }
  const coding = (table: TableName, of: unknown): object => ({
    valueCoding: { system: codeSystemUrl(order.base, table), code: String(of) },
  });
  const made: Property[] = [];
  const { parent, section, region } = source;
  if (parent !== undefined) made.push({ code: 'parent', valueCode: parent });
  if (typeof source.order === 'number') made.push({ code: 'order', valueInteger: source.order });
  if (section !== undefined) made.push({ code: 'section', ...coding('sections', section) });
  if (region !== undefined) made.push({ code: 'region', ...coding('regions', region) });
  for (const name of ['laterality', 'unit', 'evidence', 'source']) {
    if (source[name] !== undefined) made.push({ code: name, valueString: String(source[name]) });
  }
  for (const name of ['usual', 'disorder']) {
    if (source[name] === true) made.push({ code: name, valueBoolean: true });
  }
  return made;
}

/** The codes of our issues, which OperationOutcomes carry. */
export function issueCodeSystem(order: PackageOrder): Definition {
  const concept = Object.entries(issueCodes).map(([code, definition]) => ({
    code,
    display: code.replaceAll('-', ' '),
    definition,
  }));
  return {
    ...head(order, 'CodeSystem', 'issue-code', {
      title: 'Issues that the library reports',
      version: order.packageVersion,
      description: 'Codes of issues in details.coding of an OperationOutcome.',
    }),
    copyright: ownCopyright,
    caseSensitive: true,
    compositional: false,
    versionNeeded: false,
    content: 'complete',
    count: concept.length,
    concept,
  };
}
