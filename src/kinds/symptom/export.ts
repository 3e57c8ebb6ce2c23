import type { ObservationComponent } from 'fhir/r4.js';
import type { ExportContext } from '../../export/context.ts';
import {
  codedComponent,
  type Exporter,
  subjectConcept,
  textComponent,
} from '../../export/resources/observation.ts';
import { quantity } from '../../fhir/quantity.ts';
import type { Symptom } from './statement.ts';

/** A complaint asked about, in the category `survey`: it is told, not examined. */
export const symptomExport: Exporter<Symptom> = {
  profile: 'face-neck-symptom',
  parts: (context, symptom) => ({
    category: 'survey',
    code: subjectConcept(context, symptom),
    value: { valueCodeableConcept: context.coder.concept('values', `answer.${symptom.answer}`) },
    components: symptomComponents(context, symptom),
  }),
};

function symptomComponents(context: ExportContext, symptom: Symptom): ObservationComponent[] {
  const { coder } = context;
  const found: ObservationComponent[] = [];
  if (symptom.toldBy !== undefined) {
    found.push(
      codedComponent(context, 'told-by', coder.concept('values', `told-by.${symptom.toldBy}`)),
    );
  }
  if (symptom.onset !== undefined) {
    found.push({ code: coder.concept('items', 'onset'), valueDateTime: symptom.onset });
  }
  if (symptom.durationText !== undefined) {
    found.push(textComponent(context, 'duration-text', symptom.durationText));
  }
  if (symptom.duration !== undefined) {
    const { value, unit, comparator } = symptom.duration;
    found.push({
      code: coder.concept('items', 'duration'),
      valueQuantity: quantity(value, unit, comparator),
    });
  }
  if (symptom.course !== undefined) {
    found.push(
      codedComponent(context, 'course', coder.concept('values', `course.${symptom.course}`)),
    );
  }
  if (symptom.severity !== undefined) {
    found.push({ code: coder.concept('items', 'severity'), valueInteger: symptom.severity });
  }
  if (symptom.trigger !== undefined) found.push(textComponent(context, 'trigger', symptom.trigger));
  return found;
}
