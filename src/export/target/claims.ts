import type { Meta } from 'fhir/r4.js';
import { type Issue, issue } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import type { Examiner } from '../../model/people.ts';
import type { AnyResource, ExportContext } from '../context.ts';
import { guides, type Target } from './guides.ts';

/** The resource with the claim of the guide's profile for its type, where it has one. */
export function claiming(resource: AnyResource, target: Target | undefined): AnyResource {
  const { profiles } = target === undefined ? { profiles: undefined } : guides[target];
  const url = profiles?.[resource.resourceType];
  if (url === undefined) return resource;
  // The claim is alike in all types; their typings differ in Extension alone.
  const { meta } = resource as { readonly meta?: Meta };
  const profile = [...new Set([...(meta?.profile ?? []), url])];
  return { ...resource, meta: { ...meta, profile } } as AnyResource;
}

interface Fitted {
  readonly exam: Exam;
  readonly issues: readonly Issue[];
}

/** The exam without what a guide has no place for, and what that is. */
export function fittedTo(target: Target | undefined, exam: Exam): Fitted {
  if (target === undefined || guides[target].withoutRoles !== true) return { exam, issues: [] };
  const severity = 'warning';
  const issues = exam.examiners.flatMap(({ role }, index) =>
    role === undefined
      ? []
      : [issue('not-exported', ['examiners', index, 'role'], { reason: 'guide' }, { severity })],
  );
  const [first, ...others] = exam.examiners;
  return { exam: { ...exam, examiners: [withoutRole(first), ...others.map(withoutRole)] }, issues };
}

function withoutRole({ role: _, ...person }: Examiner): Examiner {
  return person;
}

/** What a guide asks for and the exam does not state, of everyone for whom a resource is written. */
export function targetIssues({ exam, outside }: ExportContext, target: Target): Issue[] {
  const { profiles, needs, withoutErrors } = guides[target];
  const { subject, organization, examiners } = exam;
  const found: Issue[] = [];
  if (withoutErrors && exam.status === 'entered-in-error') {
    found.push(issue('invalid-value', ['status'], { reason: 'guide-status' }));
  }
  const tell = (type: string, path: readonly (string | number)[], property: string): void => {
    const url = profiles[type] ?? '';
    const at = [...path, ...property.split('.')];
    found.push(issue('missing-property', at, { reason: 'guide', property, url }));
  };
  if (outside('patient', subject) === undefined) {
    for (const { property, isMet } of needs.patient ?? []) {
      if (!isMet(subject)) tell('Patient', ['subject'], property);
    }
  }
  if (organization !== undefined && outside('organization', organization) === undefined) {
    for (const { property, isMet } of needs.organization ?? []) {
      if (!isMet(organization)) tell('Organization', ['organization'], property);
    }
  }
  examiners.forEach((examiner, index) => {
    if (outside('practitioner', examiner) !== undefined) return;
    for (const { property, isMet } of needs.practitioner ?? []) {
      if (!isMet(examiner)) tell('Practitioner', ['examiners', index], property);
    }
  });
  return found;
}
