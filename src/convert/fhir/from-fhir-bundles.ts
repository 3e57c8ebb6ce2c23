import { convertWithin } from '../exams/convert-as.ts';
import { type ConvertResult, convertRecords } from '../exams/convert-text.ts';
import { noFields } from '../exams/ledger.ts';
import type { FhirMapping } from '../mapping/fhir-mapping.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import { fhirConversion } from './conversion.ts';

/**
 * Converts FHIR Bundles of any system to exams. A bundle of this library gives back the exam that it was
 * made from; of others an observation becomes a sign or a measurement only where its codes mean exactly one
 * of ours, and otherwise a note. Data never makes it throw.
 *
 * @param text Bundles, decoded: JSON, a Bundle a line, or XML, as the mapping says.
 * @param mapping How they are read, and what bundles of others do not say.
 * @param options The catalogue and the budget.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each element. A
 *   mapping that is wrong gives issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = fromFhirBundles(text, {
 *   format: 'face-neck-mapping/1',
 *   source: { syntax: 'fhir' },
 * });
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 */
export function fromFhirBundles(
  text: string,
  mapping: FhirMapping,
  options: MappingOptions = {},
): ConvertResult {
  return convertWithin(text, options, () => {
    const { value: conversion, issues } = fhirConversion(mapping, options);
    if (conversion === undefined) {
      return { exams: [], quarantine: [], ledger: noFields, issues };
    }
    const result = convertRecords(text, conversion, conversion.convert);
    return { ...result, issues: [...issues, ...result.issues] };
  });
}
