import type { Composition, CompositionSection, Observation, Reference } from 'fhir/r4.js';
import { emptyReason } from '../../fhir/empty-section.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { compositionStatus } from '../../fhir/record-status.ts';
import { escapeXhtml } from '../../fhir/xhtml.ts';
import type { ExportContext } from '../context.ts';
import type { Group } from './groups.ts';
import { generated, observationLine } from './narrative.ts';
import { organizationReference } from './people.ts';
import { promptLines } from './prompts.ts';

/** A group with the observation that stands for it. */
export type GroupEntry = Group & { readonly observation: Observation };

export interface DocumentParts {
  readonly circumstances: GroupEntry;
  readonly groups: readonly GroupEntry[];
  readonly assessment: GroupEntry | undefined;
  readonly plan: readonly Reference[];
  readonly report: Reference;
}

/**
 * The document of an exam: conclusion first, then the parts of the body in order. A part of the
 * protocol about which nothing was stated is there and says that it is empty.
 */
export function compositionResource(context: ExportContext, parts: DocumentParts): Composition {
  const { exam, coder } = context;
  const custodian = organizationReference(context);
  const signed = exam.history?.filter((event) => event.action === 'sign') ?? [];
  const title = coder.display('items', 'exam');
  return {
    resourceType: 'Composition',
    id: context.id(resourceName.composition),
    ...context.profile('face-neck-composition'),
    text: generated(`<p><b>${escapeXhtml(title)}</b>, ${escapeXhtml(exam.performed.start)}</p>`),
    identifier: { ...context.examIdentifier, value: `${exam.id}|${partName.document}` },
    status: compositionStatus[exam.status],
    type: { coding: [...coder.codings('items', 'exam')].reverse(), text: title },
    subject: context.subject,
    ...(context.encounter && { encounter: context.encounter }),
    date: exam.recorded,
    author: exam.examiners.map(({ key }) => context.performer(key)),
    title,
    ...(signed.length > 0 && {
      attester: signed.map((event) => ({
        mode: 'professional' as const,
        time: event.at,
        party: context.performer(event.by),
      })),
    }),
    ...(custodian && { custodian }),
    section: [
      conclusionSection(context, parts),
      circumstancesSection(context, parts.circumstances),
      ...bodySections(context, parts.groups),
    ],
  };
}

function conclusionSection(context: ExportContext, parts: DocumentParts): CompositionSection {
  const { exam, coder } = context;
  const { noConclusion, withdrawn } = context.language.texts;
  const words = exam.conclusion?.text ?? noConclusion;
  return {
    title: coder.display('items', 'assessment'),
    code: coder.concept('items', 'assessment'),
    text: generated(
      `<p>${escapeXhtml(exam.status === 'entered-in-error' ? withdrawn : words)}</p>${list(context, parts.assessment?.members ?? [])}${promptList(context)}`,
    ),
    entry: [
      parts.report,
      ...(parts.assessment ? [groupReference(parts.assessment)] : []),
      ...parts.plan,
    ],
  };
}

function promptList(context: ExportContext): string {
  const lines = promptLines(context);
  return lines.length === 0 ? '' : `<ul>${lines.map((line) => `<li>${line}</li>`).join('')}</ul>`;
}

function circumstancesSection(context: ExportContext, group: GroupEntry): CompositionSection {
  const { coder } = context;
  return {
    title: coder.display('items', 'circumstances'),
    code: coder.concept('items', 'circumstances'),
    text: generated(list(context, group.members)),
    entry: [groupReference(group)],
  };
}

function groupReference({ observation }: GroupEntry): Reference {
  return { reference: `urn:uuid:${observation.id}` };
}

function bodySections(
  context: ExportContext,
  groups: DocumentParts['groups'],
): CompositionSection[] {
  const { catalogue, coder } = context;
  const stated = new Map(groups.map((group) => [group.section, group]));
  const asked = protocolSections(context);
  return [...catalogue.sections.values()]
    .filter(({ code }) => stated.has(code) || asked.has(code))
    .sort((a, b) => a.order - b.order)
    .map(({ code, display }) => {
      const group = stated.get(code);
      const head = { title: display, code: coder.concept('sections', code) };
      if (group === undefined) return { ...head, ...emptySection(context) };
      return {
        ...head,
        text: generated(list(context, group.members)),
        entry: [groupReference(group)],
      };
    });
}

function emptySection({
  language,
}: ExportContext): Pick<CompositionSection, 'text' | 'emptyReason'> {
  const reason = emptyReason(language.texts);
  return { text: generated(`<p>${escapeXhtml(reason.text)}</p>`), emptyReason: reason };
}

function protocolSections({ exam, catalogue }: ExportContext): Set<string> {
  const sections = new Set<string>();
  const protocol = catalogue.protocols.get(exam.protocol.id);
  for (const { region } of protocol?.regions ?? []) {
    const section = catalogue.regions.get(region)?.section;
    if (section !== undefined) sections.add(section);
  }
  for (const test of [
    ...(protocol?.tests ?? []),
    ...(protocol?.points ?? []).map((p) => p.point),
  ]) {
    const section = catalogue.testPoints.get(test)?.section;
    if (section !== undefined) sections.add(section);
  }
  return sections;
}

function list({ language }: ExportContext, observations: readonly Observation[]): string {
  if (observations.length === 0) return '';
  return `<ul>${observations.map((one) => `<li>${observationLine(one, language.texts)}</li>`).join('')}</ul>`;
}
