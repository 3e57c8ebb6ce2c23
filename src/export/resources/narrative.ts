import type { Narrative, Observation, ObservationComponent, Quantity } from 'fhir/r4.js';
import { decimalText } from '../../fhir/json/decimal.ts';
import { escapeXhtml, narrativeDiv } from '../../fhir/xhtml.ts';
import type { Texts } from '../../terminology/languages/language.ts';

/** A narrative made from the data alone. @see https://hl7.org/fhir/R4/narrative.html */
export function generated(content: string): Narrative {
  return { status: 'generated', div: narrativeDiv(content) };
}

/** The text of a short resource: its parts in one paragraph, or no text where it has none. */
export function summary(
  { narrative }: { readonly narrative: boolean },
  parts: readonly (string | undefined)[],
): { text?: Narrative } {
  const said = parts.filter((part) => part !== undefined && part.trim() !== '');
  if (!narrative || said.length === 0) return {};
  return { text: generated(`<p>${escapeXhtml(said.join('; '))}</p>`) };
}

/** One paragraph that says sign, place, answer and components; notes in paragraphs of their own. */
export function observationNarrative(observation: Observation, texts: Texts): Narrative {
  let content = `<p>${observationHead(observation, texts)}</p>`;
  if (observation.component) {
    const items = observation.component.map((component) => componentItem(component, texts));
    content += `<ul>${items.join('')}</ul>`;
  }
  for (const { text } of observation.note ?? []) content += `<p>${escapeXhtml(text)}</p>`;
  return generated(content);
}

/** The same on one line, as XHTML, for a list in a section. */
export function observationLine(observation: Observation, texts: Texts): string {
  let line = observationHead(observation, texts);
  for (const { text } of observation.note ?? []) line += `. ${escapeXhtml(text)}`;
  return line;
}

function observationHead(observation: Observation, texts: Texts): string {
  let head = `<b>${escapeXhtml(observation.code.text ?? '')}</b>`;
  if (observation.bodySite?.text) head += ` (${escapeXhtml(observation.bodySite.text)})`;
  head += answerText(observation, texts);
  if (observation.method?.text) {
    head += `; ${escapeXhtml(texts.by)} ${escapeXhtml(observation.method.text)}`;
  }
  return head;
}

function answerText(observation: Observation, texts: Texts): string {
  const answer = valueText(observation, texts);
  if (answer !== undefined) return `: ${escapeXhtml(answer)}`;
  const reason = observation.dataAbsentReason;
  if (reason === undefined) return '';
  const said = reason.coding?.[0]?.display ?? texts.noResult;
  return `: ${escapeXhtml(texts.noResult)} (${escapeXhtml([said, reason.text].filter(Boolean).join('; '))})`;
}

function componentItem(component: ObservationComponent, texts: Texts): string {
  const name = escapeXhtml(component.code.text ?? '');
  const answer = valueText(component, texts);
  if (answer !== undefined) return `<li>${name}: ${escapeXhtml(answer)}</li>`;
  const reason = component.dataAbsentReason?.text ?? texts.notStated;
  return `<li>${name}: ${escapeXhtml(texts.noResult)} (${escapeXhtml(reason)})</li>`;
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
export function valueText(holder: WithValue, texts: Texts): string | undefined {
  if (holder.valueCodeableConcept) return holder.valueCodeableConcept.text;
  if (holder.valueQuantity) return quantityText(holder.valueQuantity);
  if (holder.valueString !== undefined) return holder.valueString;
  if (holder.valueInteger !== undefined) return String(holder.valueInteger);
  if (holder.valueBoolean !== undefined) return holder.valueBoolean ? texts.yes : texts.no;
  return holder.valueDateTime;
}

function quantityText(quantity: Quantity): string {
  const value = decimalText(quantity, 'value') ?? '';
  return `${quantity.comparator ?? ''}${value} ${quantity.unit ?? ''}`.trim();
}
