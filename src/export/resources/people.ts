import type {
  Encounter,
  FhirResource,
  HumanName,
  Identifier,
  Organization,
  Patient,
  Practitioner,
  PractitionerRole,
  Reference,
} from 'fhir/r4.js';
import { encounterClass } from '../../fhir/encounter-class.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { ABSENT_EXTENSION, ACT_CODE } from '../../fhir/names/systems.ts';
import type * as model from '../../model/people.ts';
import type { Identifier as StatedIdentifier } from '../../model/primitive.ts';
import { hl7Display } from '../../terminology/published/hl7.ts';
import type { ExportContext } from '../context.ts';
import { existingReference } from './existing.ts';
import { summary } from './narrative.ts';

/** Patient, Practitioner, PractitionerRole, Organization and Encounter: each one that is not a reference already. */
export function peopleResources(context: ExportContext): FhirResource[] {
  const { exam } = context;
  const resources: FhirResource[] = [];
  if (exam.subject.reference === undefined) resources.push(patient(context, exam.subject));
  if (exam.organization !== undefined && exam.organization.reference === undefined) {
    resources.push(organization(context, exam.organization));
  }
  for (const examiner of exam.examiners) {
    if (examiner.reference === undefined) resources.push(practitioner(context, examiner));
    if (examiner.role !== undefined) resources.push(role(context, examiner));
  }
  if (exam.encounter !== undefined && exam.encounter.reference === undefined) {
    resources.push(encounter(context, exam.encounter));
  }
  return resources;
}

export function organizationReference({ exam, reference }: ExportContext): Reference | undefined {
  const { organization: stated } = exam;
  return stated && (existingReference(stated) ?? reference(resourceName.organization));
}

function patient(context: ExportContext, subject: model.Subject): Patient {
  return {
    resourceType: 'Patient',
    id: context.id(resourceName.patient),
    ...summary(context, [
      nameText(subject.name),
      subject.birthDate,
      ...(subject.identifiers ?? []).map(({ value }) => value),
    ]),
    ...identified(subject.identifiers),
    ...(subject.name && { name: [humanName(subject.name)] }),
    ...(subject.gender !== undefined && { gender: subject.gender }),
    ...(subject.birthDate !== undefined && { birthDate: subject.birthDate }),
  };
}

function practitioner(context: ExportContext, examiner: model.Examiner): Practitioner {
  return {
    resourceType: 'Practitioner',
    id: context.id(resourceName.practitioner(examiner.key)),
    ...summary(context, [nameText(examiner.name) ?? examiner.key]),
    identifier: [
      context.statementIdentifier(partName.examiner(examiner.key)),
      ...(identified(examiner.identifiers).identifier ?? []),
    ],
    ...(examiner.name && { name: [humanName(examiner.name)] }),
  };
}

function role(context: ExportContext, examiner: model.Examiner): PractitionerRole {
  const works = organizationReference(context);
  return {
    resourceType: 'PractitionerRole',
    id: context.id(resourceName.role(examiner.key)),
    ...summary(context, [nameText(examiner.name) ?? examiner.key, examiner.role]),
    identifier: [context.statementIdentifier(partName.examiner(examiner.key))],
    practitioner:
      existingReference(examiner) ?? context.reference(resourceName.practitioner(examiner.key)),
    ...(works && { organization: works }),
    code: [{ text: examiner.role ?? '' }],
  };
}

function organization(context: ExportContext, stated: model.Organization): Organization {
  return {
    resourceType: 'Organization',
    id: context.id(resourceName.organization),
    ...summary(context, [stated.name, ...(stated.identifiers ?? []).map(({ value }) => value)]),
    ...identified(stated.identifiers),
    ...(stated.name !== undefined && { name: stated.name }),
  };
}

/** R4 form; the version adapter turns it into R5's. */
function encounter(context: ExportContext, stated: model.Encounter): Encounter {
  const code = stated.class === undefined ? undefined : encounterClass[stated.class];
  const works = organizationReference(context);
  return {
    resourceType: 'Encounter',
    id: context.id(resourceName.encounter),
    ...summary(context, [
      code === undefined ? undefined : hl7Display(ACT_CODE, code),
      ...(stated.identifiers ?? []).map(({ value }) => value),
    ]),
    ...identified(stated.identifiers),
    // Whether the visit as a whole is over is not ours to say.
    status: 'unknown',
    class:
      code === undefined
        ? { extension: [{ url: ABSENT_EXTENSION, valueCode: 'unknown' }] }
        : { system: ACT_CODE, code, display: hl7Display(ACT_CODE, code) },
    subject: context.subject,
    ...(works && { serviceProvider: works }),
  };
}

function identified(identifiers: readonly StatedIdentifier[] | undefined): {
  identifier?: Identifier[];
} {
  return identifiers === undefined
    ? {}
    : { identifier: identifiers.map((given) => ({ ...given })) };
}

function nameText(name: model.HumanName | undefined): string | undefined {
  if (name === undefined) return undefined;
  const { text, prefix, given = [], family } = name;
  return text ?? [prefix, ...given, family].filter((part) => part !== undefined).join(' ');
}

function humanName({ family, given, prefix, text }: model.HumanName): HumanName {
  return {
    ...(text !== undefined && { text }),
    ...(family !== undefined && { family }),
    ...(given !== undefined && { given: [...given] }),
    ...(prefix !== undefined && { prefix: [prefix] }),
  };
}
