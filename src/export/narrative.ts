import type { Narrative, Observation, ObservationComponent, Quantity } from 'fhir/r4.js';
import { decimalText } from '../fhir/decimal.ts';
import { escapeXhtml, narrativeDiv } from '../fhir/xhtml.ts';

/** A narrative made from the data alone. @see https://hl7.org/fhir/R4/narrative.html */
export function generated(content: string): Narrative {
  return { status: 'generated', div: narrativeDiv(content) };
}

/** One paragraph that says sign, place, answer and components; notes in paragraphs of their own. */
export function observationNarrative(observation: Observation): Narrative {
  let content = `<p>${observationHead(observation)}</p>`;
  if (observation.component) {
    content += `<ul>${observation.component.map(componentItem).join('')}</ul>`;
  }
  for (const { text } of observation.note ?? []) content += `<p>${escapeXhtml(text)}</p>`;
  return generated(content);
}

/** The same on one line, as XHTML, for a list in a section. */
export function observationLine(observation: Observation): string {
  let line = observationHead(observation);
  for (const { text } of observation.note ?? []) line += `. ${escapeXhtml(text)}`;
  return line;
}

function observationHead(observation: Observation): string {
  let head = `<b>${escapeXhtml(observation.code.text ?? '')}</b>`;
  if (observation.bodySite?.text) head += ` (${escapeXhtml(observation.bodySite.text)})`;
  head += answerText(observation);
  if (observation.method?.text) head += `; by ${escapeXhtml(observation.method.text)}`;
  return head;
}

function answerText(observation: Observation): string {
  const answer = valueText(observation);
  if (answer !== undefined) return `: ${escapeXhtml(answer)}`;
  const reason = observation.dataAbsentReason;
  if (reason === undefined) return '';
  const said = reason.coding?.[0]?.display ?? 'no result';
  return `: no result (${escapeXhtml([said, reason.text].filter(Boolean).join('; '))})`;
}

function componentItem(component: ObservationComponent): string {
  const name = escapeXhtml(component.code.text ?? '');
  const answer = valueText(component);
  if (answer !== undefined) return `<li>${name}: ${escapeXhtml(answer)}</li>`;
  const reason = component.dataAbsentReason?.text ?? 'not stated';
  return `<li>${name}: no result (${escapeXhtml(reason)})</li>`;
}

type WithValue = Pick<
  Observation & ObservationComponent,
  | 'valueCodeableConcept'
  | 'valueQuantity'
  | 'valueString'
  | 'valueInteger'
  | 'valueBoolean'
  | 'valueDateTime'
>;

/** The value in words; undefined when there is none. */
export function valueText(holder: WithValue): string | undefined {
  if (holder.valueCodeableConcept) return holder.valueCodeableConcept.text;
  if (holder.valueQuantity) return quantityText(holder.valueQuantity);
  if (holder.valueString !== undefined) return holder.valueString;
  if (holder.valueInteger !== undefined) return String(holder.valueInteger);
  if (holder.valueBoolean !== undefined) return holder.valueBoolean ? 'yes' : 'no';
  return holder.valueDateTime;
}

function quantityText(quantity: Quantity): string {
  const value = decimalText(quantity, 'value') ?? '';
  return `${quantity.comparator ?? ''}${value} ${quantity.unit ?? ''}`.trim();
}
