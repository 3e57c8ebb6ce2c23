/**
 * Where our verdict on a broken example is another than that of HL7's validator, as its chain stands in
 * record.ts, and who is right by the words of the specification. A difference that no row tells fails
 * the suite.
 */
export interface Difference {
  /** `refused`: by us alone; `accepted`: by us alone. */
  readonly we: 'refused' | 'accepted';
  /** What we say (code and reason), or the name of the reference's error. */
  readonly says: RegExp;
  /** Only where we said that not all was checked. */
  readonly unchecked?: true;
  /** Only in resources of a type that this entry does not look into. */
  readonly otherType?: true;
  /** Only in cases of these names. */
  readonly cases?: RegExp;
  readonly right: 'we' | 'reference' | 'open';
  readonly why: string;
}

export const differences: readonly Difference[] = [
  {
    we: 'refused',
    says: /^wrong-target /,
    right: 'we',
    why: 'The type of a resource stands in a literal reference, and must be one that the element takes: https://hl7.org/fhir/R4/references.html#literal. The chain looks only at what it can fetch.',
  },
  {
    we: 'refused',
    says: /^unknown-code check-digit$/,
    right: 'we',
    why: 'Ids of SNOMED CT and LOINC codes have check digits; the chain holds neither system.',
  },
  {
    we: 'refused',
    says: /^unknown-code (?:required-set|system)$/,
    right: 'we',
    why: 'The value set lists its codes, or the system is held: https://hl7.org/fhir/R4/terminologies.html#required. The chain does not work out sets of systems that it lacks.',
  },
  {
    we: 'refused',
    says: /^missing-property bound-code$/,
    right: 'we',
    why: 'A required binding needs a code: https://hl7.org/fhir/R4/terminologies.html#required. The chain passes a concept without one where it cannot work out the set.',
  },
  {
    we: 'refused',
    says: /^unknown-unit ucum-code$/,
    right: 'we',
    why: 'No code of the grammar of UCUM: https://ucum.org/ucum.',
  },
  {
    we: 'refused',
    says: /^missing-property profile$/,
    right: 'we',
    why: 'No entry fits the profile that a required slice names, since what was removed is 1..1 in it: https://hl7.org/fhir/R4/profiling.html#discriminator. The chain matches these slices by type alone.',
  },
  {
    we: 'refused',
    says: /^too-many profile$/,
    right: 'we',
    why: 'Every reference is to a resource of the slice by its type, and there are more than the slice takes.',
  },
  {
    we: 'accepted',
    says: /^(?:Terminology_|Extension_|Validation_|Unrecognized|Reference_|CONTAINED|SLICING|[A-Za-z0-9-]+#)/,
    otherType: true,
    right: 'reference',
    why: 'A fault against the base of a type that this entry does not look into; it says so, with a warning for the resource.',
  },
  {
    we: 'accepted',
    says: /^Terminology_/,
    right: 'open',
    why: 'A Coding without code, or of a system that is not held here, under a binding that is not required: no rule asks for a code there. https://hl7.org/fhir/R4/datatypes.html#Coding',
  },
  {
    we: 'accepted',
    says: /^Validation_VAL_Profile_NotSlice/,
    unchecked: true,
    right: 'open',
    why: 'References that lead out of what is at hand, in a closed slicing by profile: said to be unchecked.',
  },
  {
    we: 'accepted',
    says: /^Extension_EXT_Version_Invalid/,
    right: 'reference',
    why: 'An extension of another FHIR version, named by a URL that no element of that version has; its definition is not held, which is said: https://hl7.org/fhir/R4/versions.html#extensions',
  },
];
