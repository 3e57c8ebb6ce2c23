import {
  type Conclusion,
  concerns,
  type PlanItem,
  type SafetyNet,
  type Told,
} from '../../model/conclusion.ts';
import type { Key } from '../../model/primitive.ts';
import { claimEqual, dateOf, type Element, innerOf, innersOf, textOf } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { claimReferences } from '../bundle/reference.ts';
import { ownValue } from '../observation/concept.ts';
import { type Observed, ownTime } from '../observation/observation.ts';
import { codingsOf, filled } from '../observation/values.ts';
import type { ExamReading } from '../reading.ts';
import { claimItemCode, type ItemEntry, readItems, statedTime } from './circumstances.ts';
import { planInOrder } from './plan.ts';

interface Words {
  readonly text: string;
  readonly codings: Conclusion['codings'];
}

/** What the examiner makes of the exam; undefined where its level of concern is not told. */
export function readConclusion(
  reading: ExamReading,
  report: Entry,
  items: readonly ItemEntry[],
  requests: readonly PlanItem[],
): Conclusion | undefined {
  return report.resource.claims.attempt(() => {
    const [withdrawn] = readItems(reading, items, 'conclusion', readWithdrawn);
    const words = withdrawn ?? wordsOf(report.resource);
    const [concern] = readItems(reading, items, 'concern', readConcern);
    if (words === undefined || concern === undefined) return undefined;
    if (withdrawn) claimEqual(report.resource, 'conclusion', reading.language.texts.withdrawn);
    const [safetyNet] = readItems(reading, items, 'safety-net', readSafetyNet);
    const told = filled(readItems(reading, items, 'told', readTold));
    const advice = items
      .filter(({ item }) => item === 'plan-item')
      .flatMap((found) =>
        readItems(reading, [found], 'plan-item', readAdvice).map((item) => ({
          at: found.at,
          item,
        })),
      );
    const plan = filled(planInOrder(advice, requests));
    return {
      text: words.text,
      ...concern,
      ...(words.codings && { codings: words.codings }),
      ...(plan && { plan }),
      ...(safetyNet && { safetyNet }),
      ...(told && { told }),
    };
  });
}

function wordsOf(report: Element): Words | undefined {
  const text = textOf(report, 'conclusion');
  if (text === undefined) return undefined;
  const codes = innersOf(report, 'conclusionCode').flatMap((concept) =>
    codingsOf(innersOf(concept, 'coding')),
  );
  return { text, codings: filled(codes) };
}

function readWithdrawn(observed: Observed): Words | undefined {
  const { element, components } = observed;
  claimItemCode(observed);
  ownTime(observed);
  const text = textOf(element, 'valueString');
  if (text === undefined) return undefined;
  const codings = components.all('assessment').flatMap((component) => {
    const concept = innerOf(component, 'valueCodeableConcept');
    if (concept === undefined) return [];
    const found = codingsOf(innersOf(concept, 'coding'));
    const [coding] = found;
    if (coding) claimEqual(concept, 'text', coding.display ?? coding.code);
    return found;
  });
  return { text, codings: filled(codings) };
}

function readConcern(
  observed: Observed,
): Pick<Conclusion, 'concern' | 'worries' | 'basedOn'> | undefined {
  const { reading, element, components } = observed;
  claimItemCode(observed);
  ownTime(observed);
  const stated = ownValue(reading, innerOf(element, 'valueCodeableConcept'), 'concern');
  const concern = concerns.find((known) => known === stated);
  if (concern === undefined) return undefined;
  const worries = filled(components.texts('worry'));
  const basedOn = filled(statementsAt(observed, 'derivedFrom'));
  return { concern, ...(worries && { worries }), ...(basedOn && { basedOn }) };
}

function statementsAt({ reading, entry, element }: Observed, name: string): Key[] {
  return claimReferences(reading, element, name, (reference) =>
    reading.statementOf(reference, entry),
  );
}

function readSafetyNet(observed: Observed): SafetyNet | undefined {
  const { element, components } = observed;
  claimItemCode(observed);
  ownTime(observed);
  const text = textOf(element, 'valueString');
  if (text === undefined) return undefined;
  const returnIf = filled(components.texts('return-if'));
  const review = components.first('review-by');
  const reviewBy = review && dateOf(review, 'valueDateTime');
  const owner = components.text('owner');
  return {
    text,
    ...(returnIf && { returnIf }),
    ...(reviewBy !== undefined && { reviewBy }),
    ...(owner !== undefined && { owner }),
  };
}

function readTold(observed: Observed): Told | undefined {
  const { element, components } = observed;
  claimItemCode(observed);
  const who = textOf(element, 'valueString');
  const what = components.text('told-what');
  if (who === undefined || what === undefined) return undefined;
  const at = statedTime(observed);
  return { who, what, ...(at !== undefined && { at }) };
}

const urgencies = ['routine', 'urgent', 'asap', 'stat'] as const;

/** Advice and "nothing further" are observations; what is to be done is a request. */
function readAdvice(observed: Observed): PlanItem | undefined {
  const { element, components } = observed;
  claimItemCode(observed);
  ownTime(observed);
  const text = textOf(element, 'valueString');
  const key = components.text('plan-key');
  const kind = components.value('plan-kind', 'plan');
  if (text === undefined || key === undefined) return undefined;
  if (kind !== 'advice' && kind !== 'nothing-further') return undefined;
  const haste = components.value('urgency');
  const urgency = urgencies.find((known) => known === haste);
  const time = components.first('due');
  const due = time && dateOf(time, 'valueDateTime');
  const to = components.text('plan-to');
  const reasons = filled(statementsAt(observed, 'derivedFrom'));
  const guideline = components.text('guideline');
  const [service] = components.codes('service', 'services');
  return {
    key,
    kind,
    text,
    ...(urgency !== undefined && { urgency }),
    ...(due !== undefined && { due }),
    ...(to !== undefined && { to }),
    ...(reasons && { reasons }),
    ...(guideline !== undefined && { guideline }),
    ...(service !== undefined && { service }),
  };
}
