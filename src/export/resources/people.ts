import type {
  Encounter,
  FhirResource,
  HumanName,
  Identifier,
  Meta,
  Organization,
  Patient,
  Practitioner,
  PractitionerRole,
  Reference,
} from 'fhir/r4.js';
import { encounterClass } from '../../fhir/encounter-class.ts';
import { identityIdentifier } from '../../fhir/names/identity.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { ABSENT_EXTENSION, ACT_CODE } from '../../fhir/names/systems.ts';
import type * as model from '../../model/people.ts';
import type { Identifier as StatedIdentifier } from '../../model/primitive.ts';
import { hl7Display } from '../../terminology/published/hl7.ts';
import type { ExportContext } from '../context.ts';
import { asIdentifier, type Stated } from './master-data.ts';
import { summary } from './narrative.ts';

/** Patient, Practitioner, PractitionerRole, Organization and Encounter: each one that the receiver is not said to hold. */
export function peopleResources(context: ExportContext): FhirResource[] {
  const { exam, outside } = context;
  const resources: FhirResource[] = [];
  if (!outside('patient', exam.subject)) resources.push(patient(context, exam.subject));
  if (exam.organization !== undefined && !outside('organization', exam.organization)) {
    resources.push(organization(context, exam.organization));
  }
  for (const examiner of exam.examiners) {
    if (!outside('practitioner', examiner)) resources.push(practitioner(context, examiner));
    if (examiner.role !== undefined) resources.push(role(context, examiner));
  }
  if (exam.encounter !== undefined && !outside('encounter', exam.encounter)) {
    resources.push(encounter(context, exam.encounter));
  }
  return resources;
}

export function organizationReference(context: ExportContext): Reference | undefined {
  const { organization: stated } = context.exam;
  if (stated === undefined) return undefined;
  return context.outside('organization', stated) ?? context.reference(resourceName.organization);
}

/** In a document, the record that the receiver holds of someone described there. */
function recordOf({ reference }: Stated): { readonly meta?: Meta } {
  return reference === undefined ? {} : { meta: { source: reference } };
}

function patient(context: ExportContext, subject: model.Subject): Patient {
  return {
    resourceType: 'Patient',
    id: context.id(resourceName.patient),
    ...recordOf(subject),
    ...summary(context, [
      nameText(subject.name),
      subject.birthDate,
      ...(subject.identifiers ?? []).map(({ value }) => value),
      subject.reference,
    ]),
    ...identified(subject.identifiers),
    ...(subject.name && { name: [humanName(subject.name)] }),
    ...(subject.gender !== undefined && { gender: subject.gender }),
    ...(subject.birthDate !== undefined && { birthDate: subject.birthDate }),
  };
}

function practitioner(context: ExportContext, examiner: model.Examiner): Practitioner {
  const name = resourceName.practitioner(examiner.key);
  const { identifier = [] } = identified(examiner.identifiers);
  // The name within the exam stands in the references to whoever is known beyond it.
  const all = context.isShared(name)
    ? identifier
    : [context.statementIdentifier(partName.examiner(examiner.key)), ...identifier];
  return {
    resourceType: 'Practitioner',
    id: context.id(name),
    ...recordOf(examiner),
    ...summary(context, [called(examiner)]),
    ...(all.length > 0 && { identifier: all }),
    ...(examiner.name && { name: [humanName(examiner.name)] }),
  };
}

function role(context: ExportContext, examiner: model.Examiner): PractitionerRole {
  const works = organizationReference(context);
  const name = resourceName.role(examiner.key);
  const id = context.id(name);
  return {
    resourceType: 'PractitionerRole',
    id,
    ...summary(context, [called(examiner), examiner.role]),
    identifier: [
      context.isShared(name)
        ? identityIdentifier(id)
        : context.statementIdentifier(partName.examiner(examiner.key)),
    ],
    practitioner:
      context.outside('practitioner', examiner) ??
      context.reference(resourceName.practitioner(examiner.key)),
    ...(works && { organization: works }),
    code: [{ text: examiner.role ?? '' }],
  };
}

function organization(context: ExportContext, stated: model.Organization): Organization {
  const id = context.id(resourceName.organization);
  const shared = context.isShared(resourceName.organization);
  return {
    resourceType: 'Organization',
    id,
    ...recordOf(stated),
    ...summary(context, [
      stated.name,
      ...(stated.identifiers ?? []).map(({ value }) => value),
      stated.reference,
    ]),
    active: true,
    // Without name it needs an identifier: org-1.
    ...(shared && stated.identifiers === undefined
      ? { identifier: [identityIdentifier(id)] }
      : identified(stated.identifiers)),
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
    ...recordOf(stated),
    ...summary(context, [
      code === undefined ? undefined : hl7Display(ACT_CODE, code),
      ...(stated.identifiers ?? []).map(({ value }) => value),
      stated.reference,
    ]),
    ...identified(stated.identifiers),
    status: context.filing.encounterStatus ?? 'unknown',
    class:
      code === undefined
        ? { extension: [{ url: ABSENT_EXTENSION, valueCode: 'unknown' }] }
        : { system: ACT_CODE, code, display: hl7Display(ACT_CODE, code) },
    type: [context.coder.concept('items', 'exam')],
    subject: context.subject,
    ...(works && { serviceProvider: works }),
  };
}

function identified(identifiers: readonly StatedIdentifier[] | undefined): {
  identifier?: Identifier[];
} {
  return identifiers === undefined ? {} : { identifier: identifiers.map(asIdentifier) };
}

function called({ name, identifiers, key }: model.Examiner): string {
  return nameText(name) ?? identifiers?.[0]?.value ?? key;
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
