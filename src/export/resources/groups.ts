import type { Observation } from 'fhir/r4.js';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { sectionOf } from '../../kinds/registries/meanings.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { ExportContext } from '../context.ts';
import { finishObservation, startObservation } from './observation.ts';

/** A part of the body with the observations of its statements, in the order of the body. */
export interface Group {
  readonly section: string;
  readonly members: readonly Observation[];
}

/** Observations by section; a section without a statement makes no group. */
export function groupsOf(
  { exam, catalogue }: ExportContext,
  observations: ReadonlyMap<string, Observation>,
): Group[] {
  const members = new Map<string, Observation[]>();
  for (const statement of exam.statements) {
    const observation = observations.get(statement.key);
    if (observation === undefined) continue;
    const section = sectionOf(statement, catalogue);
    const list = members.get(section);
    if (list === undefined) members.set(section, [observation]);
    else list.push(observation);
  }
  return [...members]
    .map(([section, list]) => ({ section, members: list }))
    .sort((a, b) => orderOf(catalogue, a.section) - orderOf(catalogue, b.section));
}

function orderOf(catalogue: Catalogue, section: string): number {
  return catalogue.sections.get(section)?.order ?? Number.MAX_SAFE_INTEGER;
}

/** The group observation: no value of its own, its members say everything. */
export function groupObservation(context: ExportContext, group: Group): Observation {
  return memberGroup(
    context,
    group.section,
    context.coder.concept('sections', group.section),
    group.members,
  );
}

/** A group of observations under any code; `name` makes its id. */
export function memberGroup(
  context: ExportContext,
  name: string,
  code: Observation['code'],
  members: readonly Observation[],
): Observation {
  const observation = startObservation(context, {
    id: context.id(resourceName.group(name)),
    key: partName.group(name),
    profile: 'face-neck-region-group',
    category: 'exam',
    code,
  });
  observation.hasMember = members.map((member) => ({ reference: `urn:uuid:${member.id}` }));
  return finishObservation(context, observation);
}
