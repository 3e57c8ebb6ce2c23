import type {
  CodeableConcept,
  Coding,
  Identifier,
  Observation,
  ObservationComponent,
  Reference,
} from 'fhir/r4.js';
import { append } from '../../data/append.ts';
import { absentValue } from '../../fhir/absent-value.ts';
import type { ProfileName } from '../../fhir/names/profile-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { DATA_ABSENT_REASON } from '../../fhir/names/systems.ts';
import { category, interpretation, interpretationsOf } from '../../fhir/observation-codes.ts';
import { unverifiedStatus } from '../../fhir/record-status.ts';
import { isUnconfirmed, seenAt } from '../../kinds/facets/base.ts';
import type { Standing } from '../../kinds/facets/meaning.ts';
import {
  areStated,
  sayingsOf,
  standingOf,
  statesSomething,
  subjectOf,
} from '../../kinds/registries/meanings.ts';
import type { Side } from '../../model/primitive.ts';
import type { Carried, Reason, Statement } from '../../model/statement.ts';
import { hl7Display } from '../../terminology/published/hl7.ts';
import type { ItemCode } from '../../terminology/tables/code-types.ts';
import type { AnyResource, ExportContext } from '../context.ts';
import { bodySite, exceptedSite } from './body-site.ts';
import { observationNarrative } from './narrative.ts';

/** What a statement adds to the observation that every statement makes. */
export interface ObservationParts {
  readonly code: CodeableConcept;
  readonly category?: 'exam' | 'survey';
  readonly status?: Observation['status'];
  readonly value?: Partial<
    Pick<
      Observation,
      'valueCodeableConcept' | 'valueQuantity' | 'valueString' | 'valueInteger' | 'valueBoolean'
    >
  >;
  readonly dataAbsentReason?: CodeableConcept | undefined;
  readonly identifier?: Identifier | undefined;
  readonly focus?: readonly string[];
  readonly derivedFrom?: Observation['derivedFrom'];
  readonly components?: readonly ObservationComponent[];
  /** What the code says already: named here, and not a second time in the narrative. */
  readonly method?: CodeableConcept;
}

/** How a kind of statement leaves: facet of its `export.ts`, listed in `kinds/to-observation.ts`. */
export interface Exporter<S extends Statement> {
  readonly profile: ProfileName;
  parts(context: ExportContext, statement: S): ObservationParts;
  /** Resources of its own beside the observation. */
  resources?(context: ExportContext, statement: S): AnyResource[];
  /** The picture among them, which the report shows. */
  picture?(context: ExportContext, statement: S): Reference;
}

/** The observation of a statement, with everything that all kinds of statement share. */
export function observationOf<S extends Statement>(
  context: ExportContext,
  statement: S,
  exporter: Exporter<S>,
): Observation {
  const parts = exporter.parts(context, statement);
  const observation = startObservation(context, {
    id: context.id(resourceName.statement(statement.key)),
    key: statement.key,
    profile: exporter.profile,
    status: parts.status ?? statusOf(context, statement),
    category: parts.category ?? 'exam',
    code: parts.code,
    performer: statement.examiner,
    focus: parts.focus,
    at: seenAt(statement),
  });
  const { coding } = observation.code;
  if (coding !== undefined) append(coding, context.coder.fromCaller(statement.codings));
  if (parts.identifier) observation.identifier?.push(parts.identifier);
  Object.assign(observation, parts.value);
  if (parts.dataAbsentReason) observation.dataAbsentReason = parts.dataAbsentReason;
  const said = sayingsOf(statement, context.catalogue);
  const meanings = interpretationsOf(said);
  if (meanings.length > 0) observation.interpretation = meanings.map(interpretation);
  if (statement.note !== undefined) observation.note = [{ text: statement.note }];
  const standing = standingOf(statement, context.catalogue);
  const except = said[0]?.except ?? [];
  if (standing.region !== undefined) {
    const strict = !areStated(said);
    observation.bodySite = bodySite(context, standing.region, standing.side, strict, except);
  }
  const methods = 'methods' in statement ? statement.methods : undefined;
  const method = methodOf(context, methods);
  if (method) observation.method = method;
  const device = statement.instruments?.[0];
  if (device !== undefined) observation.device = context.device(device);
  if (parts.derivedFrom) observation.derivedFrom = parts.derivedFrom;
  const components = componentsOf(context, statement, standing, [
    ...(parts.components ?? noComponents),
    ...sideOutsideRegion(context, standing),
    ...methodComponents(context, methods),
    ...except.map((one) => codedComponent(context, 'except', exceptedSite(context, one))),
  ]);
  if (components.length > 0) observation.component = components;
  const finished = finishObservation(context, observation);
  return parts.method === undefined ? finished : { ...finished, method: parts.method };
}

/** The code of what a statement is about. Only of what was found may it be wider than what was meant. */
export function subjectConcept(context: ExportContext, statement: Statement): CodeableConcept {
  const { table, code } = subjectOf(statement);
  return statesSomething(statement, context.catalogue)
    ? context.coder.concept(table, code)
    : context.coder.strictConcept(table, code);
}

/** What was taken over and not looked at again is not verified, and no receiver may take it for today's. */
function statusOf(context: ExportContext, statement: Statement): Observation['status'] {
  const status = context.status(statement.key);
  return isUnconfirmed(statement) ? unverifiedStatus(status) : status;
}

/** What every observation of an exam has, whether it is a statement, an item or a group. */
export interface ObservationHead {
  readonly id: string;
  /** Name under which it is identified within the exam. */
  readonly key: string;
  /** Default: the one of all observations of an exam. */
  readonly profile?: ProfileName;
  readonly status?: Observation['status'] | undefined;
  readonly category: 'exam' | 'survey';
  readonly code: CodeableConcept;
  /** Key of the examiner; the first of the exam where left out. */
  readonly performer?: string | undefined;
  /** Keys of the statements it is about. */
  readonly focus?: readonly string[] | undefined;
  /** Its own time, where it has one, else that of the exam; null where its time is not known. */
  readonly at?: string | null | undefined;
}

/** An observation to be filled; {@link finishObservation} writes its narrative. */
export function startObservation(context: ExportContext, head: ObservationHead): Observation {
  const { exam } = context;
  const observation: Observation = {
    resourceType: 'Observation',
    id: head.id,
    ...context.profile(head.profile ?? 'face-neck-observation'),
    ...(context.narrative && { text: { status: 'generated', div: '' } }),
    identifier: [context.statementIdentifier(head.key)],
    status: head.status ?? context.status(head.key),
    category: [category(head.category)],
    code: head.code,
    subject: context.subject,
  };
  if (head.focus !== undefined && head.focus.length > 0) {
    observation.focus = head.focus.map((key) => context.reference(resourceName.statement(key)));
  }
  if (context.encounter) observation.encounter = context.encounter;
  Object.assign(observation, head.at === null ? unknownTime : effective(context, head.at));
  observation.issued = exam.recorded;
  observation.performer = [context.performer(head.performer ?? exam.examiners[0].key)];
  return observation;
}

/** The same observation with its generated text, where narrative is asked for. */
export function finishObservation(context: ExportContext, observation: Observation): Observation {
  if (context.narrative)
    observation.text = observationNarrative(observation, context.language.texts);
  return observation;
}

/** When it was said is not known: neither the time of the exam nor none, which reads as forgotten. */
const unknownTime = { _effectiveDateTime: absentValue };

const noComponents: readonly ObservationComponent[] = [];

function componentsOf(
  context: ExportContext,
  { instruments, carried }: Statement,
  { place }: Standing,
  own: readonly ObservationComponent[],
): ObservationComponent[] {
  const components =
    place === undefined ? [...own] : [textComponent(context, 'place', place), ...own];
  // Observation.device is 0..1, so further instruments are named by their keys.
  for (const key of instruments?.slice(1) ?? []) {
    components.push(textComponent(context, 'instrument', key));
  }
  if (carried) append(components, carriedComponents(context, carried));
  return components;
}

function sideOutsideRegion(
  context: ExportContext,
  { region, side }: Standing,
): readonly ObservationComponent[] {
  return region === undefined && side !== undefined ? [sideComponent(context, side)] : noComponents;
}

/**
 * Why there is no value: the HL7 code, our own code of the reason, what it was that was not done
 * where `state` says so, and the words used.
 */
export function absentReason(
  context: ExportContext,
  reason: Reason,
  state: readonly Coding[] = [],
): CodeableConcept {
  const row = context.catalogue.reasons.get(reason.code);
  const code = row?.dataAbsentReason ?? 'not-performed';
  return {
    coding: [
      { system: DATA_ABSENT_REASON, code, display: hl7Display(DATA_ABSENT_REASON, code) },
      ...context.coder.codings('reasons', reason.code),
      ...state,
    ],
    text: reason.text ?? context.coder.display('reasons', reason.code),
  };
}

/** A component coded by one of our items, with a text. */
export function textComponent(
  context: ExportContext,
  item: ItemCode,
  text: string,
): ObservationComponent {
  return { code: context.coder.concept('items', item), valueString: text };
}

/** A component coded by one of our items, with a coded answer. */
export function codedComponent(
  context: ExportContext,
  item: ItemCode,
  value: CodeableConcept,
): ObservationComponent {
  return { code: context.coder.concept('items', item), valueCodeableConcept: value };
}

/** The side, where no body site says it. */
export function sideComponent(context: ExportContext, side: Side): ObservationComponent {
  return codedComponent(context, 'side', context.coder.concept('values', `side.${side}`));
}

export function flagComponent(
  context: ExportContext,
  item: ItemCode,
  flag: boolean,
): ObservationComponent {
  return { code: context.coder.concept('items', item), valueBoolean: flag };
}

/** `effectiveDateTime` of a statement with its own time, else the time or period of the exam. */
export function effective(
  { exam }: ExportContext,
  at: string | undefined,
): Partial<Pick<Observation, 'effectiveDateTime' | 'effectivePeriod'>> {
  if (at !== undefined) return { effectiveDateTime: at };
  const { start, end } = exam.performed;
  return end === undefined ? { effectiveDateTime: start } : { effectivePeriod: { start, end } };
}

/** Observation.method is 0..1: one method is coded there, several are named there and coded in components. */
function methodOf(
  { coder }: ExportContext,
  methods: readonly string[] | undefined,
): CodeableConcept | undefined {
  if (methods === undefined) return undefined;
  const [first, second] = methods;
  if (first === undefined) return undefined;
  if (second === undefined) return coder.concept('methods', first);
  return { text: methods.map((code) => coder.display('methods', code)).join('; ') };
}

function methodComponents(
  context: ExportContext,
  methods: readonly string[] | undefined,
): readonly ObservationComponent[] {
  if (methods === undefined || methods.length < 2) return noComponents;
  return methods.map((code) =>
    codedComponent(context, 'method', context.coder.concept('methods', code)),
  );
}

function carriedComponents(context: ExportContext, carried: Carried): ObservationComponent[] {
  return [
    textComponent(context, 'carried-exam', carried.exam),
    textComponent(context, 'carried-statement', carried.statement),
    { code: context.coder.concept('items', 'carried-at'), valueDateTime: carried.at },
    flagComponent(context, 'carried-confirmed', carried.confirmed),
  ];
}
