import type { Side } from '../../model/primitive.ts';
import { sideText } from '../../terminology/sides.ts';
import type { Components } from '../components.ts';

const sides = Object.keys(sideText) as Side[]; // keys of a literal

/** The side that stands in a component, since there is no body site to say it. */
export function sideOf(components: Components): { readonly side?: Side } {
  const stated = components.value('side');
  const side = sides.find((known) => known === stated);
  return side === undefined ? {} : { side };
}
