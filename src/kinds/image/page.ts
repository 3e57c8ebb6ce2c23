import { joined, words } from '../../report/html.ts';
import type { KindPage } from '../facets/page.ts';
import type { Image } from './statement.ts';

/** By title: a page holds no picture of itself. */
export const imagePage: KindPage<Image> = {
  tell: ({ title, region, side, consent }, { teller }) => ({
    section: 'pictures',
    line: joined(
      words(title),
      ` – ${teller.place(region, side)}; `,
      `${teller.display('items', 'photo-consent')}: ${teller.answer('consent', consent)}`,
    ),
  }),
};
