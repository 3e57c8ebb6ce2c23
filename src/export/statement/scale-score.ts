import type { CodeableConcept, Observation, ObservationComponent } from 'fhir/r4.js';
import type { ScaleItem, ScaleScore } from '../../model/statement.ts';
import { bodySite } from '../body-site.ts';
import type { ExportContext } from '../context.ts';
import { observationOf, sideComponent, textComponent } from '../observation.ts';

/** The score as given by the examiner; the method names the scale and its version. */
export function scaleScoreObservation(context: ExportContext, score: ScaleScore): Observation {
  const { coder, catalogue } = context;
  const scale = catalogue.scales.get(score.scale);
  const grade = scale?.grades?.find(({ code }) => code === score.score);
  const observation = observationOf(context, score, {
    code: coder.concept('scales', score.scale),
    bodySite: score.region === undefined ? undefined : bodySite(context, score.region, score.side),
    value:
      typeof score.score === 'number'
        ? { valueInteger: score.score }
        : grade === undefined
          ? { valueString: score.score }
          : { valueCodeableConcept: coder.valueConcept('scales', score.scale, grade) },
    focus: score.about === undefined ? [] : [score.about],
    components: [
      textComponent(context, 'scale-version', score.version),
      ...(score.items ?? []).map((item) => itemComponent(context, score.scale, item)),
      ...(score.region === undefined && score.side !== undefined
        ? [sideComponent(context, score.side)]
        : []),
    ],
  });
  const method: CodeableConcept = {
    text: `${coder.display('scales', score.scale)}, ${context.language.texts.version} ${score.version}`,
  };
  return { ...observation, method };
}

function itemComponent(
  { coder, catalogue }: ExportContext,
  scale: string,
  { item, value }: ScaleItem,
): ObservationComponent {
  const row = catalogue.scales.get(scale)?.items?.find(({ code }) => code === item);
  const code: CodeableConcept =
    row === undefined ? { text: item } : coder.valueConcept('scales', scale, row);
  return typeof value === 'boolean' ? { code, valueBoolean: value } : { code, valueInteger: value };
}
