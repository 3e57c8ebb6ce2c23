import type * as r4 from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import { BODY_SITE_EXTENSION } from './names/systems.ts';

/**
 * A resource that we build in R4 form, in the form of R5. Only what differs for the elements that
 * this library writes is changed here; Media is replaced by DocumentReference where it is made.
 * @see https://hl7.org/fhir/R5/diff.html
 */
export function toR5(resource: r4.FhirResource): r5.FhirResource {
  // The data types we write are alike in both versions; their typings differ in Extension alone.
  return changed(resource) as r5.FhirResource;
}

function changed(resource: r4.FhirResource): object {
  switch (resource.resourceType) {
    case 'Encounter':
      return encounter(resource);
    case 'Device':
      return device(resource);
    case 'DetectedIssue':
      return detectedIssue(resource);
    case 'Provenance':
      return provenance(resource);
    case 'ServiceRequest':
      return serviceRequest(resource);
    case 'Observation':
      return observation(resource);
    case 'BodyStructure':
      return bodyStructure(resource);
    case 'Composition':
      return composition(resource);
    case 'DiagnosticReport':
      return report(resource);
    case 'DocumentReference':
      return documentReference(resource);
    default:
      return resource;
  }
}

/** R5 has an element for what is an extension of the body site in R4; obs-8 allows one of the two. */
function observation(resource: r4.Observation): object {
  const extensions = resource.bodySite?.extension;
  const placed = extensions?.find(({ url }) => url === BODY_SITE_EXTENSION);
  if (placed?.valueReference === undefined) return resource;
  const { bodySite: _, ...rest } = resource;
  return { ...rest, bodyStructure: placed.valueReference };
}

function bodyStructure({ location, locationQualifier, ...rest }: r4.BodyStructure): object {
  const [laterality, ...qualifier] = locationQualifier ?? [];
  const included = {
    structure: location,
    ...(laterality && { laterality }),
    ...(qualifier.length > 0 && { qualifier }),
  };
  return { ...rest, ...(location && { includedStructure: [included] }) };
}

function encounter({ class: kind, status, ...rest }: r4.Encounter): object {
  const { extension, ...coding } = kind;
  return {
    ...rest,
    status: status === 'finished' ? 'completed' : status,
    // An absent class is an extension in R4, where it is required, and left out in R5.
    ...(extension === undefined && { class: [{ coding: [coding] }] }),
  };
}

function device({ type, ...rest }: r4.Device): object {
  return { ...rest, ...(type && { type: [type] }) };
}

function detectedIssue({ patient, ...rest }: r4.DetectedIssue): object {
  return { ...rest, ...(patient && { subject: patient }) };
}

function provenance({ reason, ...rest }: r4.Provenance): object {
  return { ...rest, ...(reason && { authorization: reason.map((concept) => ({ concept })) }) };
}

function serviceRequest({ code, reasonReference, ...rest }: r4.ServiceRequest): object {
  return {
    ...rest,
    ...(code && { code: { concept: code } }),
    ...(reasonReference && { reason: reasonReference.map((reference) => ({ reference })) }),
  };
}

function composition({ subject, identifier, attester, ...rest }: r4.Composition): object {
  const system = 'http://hl7.org/fhir/composition-attestation-mode';
  return {
    ...rest,
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

function report({ presentedForm, ...rest }: r4.DiagnosticReport): object {
  return { ...rest, ...(presentedForm && { presentedForm: presentedForm.map(attachment) }) };
}

/** The size is an integer64, which JSON holds as text. @see https://hl7.org/fhir/R5/datatypes.html#integer64 */
function attachment({ size, ...rest }: r4.Attachment): object {
  return { ...rest, ...(size !== undefined && { size: String(size) }) };
}

/** What the document is of stands in R5 as its event; its context is the visit. */
function documentReference({ context, content, ...rest }: r4.DocumentReference): object {
  const { encounter, period, related } = context ?? {};
  return {
    ...rest,
    ...(encounter && { context: encounter }),
    ...(related && { event: related.map((reference) => ({ reference })) }),
    ...(period && { period }),
    content: content.map((one) => ({ ...one, attachment: attachment(one.attachment) })),
  };
}
