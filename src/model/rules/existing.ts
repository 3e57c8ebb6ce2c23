import type { Path } from '../../issues/path.ts';
import { standardSystem } from '../../terminology/system-names.ts';
import type { Exam } from '../exam.ts';
import type { HumanName } from '../people.ts';
import type { Identifier } from '../primitive.ts';
import type { ExamRule } from './rule.ts';
import { isWellFormed } from './uri.ts';

/** A reference into the receiver's system must lead to a resource of the kind that its place takes. */
export const fittingReferences: ExamRule = ({ exam, report }) => {
  for (const { at, reference, types } of referencesOf(exam)) {
    if (reference === undefined) continue;
    if (standardSystem(reference) !== undefined) {
      report('wrong-system', at, { reason: 'not-of-records' }, { value: reference });
    }
    if (fits(reference, types)) continue;
    report('invalid-value', at, { reason: 'reference-type', codes: types }, { value: reference });
  }
};

interface StatedReference {
  readonly at: Path;
  readonly reference: string | undefined;
  /** @see https://hl7.org/fhir/R4/diagnosticreport.html and https://hl7.org/fhir/R4/observation.html */
  readonly types: readonly string[];
}

function referencesOf(exam: Exam): StatedReference[] {
  const one = (path: Path, reference: string | undefined, ...types: string[]) => ({
    at: [...path, 'reference'],
    reference,
    types,
  });
  return [
    one(['subject'], exam.subject.reference, 'Patient'),
    one(['organization'], exam.organization?.reference, 'Organization'),
    one(['encounter'], exam.encounter?.reference, 'Encounter'),
    ...exam.examiners.map(({ reference }, at) =>
      one(['examiners', at], reference, 'Practitioner', 'PractitionerRole'),
    ),
    ...(exam.instruments ?? []).map(({ reference }, at) =>
      one(['instruments', at], reference, 'Device'),
    ),
  ];
}

/** @see https://hl7.org/fhir/R4/references.html#literal */
const literal =
  /^(https?:\/\/\S+\/)?([A-Z][A-Za-z]+)\/[A-Za-z0-9.-]{1,64}(?:\/_history\/[A-Za-z0-9.-]{1,64})?$/;

/**
 * Type and id, at whatever base; or a URL of another form, whose type cannot be seen. A `urn:uuid:` or
 * `urn:oid:` names what stands in the same bundle, which what the receiver holds does not.
 */
function fits(reference: string, types: readonly string[]): boolean {
  const type = literal.exec(reference)?.[2];
  return type === undefined ? /^https?:\/\/\S+$/.test(reference) : types.includes(type);
}

/**
 * A name says something, and the system of an identifier is a URI of its own form. A system of codes
 * identifies nobody, and its licence would go along with a number that stands under it.
 */
export const statedPeople: ExamRule = ({ exam, report }) => {
  const { subject, examiners, organization, encounter } = exam;
  const name = (path: Path, given: HumanName | undefined): void => {
    if (given === undefined || Object.values(given).some((part) => part !== undefined)) return;
    report('empty-value', path, { reason: 'object' });
  };
  const systems = (path: Path, identifiers: readonly Identifier[] | undefined): void => {
    identifiers?.forEach(({ system }, at) => {
      if (system !== undefined && standardSystem(system) !== undefined) {
        const place = [...path, at, 'system'];
        report('wrong-system', place, { reason: 'not-of-records' }, { value: system });
      }
      if (system === undefined || isWellFormed(system)) return;
      report(
        'invalid-value',
        [...path, at, 'system'],
        { reason: 'absolute-uri' },
        { value: system },
      );
    });
  };
  name(['subject', 'name'], subject.name);
  systems(['subject', 'identifiers'], subject.identifiers);
  examiners.forEach((examiner, at) => {
    name(['examiners', at, 'name'], examiner.name);
    systems(['examiners', at, 'identifiers'], examiner.identifiers);
  });
  systems(['organization', 'identifiers'], organization?.identifiers);
  systems(['encounter', 'identifiers'], encounter?.identifiers);
};
