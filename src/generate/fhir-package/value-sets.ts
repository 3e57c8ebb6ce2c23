import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { kebab } from '../terminology/languages.ts';
import type { TableFile } from '../terminology/terminology-check.ts';
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
    set(id, title, { concept: list.map(({ code, display }) => ({ code, display })) });
  const rows = concepts.filter(({ code, row }) => code === row);
  const parts = [...groups(table, concepts)].map(([part, list]) =>
    listed(`${name}-${part.replaceAll('.', '-')}`, `${file.title}: ${part}`, list),
  );
  return [
    set(name, file.title, {}),
    ...(rows.length < concepts.length
      ? [listed(`${name}-rows`, `${file.title}, without values and sides`, rows)]
      : []),
    ...parts,
  ];
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
