import { joined, words } from '../../report/html.ts';
import { methodText } from '../../report/page.ts';
import type { ListSection } from '../../report/sections.ts';
import { wordOf } from '../../report/words/report-words.ts';
import type { KindPage, Mark } from '../facets/page.ts';
import type { RegionState } from './statement.ts';

const shown: Readonly<Record<RegionState['state'], { section: ListSection; mark: Mark }>> = {
  abnormal: { section: 'abnormal', mark: 'sign' },
  normal: { section: 'normal', mark: 'normal' },
  partial: { section: 'notExamined', mark: 'partial' },
  'not-examined': { section: 'notExamined', mark: 'not-examined' },
  'not-applicable': { section: 'notExamined', mark: 'not-examined' },
};

/** What became of a region as a whole; regions of which the same is said stand together. */
export const regionStatePage: KindPage<RegionState> = {
  tell: (state, page) => {
    const { teller, labels } = page;
    const { region, side, place } = state;
    const { section } = shown[state.state];
    const why =
      state.state === 'partial' ? state.limit : 'reason' in state ? state.reason : undefined;
    const head = wordOf(labels.states, state.state);
    const except = state.state === 'normal' ? state.except : undefined;
    const tail = methodText(page, state);
    if (place === undefined && why?.text === undefined) {
      const reason = why === undefined ? '' : ` (${teller.reason(why)})`;
      return { section, head: head + reason, of: { region, side, except }, tail };
    }
    return {
      section,
      line: joined(
        `${head}: ${teller.placeOf({ region, side, except })}`,
        place && joined(' (', words(place), ')'),
        why && joined(': ', words(teller.reason(why))),
        tail,
      ),
    };
  },
  mark: ({ state }) => shown[state].mark,
};
