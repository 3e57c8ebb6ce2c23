import type { Observation, ObservationComponent } from 'fhir/r4.js';
import { quantity } from '../../fhir/quantity.ts';
import type { Symptom } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import { codedComponent, observationOf, sideComponent, textComponent } from '../observation.ts';

/** A complaint asked about, in the category `survey`: it is told, not examined. */
export function symptomObservation(context: ExportContext, symptom: Symptom): Observation {
  const { coder } = context;
  return observationOf(context, symptom, {
    category: 'survey',
    code: coder.concept('symptoms', symptom.symptom),
    bodySite:
      symptom.region === undefined ? undefined : bodySite(context, symptom.region, symptom.side),
    value: { valueCodeableConcept: coder.concept('values', `answer.${symptom.answer}`) },
    components: symptomComponents(context, symptom),
  });
}

function symptomComponents(context: ExportContext, symptom: Symptom): ObservationComponent[] {
  const { coder } = context;
  const item = (code: string): ObservationComponent['code'] => coder.concept('items', code);
  const found: ObservationComponent[] = [];
  if (symptom.toldBy !== undefined) {
    found.push(
      codedComponent(context, 'told-by', coder.concept('values', `told-by.${symptom.toldBy}`)),
    );
  }
  if (symptom.onset !== undefined) {
    found.push({ code: item('onset'), valueDateTime: symptom.onset });
  }
  if (symptom.durationText !== undefined) {
    found.push(textComponent(context, 'duration-text', symptom.durationText));
  }
  if (symptom.duration !== undefined) {
    const { value, unit, comparator } = symptom.duration;
    found.push({ code: item('duration'), valueQuantity: quantity(value, unit, comparator) });
  }
  if (symptom.course !== undefined) {
    found.push(
      codedComponent(context, 'course', coder.concept('values', `course.${symptom.course}`)),
    );
  }
  if (symptom.severity !== undefined) {
    found.push({ code: item('severity'), valueInteger: symptom.severity });
  }
  if (symptom.trigger !== undefined) found.push(textComponent(context, 'trigger', symptom.trigger));
  if (symptom.region === undefined && symptom.side !== undefined) {
    found.push(sideComponent(context, symptom.side));
  }
  return found;
}
