import { element, joined, words } from '../../report/html.ts';
import type { KindPage } from '../facets/page.ts';
import type { Note } from './statement.ts';

/** Verbatim. */
export const notePage: KindPage<Note> = {
  tell: ({ region, side, text }, { teller }) => {
    const where = region === undefined ? side && teller.side(side) : teller.place(region, side);
    return {
      section: 'notes',
      line: joined(
        where !== undefined && element('strong', {}, `${where}: `),
        element('span', { class: 'verbatim' }, words(text)),
      ),
    };
  },
};
