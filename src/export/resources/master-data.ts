import type { Reference } from 'fhir/r4.js';
import { searchToken } from '../../fhir/names/search-token.ts';
import type { HumanName } from '../../model/people.ts';
import type { Identifier } from '../../model/primitive.ts';

/**
 * How a person, place or device of the exam meets what a server holds, where the exam gives no
 * reference to it. `match`: the server looks for the identifier, and what it finds stays as it is;
 * only what is not there is made. `reference`: it is there, and is referred to by its identifier;
 * nothing is sent. `own`: it is ours to write, and what is there is replaced by what the exam says.
 * What has no identity beyond the exam is written under an id of the exam.
 * @see https://hl7.org/fhir/R4/http.html#ccreate and https://hl7.org/fhir/R4/http.html#trules
 */
export type MasterDataMode = 'match' | 'reference' | 'own';

/** The same for each kind on its own; `match` for a kind that is left out. */
export interface MasterData {
  readonly patient?: MasterDataMode;
  /** Also of the roles in which practitioners examined; those are never only referred to. */
  readonly practitioner?: MasterDataMode;
  readonly organization?: MasterDataMode;
  readonly encounter?: MasterDataMode;
  readonly device?: MasterDataMode;
}

export type MasterDataKind = keyof MasterData;

export const masterDataKinds: readonly MasterDataKind[] = [
  'patient',
  'practitioner',
  'organization',
  'encounter',
  'device',
];

const kinds: ReadonlyMap<string, MasterDataKind> = new Map([
  ['Patient', 'patient'],
  ['Practitioner', 'practitioner'],
  ['PractitionerRole', 'practitioner'],
  ['Organization', 'organization'],
  ['Encounter', 'encounter'],
  ['Device', 'device'],
]);

/** The kind of master data that resources of a type are. */
export function masterDataKindOf(resourceType: string): MasterDataKind | undefined {
  return kinds.get(resourceType);
}

export function masterDataMode(
  given: MasterDataMode | MasterData | undefined,
  kind: MasterDataKind,
): MasterDataMode {
  return (typeof given === 'object' ? given[kind] : given) ?? 'match';
}

/** A person, place or thing that the exam describes, or that the receiver holds already. */
export interface Stated {
  readonly reference?: string;
  readonly identifiers?: readonly Identifier[];
  readonly name?: HumanName | string;
}

/** A reference to what the receiver holds, with the little that a reference can say of it. */
export function existingReference(stated: Stated | undefined): Reference | undefined {
  return stated?.reference === undefined ? undefined : referenceTo(stated, stated.reference);
}

/** A reference by the first identifier, which a server replaces by what it finds. */
export function conditionalReference(type: string, stated: Stated): Reference | undefined {
  const identifier = stated.identifiers?.[0];
  return identifier && referenceTo(stated, `${type}?identifier=${searchToken(identifier)}`);
}

/** An optional property that a caller left undefined is not there. */
export function asIdentifier({ use, ...given }: Identifier): Identifier {
  return use === undefined ? given : { ...given, use };
}

function referenceTo({ identifiers, name }: Stated, reference: string): Reference {
  const identifier = identifiers?.[0];
  const display = typeof name === 'object' ? name.text : name;
  return {
    reference,
    ...(identifier && { identifier: asIdentifier(identifier) }),
    ...(display !== undefined && { display }),
  };
}
