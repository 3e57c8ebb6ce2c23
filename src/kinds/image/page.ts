import { joined, words } from '../../report/html.ts';
import type { KindPage } from '../facets/page.ts';
import type { Image } from './statement.ts';

/** By title, with what it may be used for: a page holds no picture of itself. */
export const imagePage: KindPage<Image> = {
  tell: ({ title, region, side, consent, scaleBar, purpose }, { teller }) => ({
    section: 'pictures',
    line: joined(
      words(title),
      ` – ${teller.place(region, side)}; `,
      scaleBar !== undefined &&
        `${teller.display('items', 'scale-bar')}: ${teller.flag(scaleBar)}; `,
      `${teller.display('items', 'photo-consent')}: ${teller.answer('consent', consent)}`,
      purpose !== undefined && [' (', words(purpose), ')'],
    ),
  }),
};
