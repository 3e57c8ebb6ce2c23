import type { CodeableConcept, ObservationComponent } from 'fhir/r4.js';
import type { ExportContext } from '../../export/context.ts';
import { type Exporter, textComponent } from '../../export/resources/observation.ts';
import type { ScaleItem, ScaleScore } from './statement.ts';

/** The score as given by the examiner; the method names the scale and its version. */
export const scaleScoreExport: Exporter<ScaleScore> = {
  profile: 'face-neck-observation',
  parts: (context, score) => {
    const { coder, catalogue, language } = context;
    const scale = catalogue.scales.get(score.scale);
    const grade = scale?.grades?.find(({ code }) => code === score.score);
    return {
      code: coder.concept('scales', score.scale),
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
      ],
      method: {
        text: `${coder.display('scales', score.scale)}, ${language.texts.version} ${score.version}`,
      },
    };
  },
};

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
