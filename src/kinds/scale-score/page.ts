import { joined } from '../../report/html.ts';
import { atPlace } from '../../report/page.ts';
import { answered } from '../../report/teller.ts';
import type { KindPage } from '../facets/page.ts';
import type { ScaleScore } from './statement.ts';

/** Scores as the examiner gave them, each with the version of its scale. */
export const scaleScorePage: KindPage<ScaleScore> = {
  tell: (score, page) => {
    const { teller, catalogue, labels } = page;
    const scale = catalogue.scales.get(score.scale);
    const answer =
      typeof score.score === 'number'
        ? String(score.score)
        : teller.inner(scale?.grades, score.score);
    const items = (score.items ?? []).map(({ item, value }) => {
      const said = typeof value === 'boolean' ? teller.flag(value) : String(value);
      return answered(teller.inner(scale?.items, item), said);
    });
    return {
      section: 'scores',
      line: joined(
        `${teller.subject(score)} (${labels.version} ${score.version})`,
        `${atPlace(page, score)}: ${answer}`,
        items.length > 0 && ` (${items.join('; ')})`,
      ),
    };
  },
};
