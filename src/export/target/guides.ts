import type { Examiner, HumanName, Organization, Subject } from '../../model/people.ts';

/** A guide whose profiles the export can claim; all are guides of R4. */
export type Target = 'us-core' | 'ips' | 'au-base' | 'uk-core';

/** What a guide asks for and an exam need not state. */
interface Need<Part> {
  /** Name of the property of the exam. */
  readonly property: string;
  readonly isMet: (part: Part) => boolean;
}

export interface Guide {
  /** It asks of a role for contact details, which an exam does not have: people act without roles. */
  readonly withoutRoles?: true;
  /** It takes no record that was entered in error. */
  readonly withoutErrors?: true;
  /** Profile by type of resource. */
  readonly profiles: Readonly<Record<string, string>>;
  readonly needs: {
    readonly patient?: readonly Need<Subject>[];
    readonly practitioner?: readonly Need<Examiner>[];
    readonly organization?: readonly Need<Organization>[];
  };
}

const usCore = 'http://hl7.org/fhir/us/core/StructureDefinition/us-core';
const ips = 'http://hl7.org/fhir/uv/ips/StructureDefinition';
const auBase = 'http://hl7.org.au/fhir/StructureDefinition/au';
const ukCore = 'https://fhir.hl7.org.uk/StructureDefinition/UKCore';

/**
 * What tests/export/targets holds of each guide is where these come from: US Core 9.0.0, IPS 2.0.0,
 * AU Base 6.0.0 and UK Core 2.0.0. What a profile asks for and every export has is not a need.
 */
export const guides: Readonly<Record<Target, Guide>> = {
  'us-core': {
    withoutRoles: true,
    profiles: {
      Patient: `${usCore}-patient`,
      Practitioner: `${usCore}-practitioner`,
      Organization: `${usCore}-organization`,
      Encounter: `${usCore}-encounter`,
      DiagnosticReport: `${usCore}-diagnosticreport-note`,
      Observation: `${usCore}-simple-observation`,
    },
    needs: {
      patient: [
        { property: 'identifiers', isMet: ({ identifiers }) => identifiers !== undefined },
        { property: 'name.family', isMet: ({ name }) => isNamed(name, ['family', 'given']) },
      ],
      practitioner: [
        { property: 'name.family', isMet: ({ name }) => isNamed(name, ['family']) },
        {
          property: 'identifiers',
          // Whoever is known by nothing else has an identifier within the exam.
          isMet: ({ identifiers, reference }) =>
            identifiers !== undefined || reference === undefined,
        },
      ],
      organization: [{ property: 'name', isMet: ({ name }) => name !== undefined }],
    },
  },
  // An exam is not a patient summary: what a summary takes in of it is claimed, and not the document.
  ips: {
    withoutErrors: true,
    profiles: {
      Patient: `${ips}/Patient-uv-ips`,
      Practitioner: `${ips}/Practitioner-uv-ips`,
      PractitionerRole: `${ips}/PractitionerRole-uv-ips`,
      Organization: `${ips}/Organization-uv-ips`,
      Device: `${ips}/Device-observer-uv-ips`,
      DiagnosticReport: `${ips}/DiagnosticReport-uv-ips`,
    },
    needs: {
      patient: [
        { property: 'name', isMet: ({ name }) => isNamed(name, ['family', 'given', 'text']) },
        { property: 'birthDate', isMet: ({ birthDate }) => birthDate !== undefined },
      ],
      practitioner: [{ property: 'name', isMet: ({ name }) => name !== undefined }],
      organization: [{ property: 'name', isMet: ({ name }) => name !== undefined }],
    },
  },
  'au-base': {
    profiles: {
      Patient: `${auBase}-patient`,
      Practitioner: `${auBase}-practitioner`,
      PractitionerRole: `${auBase}-practitionerrole`,
      Organization: `${auBase}-organization`,
      Encounter: `${auBase}-encounter`,
      DiagnosticReport: `${auBase}-diagnosticreport`,
      Observation: `${auBase}-diagnosticresult`,
      ServiceRequest: `${auBase}-servicerequest`,
      Composition: `${auBase}-composition`,
    },
    needs: {},
  },
  'uk-core': {
    profiles: {
      Patient: `${ukCore}-Patient`,
      Practitioner: `${ukCore}-Practitioner`,
      PractitionerRole: `${ukCore}-PractitionerRole`,
      Organization: `${ukCore}-Organization`,
      Encounter: `${ukCore}-Encounter`,
      DiagnosticReport: `${ukCore}-DiagnosticReport`,
      Observation: `${ukCore}-Observation`,
      ServiceRequest: `${ukCore}-ServiceRequest`,
      Composition: `${ukCore}-Composition`,
      Device: `${ukCore}-Device`,
    },
    needs: {},
  },
};

function isNamed(name: HumanName | undefined, parts: readonly (keyof HumanName)[]): boolean {
  return parts.some((part) => name?.[part] !== undefined);
}

export const targets = Object.keys(guides).filter(isTarget);

export function isTarget(name: string): name is Target {
  return Object.hasOwn(guides, name);
}
