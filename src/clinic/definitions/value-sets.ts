import type { Coding, ValueSet, ValueSetComposeInclude } from 'fhir/r4.js';
import { exportSettings } from '../../export/context.ts';
import { loincCopyright, snomedCopyright } from '../../fhir/licence/copyright.ts';
import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { pascal } from '../../fhir/names/definition-names.ts';
import { CANONICAL_BASE, DATA_ABSENT_REASON, LOINC, SNOMED } from '../../fhir/names/systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { exportedCodes } from '../../terminology/exported-codes.ts';
import { kebab, tableOf, tablesByName } from '../../terminology/named-table.ts';
import type { Clinic } from '../clinic.ts';
import { ownRows } from '../own-rows.ts';

/**
 * The value sets of the guide to which a clinic adds codes, with all that its exports write there: our
 * codes and its own, the published ones beside them that its policy lets out, and those of its code
 * map. Each has the id and URL that it has in the guide and takes its place.
 */
export function clinicValueSets(clinic: Clinic): readonly ValueSet[] {
  const { catalogue: additions, codeMap = [] } = clinic.file;
  const base = clinic.file.canonicalBase ?? CANONICAL_BASE;
  const tableNames = tablesByName(clinic.catalogue);
  const tables = new Set([
    ...(additions === undefined ? [] : ownRows(additions).map(({ table }) => table)),
    ...codeMap.flatMap(({ source }) => tableOf(source, base, tableNames) ?? []),
  ]);
  const writer = setWriter(clinic);
  return [...tables].flatMap((table) => {
    const include = [...writer.ours(table), ...writer.others(table)];
    return [
      writer.set(kebab(table), include),
      ...(table === 'reasons' ? [writer.set('values-state-reasons', writer.absence(include))] : []),
    ];
  });
}

interface SetWriter {
  readonly set: (id: string, include: readonly ValueSetComposeInclude[]) => ValueSet;
  /** All built-in codes of a table, and the clinic's own. */
  readonly ours: (table: TableName) => readonly ValueSetComposeInclude[];
  /** What stands beside them in a record. */
  readonly others: (table: TableName) => readonly ValueSetComposeInclude[];
  /** With it what else says why a region was not examined. */
  readonly absence: (
    reasons: readonly ValueSetComposeInclude[],
  ) => readonly ValueSetComposeInclude[];
}

function setWriter(clinic: Clinic): SetWriter {
  const { file, catalogue } = clinic;
  const base = file.canonicalBase ?? CANONICAL_BASE;
  const { coder } = exportSettings(clinic.export);
  const ownSystem = file.catalogue?.system;
  const tableNames = tablesByName(catalogue);

  const beside = (table: TableName): Coding[] => {
    const codings = exportedCodes(catalogue, table).flatMap(({ code, row, value, side }) => {
      if (side !== undefined) return coder.besideSide(row, code, false);
      const all =
        value === undefined
          ? coder.codings(table, row)
          : (coder.valueConcept(table, row, value).coding ?? []);
      return all.slice(1);
    });
    // A code of a measure can stand for one unit alone.
    const ofUnits = (file.codeMap ?? []).flatMap(({ source, code, unit }) =>
      unit !== undefined && tableOf(source, base, tableNames) === table
        ? coder.unitCodings(code, unit, false)
        : [],
    );
    return [...codings, ...ofUnits];
  };

  return {
    set: (id, include) => ({
      resourceType: 'ValueSet',
      id,
      url: `${base}/ValueSet/${id}`,
      name: `Clinic${pascal(id)}`,
      title: file.name === undefined ? id : `${id}, ${file.name}`,
      status: 'active',
      ...copyrightOf(include),
      compose: { include: [...include] },
    }),
    ours: (table) => {
      const own = exportedCodes(catalogue, table).filter(({ row }) => isOwn(table, row, clinic));
      return [
        ...(builtInCatalogue[table].size === 0 ? [] : [{ system: codeSystemUrl(base, table) }]),
        ...(own.length === 0 || ownSystem === undefined
          ? []
          : [
              {
                system: ownSystem,
                concept: own.map(({ code, display }) => ({ code, display })),
              },
            ]),
      ];
    },
    others: (table) => bySystem(beside(table)),
    absence: (reasons) => {
      const states = exportedCodes(catalogue, 'values').filter(({ code }) =>
        code.startsWith('state.'),
      );
      return [
        {
          system: codeSystemUrl(base, 'values'),
          concept: states.map(({ code, display }) => ({ code, display })),
        },
        ...reasons,
        { system: DATA_ABSENT_REASON },
      ];
    },
  };
}

function isOwn(table: TableName, row: string, { catalogue }: Clinic): boolean {
  return catalogue[table].get(row)?.system !== undefined;
}

function bySystem(codings: readonly Coding[]): readonly ValueSetComposeInclude[] {
  const codes = new Map<string, Set<string>>();
  for (const { system = '', code = '' } of codings) {
    codes.set(system, (codes.get(system) ?? new Set()).add(code));
  }
  return [...codes].map(([system, all]) => ({
    system,
    concept: [...all].sort().map((code) => ({ code })),
  }));
}

function copyrightOf(include: readonly ValueSetComposeInclude[]): { readonly copyright?: string } {
  const systems = new Set(include.map(({ system }) => system));
  const parts = [
    ...(systems.has(SNOMED) ? [snomedCopyright] : []),
    ...(systems.has(LOINC) ? [loincCopyright] : []),
  ];
  return parts.length === 0 ? {} : { copyright: parts.join(' ') };
}
