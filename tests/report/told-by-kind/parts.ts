import type { Side } from '../../../src/index.ts';
import type { MapRow, Mark, Told } from './told.ts';

/** A mark on the side it belongs to; both sides of a region that crosses the midline are all of it. */
export function crossing(side: Side, mark: Mark): MapRow {
  if (side === 'both') return [mark, mark, mark];
  return side === 'right' ? [mark, '', ''] : side === 'left' ? ['', mark, ''] : ['', '', mark];
}

export function paired(side: Side, mark: Mark): MapRow {
  return side === 'both' ? [mark, mark, ''] : crossing(side, mark);
}

/** A row with the answer in the column of its side; without a column a line of its own. */
export function answered(
  name: string,
  side: Side | undefined,
  answer: string,
  ...difference: string[]
): Pick<Told, 'row' | 'line'> {
  if (side === 'right') return { row: [name, answer, '–', ...difference] };
  if (side === 'left') return { row: [name, '–', answer, ...difference] };
  if (side === 'both') return { row: [name, answer, answer, ...difference] };
  const words: Partial<Record<Side, string>> = {
    midline: ', midline',
    'right-of-midline': ', right of the midline',
    'left-of-midline': ', left of the midline',
  };
  return { line: `${name}${side === undefined ? '' : (words[side] ?? '')}: ${answer}` };
}

export const forehead: Readonly<Record<Side, string>> = {
  right: 'Forehead, right',
  left: 'Forehead, left',
  both: 'Forehead, right and left',
  midline: 'Forehead, midline',
  'right-of-midline': 'Forehead, right of the midline',
  'left-of-midline': 'Forehead, left of the midline',
};

export function bySide<T>(tell: (side: Side) => T): Record<Side, T> {
  return {
    right: tell('right'),
    left: tell('left'),
    both: tell('both'),
    midline: tell('midline'),
    'right-of-midline': tell('right-of-midline'),
    'left-of-midline': tell('left-of-midline'),
  };
}

/** Where the parser takes no other sides; the table still says where the page puts them. */
export function unless(...sides: Side[]): (side: Side) => { readonly refused?: true } {
  return (side) => (sides.includes(side) ? {} : { refused: true });
}

export const ofPair = unless('right', 'left', 'both');
export const ofPoint = unless('right', 'left');

export const region = 'forehead';
export const noMap = {};
export const right = { region, side: 'right' } as const;
export const reason = { code: 'unable-pain', text: 'A graze' };
