import { joined, words } from '../../report/html.ts';
import { methodText } from '../../report/page.ts';
import type { ListSection } from '../../report/sections.ts';
import type { KindPage, Mark } from '../facets/page.ts';
import type { RegionState } from './statement.ts';

const shown: Readonly<Record<RegionState['state'], { section: ListSection; mark: Mark }>> = {
  abnormal: { section: 'abnormal', mark: 'sign' },
  normal: { section: 'normal', mark: 'normal' },
  partial: { section: 'partial', mark: 'partial' },
  'not-examined': { section: 'not-examined', mark: 'not-examined' },
  'not-applicable': { section: 'not-examined', mark: 'not-examined' },
};

/** What became of a region as a whole: abnormal, normal, in part, not examined, not there. */
export const regionStatePage: KindPage<RegionState> = {
  tell: (state, page) => {
    const { teller } = page;
    const why =
      state.state === 'partial' ? state.limit : 'reason' in state ? state.reason : undefined;
    return {
      section: shown[state.state].section,
      line: joined(
        teller.placeOf(state),
        why && joined(': ', words(teller.reason(why))),
        methodText(page, state),
      ),
    };
  },
  mark: ({ state }) => shown[state].mark,
};
