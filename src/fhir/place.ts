import type { Side } from '../model/primitive.ts';
import { type SideCode, sideText } from '../terminology/sides.ts';

/** Code of a region and side in the code system of the regions: `cheek-malar.right`. */
export function placeCode(region: string, side: Side | undefined): string {
  return side === undefined ? region : `${region}.${side}`;
}

/** A region and side in words, given the name of the region and the words for sides. */
export function placeText(
  name: string,
  side: Side | undefined,
  sides: Readonly<Record<SideCode, string>> = sideText,
): string {
  return side === undefined ? name : `${name}, ${sides[side]}`;
}

/** The words of a place with those below it that are not meant: `Skin (except Chin)`. */
export function placeTextExcept(text: string, except: string, places: readonly string[]): string {
  return places.length === 0 ? text : `${text} (${except} ${places.join('; ')})`;
}
