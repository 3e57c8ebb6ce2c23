import type { Observation, ObservationComponent } from 'fhir/r4.js';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import type { Conclusion } from '../../model/conclusion.ts';
import type { Consent, ExamCondition } from '../../model/exam.ts';
import type { Key } from '../../model/primitive.ts';
import type { ItemCode, ValueCode } from '../../terminology/tables/code-types.ts';
import type { ExportContext } from '../context.ts';
import { instrumentObservation } from './instrument.ts';
import {
  codedComponent,
  finishObservation,
  type ObservationHead,
  sideComponent,
  startObservation,
  textComponent,
} from './observation.ts';
import { statementReference } from './prompts.ts';

type Parts = Partial<Omit<Observation, 'effectiveDateTime'>> &
  Pick<Observation, 'code'> &
  Pick<ObservationHead, 'at'> & { readonly examiner?: Key };

/**
 * What is said of the exam as a whole: protocol, reason, consents and conditions before it, concern,
 * advice and safety net after it. FHIR has no element of the report for these, so each is an
 * observation that a receiver can search and show.
 */
export function circumstanceObservations(context: ExportContext): Observation[] {
  const { exam } = context;
  return [
    protocol(context),
    ...(context.leftOut === 0 ? [] : [leftOutObservation(context)]),
    ...(exam.indication === undefined ? [] : [indication(context)]),
    ...(exam.consents ?? []).map((consent, at) => consentObservation(context, consent, at)),
    ...(exam.conditions ?? []).map((condition, at) => conditionObservation(context, condition, at)),
    ...(exam.instruments ?? []).map((instrument) => instrumentObservation(context, instrument)),
  ];
}

export function assessmentObservations(context: ExportContext): Observation[] {
  const { conclusion } = context.exam;
  if (conclusion === undefined) return [];
  return [
    ...(context.exam.status === 'entered-in-error' ? [withdrawn(context, conclusion)] : []),
    concern(context, conclusion),
    ...safetyNet(context, conclusion),
    ...(conclusion.plan ?? []).flatMap((item, at) =>
      item.kind === 'advice' || item.kind === 'nothing-further' ? [advice(context, item, at)] : [],
    ),
    ...(conclusion.told ?? []).map((told, at) =>
      itemObservation(context, 'told', at, {
        code: context.coder.concept('items', 'told'),
        at: told.at ?? null,
        valueString: told.who,
        component: [textComponent(context, 'told-what', told.what)],
      }),
    ),
  ];
}

/** What was judged of a complaint or finding, by whom and when. */
export function judgementObservations(context: ExportContext): Observation[] {
  return (context.exam.judgements ?? []).map(({ statement, judgement, by, at, reason }, index) =>
    itemObservation(context, 'judgement', index, {
      code: context.coder.concept('items', 'judgement'),
      at,
      examiner: by,
      valueCodeableConcept: context.coder.concept('values', `judgement.${judgement}`),
      derivedFrom: [statementReference(context, statement)],
      ...(reason !== undefined && { note: [{ text: reason }] }),
    }),
  );
}

function protocol(context: ExportContext): Observation {
  const { coder, exam } = context;
  const { id, version } = exam.protocol;
  const [coding, ...further] = coder.codings('protocols', id);
  return itemObservation(context, 'protocol', 0, {
    code: coder.concept('items', 'protocol'),
    valueCodeableConcept: {
      coding: coding === undefined ? [] : [{ ...coding, version }, ...further],
      text: `${coder.display('protocols', id)}, ${context.language.texts.version} ${version}`,
    },
  });
}

/** So that no reader takes a shortened copy for the exam. */
function leftOutObservation(context: ExportContext): Observation {
  return itemObservation(context, 'left-out', 0, {
    code: context.coder.concept('items', 'left-out'),
    valueInteger: context.leftOut,
  });
}

function indication(context: ExportContext): Observation {
  const { coder, exam } = context;
  const { text, visit, urgency, question, background } = exam.indication ?? { text: '' };
  return itemObservation(context, 'indication', 0, {
    code: coder.concept('items', 'indication'),
    valueString: text,
    component: [
      ...coded(context, 'visit', visit && `visit.${visit}`),
      ...coded(context, 'urgency', urgency && `urgency.${urgency}`),
      ...texts(context, 'question', question),
      ...texts(context, 'background', background),
    ],
  });
}

function consentObservation(context: ExportContext, consent: Consent, at: number): Observation {
  const { coder } = context;
  return itemObservation(context, 'consent', at, {
    code: coder.concept('items', 'consent'),
    at: consent.at ?? null,
    valueCodeableConcept: coder.concept('values', `consent.${consent.answer}`),
    ...(consent.note !== undefined && { note: [{ text: consent.note }] }),
    component: [
      ...coded(context, 'consent-to', `consent-to.${consent.to}`),
      ...coded(context, 'consent-by', consent.by && `consent-by.${consent.by}`),
      ...texts(context, 'purpose', consent.purpose),
    ],
  });
}

function conditionObservation(
  context: ExportContext,
  condition: ExamCondition,
  at: number,
): Observation {
  const { coder, catalogue } = context;
  const row = catalogue.conditions.get(condition.condition);
  const value = row?.values?.find(({ code }) => code === condition.value);
  return itemObservation(context, 'condition', at, {
    code: coder.concept('conditions', condition.condition),
    valueCodeableConcept:
      value === undefined
        ? coder.concept('values', 'presence.present')
        : coder.valueConcept('conditions', condition.condition, value),
    ...(condition.note !== undefined && { note: [{ text: condition.note }] }),
    component: [
      ...(condition.regions ?? []).map((region) =>
        codedComponent(context, 'condition-regions', coder.concept('regions', region)),
      ),
      ...(condition.side === undefined ? [] : [sideComponent(context, condition.side)]),
    ],
  });
}

/** The report of a withdrawn exam says only that it is withdrawn; its conclusion is kept here. */
function withdrawn(context: ExportContext, { text, codings }: Conclusion): Observation {
  const { coder } = context;
  return itemObservation(context, 'conclusion', 0, {
    code: coder.concept('items', 'conclusion'),
    valueString: text,
    component: coder.fromCaller(codings).map((coding) =>
      // Not the code of the observation itself, which has a value: obs-7.
      codedComponent(context, 'assessment', {
        coding: [coding],
        text: coding.display ?? coding.code ?? '',
      }),
    ),
  });
}

function concern(context: ExportContext, conclusion: Conclusion): Observation {
  return itemObservation(context, 'concern', 0, {
    code: context.coder.concept('items', 'concern'),
    valueCodeableConcept: context.coder.concept('values', `concern.${conclusion.concern}`),
    ...(conclusion.basedOn && {
      derivedFrom: conclusion.basedOn.map((key) => context.reference(resourceName.statement(key))),
    }),
    component: (conclusion.worries ?? []).map((worry) => textComponent(context, 'worry', worry)),
  });
}

function safetyNet(context: ExportContext, { safetyNet: net }: Conclusion): Observation[] {
  if (net === undefined) return [];
  const { coder } = context;
  return [
    itemObservation(context, 'safety-net', 0, {
      code: coder.concept('items', 'safety-net'),
      valueString: net.text,
      component: [
        ...(net.returnIf ?? []).map((text) => textComponent(context, 'return-if', text)),
        ...(net.reviewBy === undefined
          ? []
          : [{ code: coder.concept('items', 'review-by'), valueDateTime: net.reviewBy }]),
        ...texts(context, 'owner', net.owner),
      ],
    }),
  ];
}

function advice(
  context: ExportContext,
  item: NonNullable<Conclusion['plan']>[number],
  at: number,
): Observation {
  return itemObservation(context, 'plan-item', at, {
    code: context.coder.concept('items', 'plan-item'),
    valueString: item.text,
    ...(item.reasons && {
      derivedFrom: item.reasons.map((key) => context.reference(resourceName.statement(key))),
    }),
    component: [
      textComponent(context, 'plan-key', item.key),
      ...(item.due === undefined
        ? []
        : [{ code: context.coder.concept('items', 'due'), valueDateTime: item.due }]),
      codedComponent(context, 'plan-kind', context.coder.concept('values', `plan.${item.kind}`)),
      ...coded(context, 'urgency', item.urgency && `urgency.${item.urgency}`),
      ...texts(context, 'plan-to', item.to),
      ...(item.service === undefined
        ? []
        : [codedComponent(context, 'service', context.coder.concept('services', item.service))]),
      ...texts(context, 'guideline', item.guideline),
    ],
  });
}

/** An observation about the exam as a whole; `at` tells several of the same name apart. */
function itemObservation(
  context: ExportContext,
  item: string,
  at: number,
  { component, code, at: time, examiner, ...parts }: Parts,
): Observation {
  const observation = startObservation(context, {
    id: context.id(resourceName.item(item, at)),
    key: partName.item(item, at),
    category: 'survey',
    code,
    performer: examiner,
    at: time,
  });
  Object.assign(observation, parts);
  if (component !== undefined && component.length > 0) observation.component = component;
  return finishObservation(context, observation);
}

/** A component with a coded answer, where there is one. */
function coded(
  context: ExportContext,
  item: ItemCode,
  answer: ValueCode | undefined,
): ObservationComponent[] {
  if (answer === undefined) return [];
  return [codedComponent(context, item, context.coder.concept('values', answer))];
}

function texts(
  context: ExportContext,
  item: ItemCode,
  text: string | undefined,
): ObservationComponent[] {
  return text === undefined ? [] : [textComponent(context, item, text)];
}
