import type { FhirResource, Observation } from 'fhir/r4.js';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { toR5 } from '../../fhir/to-r5.ts';
import { resourcesBeside, toObservation } from '../../kinds/registries/to-observation.ts';
import type { AnyResource, ExportContext } from '../context.ts';
import { provenanceResource } from '../history/provenance.ts';
import { bodyStructure } from './body-site.ts';
import { compositionResource, type GroupEntry } from './composition.ts';
import { groupObservation, groupsOf, memberGroup } from './groups.ts';
import { deviceResources } from './instrument.ts';
import {
  assessmentObservations,
  circumstanceObservations,
  judgementObservations,
} from './items.ts';
import { peopleResources } from './people.ts';
import { planRequest } from './plan.ts';
import { filedDocument } from './presented-form.ts';
import { promptIssues } from './prompts.ts';
import { diagnosticReport } from './report.ts';

/** All resources of an exam: report first, then people, instruments, groups, statements, plan, history. */
export function examResources(
  context: ExportContext,
  options: { readonly document: boolean },
): AnyResource[] {
  const { exam } = context;
  if (context.detail === 'report') return reportAlone(context);
  const observations = new Map<string, Observation>();
  for (const statement of exam.statements) {
    observations.set(statement.key, toObservation(context, statement));
  }
  const groups = groupsOf(context, observations).map((group) => ({
    ...group,
    observation: groupObservation(context, group),
  }));
  const circumstances = itemGroup(context, 'circumstances', circumstanceObservations(context));
  const assessed = [...assessmentObservations(context), ...judgementObservations(context)];
  const assessment = assessed.length === 0 ? undefined : itemGroup(context, 'assessment', assessed);
  const results = [circumstances, ...groups, ...(assessment ? [assessment] : [])].map(
    ({ observation }) => observation,
  );
  const requests = planRequests(context);
  const prompts = promptIssues(context);
  const written: FhirResource[] = [
    diagnosticReport(context, results),
    ...peopleResources(context),
    ...deviceResources(context),
    ...results,
    ...circumstances.members,
    ...[...context.placed.values()].map((placed) => bodyStructure(context, placed)),
    ...observations.values(),
    ...assessed,
    ...requests,
    ...prompts,
    ...(exam.history ?? []).map((event) => provenanceResource(context, event)),
    ...(context.filed ? [filedDocument(context)] : []),
  ];
  if (options.document) {
    written.unshift(
      compositionResource(context, {
        circumstances,
        groups,
        assessment,
        plan: [...requests, ...prompts].map(({ id }) => ({ reference: `urn:uuid:${id}` })),
        report: context.reference(resourceName.report),
      }),
    );
  }
  return [
    ...(context.version === 'R5' ? written.map(toR5) : written),
    ...exam.statements.flatMap((statement) => resourcesBeside(context, statement)),
  ];
}

/** Report, people and the document for people; the report has no results. */
function reportAlone(context: ExportContext): AnyResource[] {
  const written = [
    diagnosticReport(context, []),
    ...peopleResources(context),
    ...(context.filed ? [filedDocument(context)] : []),
  ];
  return context.version === 'R5' ? written.map(toR5) : written;
}

/** A group of what is said of the exam as a whole. */
function itemGroup(
  context: ExportContext,
  section: 'circumstances' | 'assessment',
  members: readonly Observation[],
): GroupEntry {
  const code = context.coder.concept('items', section);
  return { section, members, observation: memberGroup(context, section, code, members) };
}

function planRequests(context: ExportContext): ReturnType<typeof planRequest>[] {
  return (context.exam.conclusion?.plan ?? [])
    .filter(({ kind }) => kind !== 'advice' && kind !== 'nothing-further')
    .map((item) => planRequest(context, item));
}
