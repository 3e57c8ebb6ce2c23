import type {
  CodeableConcept,
  Coding,
  Identifier,
  Narrative,
  Observation,
  ObservationComponent,
} from 'fhir/r4.js';
import { DATA_ABSENT_REASON, INTERPRETATION, OBSERVATION_CATEGORY } from '../fhir/systems.ts';
import type { Reason, Statement } from '../model/statement.ts';
import { hl7Display } from '../terminology/hl7.ts';
import { type ExportContext, resourceName } from './context.ts';
import { observationNarrative } from './narrative.ts';

/** What a statement adds to the observation that every statement makes. */
export interface ObservationParts {
  readonly code: CodeableConcept;
  readonly category?: 'exam' | 'survey';
  readonly status?: Observation['status'];
  readonly bodySite?: CodeableConcept | undefined;
  readonly value?: Partial<
    Pick<
      Observation,
      'valueCodeableConcept' | 'valueQuantity' | 'valueString' | 'valueInteger' | 'valueBoolean'
    >
  >;
  readonly dataAbsentReason?: CodeableConcept | undefined;
  readonly interpretation?: 'N' | 'A' | 'POS' | 'NEG' | 'IND' | undefined;
  readonly methods?: readonly string[] | undefined;
  readonly identifier?: Identifier | undefined;
  readonly focus?: readonly string[];
  readonly derivedFrom?: Observation['derivedFrom'];
  readonly components?: readonly ObservationComponent[];
}

/** The observation of a statement, with everything that all kinds of statement share. */
export function observationOf(
  context: ExportContext,
  statement: Statement,
  parts: ObservationParts,
): Observation {
  const { exam } = context;
  const device = statement.instruments?.[0];
  const components = componentsOf(context, statement, parts);
  const codings = context.coder.fromCaller(statement.codings);
  const observation: Observation = {
    resourceType: 'Observation',
    id: context.id(resourceName.statement(statement.key)),
    identifier: [
      context.statementIdentifier(statement.key),
      ...(parts.identifier ? [parts.identifier] : []),
    ],
    status: parts.status ?? context.status(statement.key),
    category: [category(parts.category ?? 'exam')],
    code: codings.length === 0 ? parts.code : withCodings(parts.code, codings),
    subject: context.subject,
    ...(parts.focus?.length && {
      focus: parts.focus.map((key) => context.reference(resourceName.statement(key))),
    }),
    ...(context.encounter && { encounter: context.encounter }),
    ...effective(context, statement.at),
    issued: exam.recorded,
    performer: [context.performer(statement.examiner ?? exam.examiners[0].key)],
    ...answerOf(parts),
    ...(statement.note !== undefined && { note: [{ text: statement.note }] }),
    ...(parts.bodySite && { bodySite: parts.bodySite }),
    ...methodOf(context, parts.methods ?? []),
    ...(device !== undefined && { device: context.device(device) }),
    ...(parts.derivedFrom && { derivedFrom: parts.derivedFrom }),
    ...(components.length > 0 && { component: components }),
  };
  return withNarrative(context, observation);
}

function answerOf(parts: ObservationParts): Partial<Observation> {
  return {
    ...parts.value,
    ...(parts.dataAbsentReason && { dataAbsentReason: parts.dataAbsentReason }),
    ...(parts.interpretation && { interpretation: [interpretation(parts.interpretation)] }),
  };
}

function componentsOf(
  context: ExportContext,
  statement: Statement,
  parts: ObservationParts,
): ObservationComponent[] {
  // Observation.device is 0..1, so further instruments are named by their keys.
  const furtherDevices = statement.instruments?.slice(1) ?? [];
  return [
    ...(parts.components ?? []),
    ...methodComponents(context, parts.methods ?? []),
    ...furtherDevices.map((key) => textComponent(context, 'instrument', key)),
    ...carriedComponents(context, statement),
  ];
}

/** The same observation with its generated text in front, where narrative is asked for. */
export function withNarrative(context: ExportContext, observation: Observation): Observation {
  if (!context.narrative) return observation;
  const { resourceType, id, ...rest } = observation;
  const text: Narrative = observationNarrative(observation);
  return { resourceType, ...(id !== undefined && { id }), text, ...rest };
}

export function category(code: 'exam' | 'survey'): CodeableConcept {
  return {
    coding: [
      { system: OBSERVATION_CATEGORY, code, display: hl7Display(OBSERVATION_CATEGORY, code) },
    ],
  };
}

export function interpretation(code: string): CodeableConcept {
  return { coding: [{ system: INTERPRETATION, code, display: hl7Display(INTERPRETATION, code) }] };
}

/** Why there is no value: the HL7 code, our own code of the reason, and the words used. */
export function absentReason(context: ExportContext, reason: Reason): CodeableConcept {
  const row = context.catalogue.reasons.get(reason.code);
  const code = row?.dataAbsentReason ?? 'not-performed';
  return {
    coding: [
      { system: DATA_ABSENT_REASON, code, display: hl7Display(DATA_ABSENT_REASON, code) },
      ...context.coder.codings('reasons', reason.code),
    ],
    text: reason.text ?? row?.display ?? reason.code,
  };
}

/** A component coded by one of our items, with a text. */
export function textComponent(
  context: ExportContext,
  item: string,
  text: string,
): ObservationComponent {
  return { code: context.coder.concept('items', item), valueString: text };
}

/** A component coded by one of our items, with a coded answer. */
export function codedComponent(
  context: ExportContext,
  item: string,
  value: CodeableConcept,
): ObservationComponent {
  return { code: context.coder.concept('items', item), valueCodeableConcept: value };
}

export function flagComponent(
  context: ExportContext,
  item: string,
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

function withCodings(code: CodeableConcept, further: readonly Coding[]): CodeableConcept {
  return { ...code, coding: [...(code.coding ?? []), ...further] };
}

/** Observation.method is 0..1: one method is coded there, several are named there and coded in components. */
function methodOf(
  { coder }: ExportContext,
  methods: readonly string[],
): Partial<Pick<Observation, 'method'>> {
  const [first, second] = methods;
  if (first === undefined) return {};
  if (second === undefined) return { method: coder.concept('methods', first) };
  return { method: { text: methods.map((code) => coder.display('methods', code)).join('; ') } };
}

function methodComponents(
  context: ExportContext,
  methods: readonly string[],
): ObservationComponent[] {
  if (methods.length < 2) return [];
  return methods.map((code) =>
    codedComponent(context, 'method', context.coder.concept('methods', code)),
  );
}

function carriedComponents(context: ExportContext, { carried }: Statement): ObservationComponent[] {
  if (carried === undefined) return [];
  return [
    textComponent(context, 'carried-exam', carried.exam),
    textComponent(context, 'carried-statement', carried.statement),
    { code: context.coder.concept('items', 'carried-at'), valueDateTime: carried.at },
    flagComponent(context, 'carried-confirmed', carried.confirmed),
  ];
}
