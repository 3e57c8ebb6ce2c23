import { loincCopyright, snomedCopyright } from '../../fhir/licence/copyright.ts';
import { snomedMayLeave } from '../../fhir/licence/snomed-policy.ts';
import { mappingsBeside } from '../../fhir/mapped.ts';
import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { DATA_ABSENT_REASON } from '../../fhir/names/systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { kebab } from '../../terminology/named-table.ts';
import { standardSystems } from '../../terminology/system-names.ts';
import type { TableFile, Tables } from '../terminology/terminology-check.ts';
import type { PackageConcept } from './concepts.ts';
import { type Definition, head, ownCopyright, type PackageOrder } from './head.ts';

/**
 * The value sets of a table: all of its codes, the rows alone where rows hold values or sides, and
 * the values of each row that has some. Values of items are grouped by the item they answer:
 * `values-presence`.
 */
export function valueSets(
  order: PackageOrder,
  table: TableName,
  file: TableFile,
  concepts: readonly PackageConcept[],
): Definition[] {
  const name = kebab(table);
  const set = (id: string, title: string, include: object): Definition => ({
    ...head(order, 'ValueSet', id, { title, version: file.version, description: `${title}.` }),
    copyright: ownCopyright,
    compose: { include: [{ system: codeSystemUrl(order.base, table), ...include }] },
  });
  const listed = (id: string, title: string, list: readonly PackageConcept[]): Definition =>
    withMapped(
      set(id, title, { concept: list.map(({ code, display }) => ({ code, display })) }),
      list,
    );
  const rows = concepts.filter(({ code, row }) => code === row);
  const parts = [...groups(table, concepts)].map(([part, list]) =>
    listed(`${name}-${part.replaceAll('.', '-')}`, `${file.title}: ${part}`, list),
  );
  return [
    withMapped(set(name, file.title, {}), concepts),
    ...(rows.length < concepts.length
      ? [listed(`${name}-rows`, `${file.title}, without values and sides`, rows)]
      : []),
    ...parts,
    ...(table === 'values' ? [unexamined(order, set, concepts)] : []),
  ];
}

/**
 * The published codes that an export writes beside ours stand in the set too: a server may ask that
 * every coding does, and not only one.
 */
function withMapped(set: Definition, list: readonly PackageConcept[]): Definition {
  const codes = new Map<string, Set<string>>();
  for (const { maps } of list) {
    for (const { system, code } of mappingsBeside(maps)) {
      if (system === 'snomed' && !snomedMayLeave('free-set', code)) continue;
      const url = standardSystems[system];
      codes.set(url, (codes.get(url) ?? new Set()).add(code));
    }
  }
  const beside = [...codes].map(([system, all]) => ({
    system,
    concept: [...all].sort().map((code) => ({ code })),
  }));
  const { compose } = set as unknown as { compose: { include: object[] } }; // made above
  const copyright = [
    ownCopyright,
    ...(codes.has(standardSystems.snomed) ? [snomedCopyright] : []),
    ...(codes.has(standardSystems.loinc) ? [loincCopyright] : []),
  ].join(' ');
  return { ...set, copyright, compose: { include: [...compose.include, ...beside] } };
}

/**
 * A group of regions with all that is part of it: by its hierarchy, so that a region which comes later
 * is in it.
 */
export function regionSets(order: PackageOrder, tables: Tables): Definition[] {
  const file = tables['regions'];
  const groups = file?.concepts.filter(({ group }) => group === true) ?? [];
  return groups.map(({ code, display }) => {
    const title = `${display}, with all that is part of it`;
    const filter = [{ property: 'concept', op: 'is-a', value: code }];
    return {
      ...head(order, 'ValueSet', `regions-below-${code}`, {
        title,
        version: file?.version ?? '',
        description: `${title}.`,
      }),
      copyright: ownCopyright,
      compose: { include: [{ system: codeSystemUrl(order.base, 'regions'), filter }] },
    };
  });
}

/** Why a region was not examined: its state, our reason, and HL7's. */
function unexamined(
  order: PackageOrder,
  set: (id: string, title: string, include: object) => Definition,
  concepts: readonly PackageConcept[],
): Definition {
  const states = concepts.filter(({ code }) => code.startsWith('state.'));
  const concept = states.map(({ code, display }) => ({ code, display }));
  const made = set('values-state-reasons', 'Why a region was not examined', { concept });
  const { compose } = made as unknown as { compose: { include: object[] } }; // made above
  const reasons = { system: codeSystemUrl(order.base, 'reasons') };
  return {
    ...made,
    compose: { include: [...compose.include, reasons, { system: DATA_ABSENT_REASON }] },
  };
}

/** Codes by the row or item that they are values of. */
function groups(
  table: TableName,
  concepts: readonly PackageConcept[],
): ReadonlyMap<string, readonly PackageConcept[]> {
  const found = new Map<string, PackageConcept[]>();
  for (const concept of concepts) {
    const part = table === 'values' ? concept.code.split('.')[0] : concept.value && concept.row;
    if (part === undefined) continue;
    const list = found.get(part) ?? [];
    list.push(concept);
    found.set(part, list);
  }
  return found;
}
