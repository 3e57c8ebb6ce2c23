/**
 * The value set of the laterality extension prints fully specified names: `Right (qualifier value)`.
 * @see http://hl7.org/fhir/ValueSet/structure-laterality-vs (extensions pack 5.3.0)
 */
export function lateralityDisplay(term: string | undefined): { readonly display?: string } {
  return term === undefined ? {} : { display: `${term} (qualifier value)` };
}
