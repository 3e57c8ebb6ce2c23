import type { Meta } from 'fhir/r4.js';
import { type Issue, issue } from '../../issues/issue.ts';
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

/** What a guide asks for and the exam does not state, of everyone for whom a resource is written. */
export function targetIssues({ exam, outside }: ExportContext, target: Target): Issue[] {
  const { profiles, needs } = guides[target];
  const { subject, organization, examiners } = exam;
  const found: Issue[] = [];
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
