import type { CodeSystem } from 'fhir/r4.js';
import { exportedCodes } from '../../terminology/exported-codes.ts';
import type { Clinic } from '../clinic.ts';
import { ownRows } from '../own-rows.ts';

/**
 * The own codes of a clinic as a FHIR CodeSystem, for a server that looks codes up: each row, and every
 * code made from one with a value or a side, as exports write them. It has the same form in R4 and R5.
 *
 * @param clinic As `parseClinic` gave it.
 * @returns The resource, whose URL is `catalogue.system`; undefined where there are no own rows.
 * @example
 * const clinic = orThrow('read the clinic file', parseClinic({ format: 'face-neck-clinic/1' }));
 * const none = clinicCodeSystem(clinic);
 * @see https://hl7.org/fhir/R4/codesystem.html
 */
export function clinicCodeSystem({ file, catalogue }: Clinic): CodeSystem | undefined {
  const rows = file.catalogue === undefined ? [] : ownRows(file.catalogue);
  if (file.catalogue === undefined || rows.length === 0) return undefined;
  const tables = [...new Set(rows.map(({ table }) => table))];
  const concept = tables.flatMap((table) => {
    const own = new Set(rows.filter((row) => row.table === table).map(({ code }) => code));
    return exportedCodes(catalogue, table)
      .filter(({ row }) => own.has(row))
      .map(({ code, display, row, side }) => ({
        code,
        display,
        property: [
          { code: 'table', valueString: table },
          ...(code === row ? [] : [{ code: 'parent', valueCode: row }]),
          ...(side === undefined ? [] : [{ code: 'side', valueString: side }]),
        ],
      }));
  });
  return {
    resourceType: 'CodeSystem',
    id: 'clinic-codes',
    url: file.catalogue.system,
    name: 'ClinicCodes',
    ...(file.name !== undefined && { title: file.name }),
    status: 'active',
    caseSensitive: true,
    hierarchyMeaning: 'grouped-by',
    compositional: false,
    versionNeeded: false,
    content: 'complete',
    count: concept.length,
    property: [
      { code: 'table', description: 'Table of the catalogue', type: 'string' },
      {
        code: 'parent',
        uri: 'http://hl7.org/fhir/concept-properties#parent',
        description: 'The row that a value or a side belongs to',
        type: 'code',
      },
      { code: 'side', description: "The patient's own side", type: 'string' },
    ],
    concept,
  };
}
