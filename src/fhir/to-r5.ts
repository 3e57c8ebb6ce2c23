import type * as r4 from 'fhir/r4';
import type * as r5 from 'fhir/r5';

/**
 * A resource that we build in R4 form, in the form of R5. Only what differs for the elements that
 * this library writes is changed here; Media is replaced by DocumentReference where it is made.
 * @see https://hl7.org/fhir/R5/diff.html
 */
export function toR5(resource: r4.FhirResource): r5.FhirResource {
  switch (resource.resourceType) {
    case 'Encounter':
      return encounter(resource);
    case 'Device':
      return device(resource);
    case 'Provenance':
      return provenance(resource);
    case 'ServiceRequest':
      return serviceRequest(resource);
    case 'Composition':
      return composition(resource);
    default:
      // The other types that we write have the same elements in both versions.
      return resource as r5.FhirResource;
  }
}

function encounter({ class: kind, status, ...rest }: r4.Encounter): r5.Encounter {
  const { extension, ...coding } = kind;
  return {
    ...(rest as Omit<r5.Encounter, 'status'>), // identifier, subject, serviceProvider: unchanged
    status: status === 'finished' ? 'completed' : 'unknown',
    // An absent class is an extension in R4, where it is required, and left out in R5.
    ...(extension === undefined && { class: [{ coding: [coding] }] }),
  };
}

function device({ type, property, ...rest }: r4.Device): r5.Device {
  return {
    ...(rest as r5.Device), // identifier, serialNumber, note, text: unchanged
    ...(type && { type: [type] }),
    ...(property && {
      property: property.flatMap(({ type: name, valueQuantity = [] }) =>
        valueQuantity.map((value) => ({ type: name, valueQuantity: value })),
      ),
    }),
  };
}

function provenance({ reason, ...rest }: r4.Provenance): r5.Provenance {
  return {
    ...(rest as r5.Provenance), // target, recorded, activity, agent, entity: unchanged
    ...(reason && { authorization: reason.map((concept) => ({ concept })) }),
  };
}

function serviceRequest({ code, reasonReference, ...rest }: r4.ServiceRequest): r5.ServiceRequest {
  return {
    ...(rest as r5.ServiceRequest), // the other elements that we write: unchanged
    ...(code && { code: { concept: code } }),
    ...(reasonReference && { reason: reasonReference.map((reference) => ({ reference })) }),
  };
}

function composition({
  subject,
  identifier,
  attester,
  ...rest
}: r4.Composition): r5.Composition {
  const system = 'http://hl7.org/fhir/composition-attestation-mode';
  return {
    ...(rest as Omit<r5.Composition, 'subject'>), // type, date, author, title, section: unchanged
    ...(identifier && { identifier: [identifier] }),
    ...(subject && { subject: [subject] }),
    ...(attester && {
      attester: attester.map(({ mode, ...who }) => ({
        ...who,
        mode: { coding: [{ system, code: mode }] },
      })),
    }),
  };
}
