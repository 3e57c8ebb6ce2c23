import { listed } from '../../flat/answer.ts';
import type { Flat } from '../facets/flat.ts';
import type { ScaleScore } from './statement.ts';

export const scaleScoreFlat: Flat<ScaleScore> = {
  answers: ({ scale, version, score, items = [] }, _, catalogue) => {
    const grade = catalogue.scales.get(scale)?.grades?.find(({ code }) => code === score);
    return [
      {
        state: 'value',
        ...(typeof score === 'number' ? { value: String(score) } : { answer: score }),
        ...(grade !== undefined && { answer_display: grade.display }),
        attributes: listed([
          `version=${version}`,
          ...items.map(({ item, value }) => `${item}=${value}`),
        ]),
      },
    ];
  },
};
