import {
  builtInCatalogue,
  type Coverage,
  type CoverageItem,
  coverageGaps,
} from '../../../src/index.ts';
import type { Placed } from './asked.ts';
import type { Made } from './statements.ts';

/** One thing that the protocol asks for and nothing is said of, and where it is said. */
export interface OpenPlace {
  readonly text: string;
  /** LinkIds. */
  readonly page: string;
  readonly field: string;
}

/** What is outstanding, in the order of the pages. */
export function openPlaces({ all, pages }: Made, coverage: Coverage): readonly OpenPlace[] {
  const fields = fieldsByName(all);
  const found = coverageGaps(coverage).flatMap((open): OpenPlace[] => {
    const at = fields.get(nameOf(open));
    if (at === undefined) return [];
    const method = open.method && builtInCatalogue.methods.get(open.method)?.display;
    const text = method === undefined ? at.item.text : `${placeText(open)}: ${method}`;
    // How it was examined is asked once it was said that it was.
    const field = at.isAsked ? at.item.linkId : at.item.linkId.replace(/:methods$/, '');
    return [{ text, page: at.page.linkId, field }];
  });
  const order = new Map(pages.map(({ linkId }, at) => [linkId, at]));
  return found.sort((a, b) => (order.get(a.page) ?? 0) - (order.get(b.page) ?? 0));
}

function placeText({ code, side }: Pick<CoverageItem, 'code' | 'side'>): string {
  const display = builtInCatalogue.regions.get(code)?.display ?? code;
  return side === undefined ? display : `${display}, ${side}`;
}

function nameOf({ kind, code, side, modality }: CoverageItem): string {
  return [kind, code, side ?? '', modality ?? ''].join('|');
}

function fieldsByName(all: readonly Placed[]): ReadonlyMap<string, Placed> {
  const fields = new Map<string, Placed>();
  for (const one of all) {
    for (const name of namesOf(one)) if (!fields.has(name)) fields.set(name, one);
  }
  return fields;
}

/** Names of the open things that a question answers. */
function namesOf({ item }: Placed): readonly string[] {
  // A measure that can be anywhere is added at its group.
  const anywhere = /^measurement\/([^/:#]+)$/.exec(item.linkId)?.[1];
  if (anywhere !== undefined) return [`measure|${anywhere}||`];
  if (item.says?.part !== 'statement') return [];
  const { statement, member } = item.says;
  const { kind, region = '', point = '', test = '', measure = '', scale = '' } = statement;
  const side = statement['side'] === 'midline' ? '' : (statement['side'] ?? '');
  if (kind === 'region-state' && member[0] === 'state') return [`region|${region}|${side}|`];
  if (kind === 'region-state' && member[0] === 'methods') return [`method|${region}|${side}|`];
  if (kind === 'sensation' && member[2] === 'result') {
    return [`point|${point}|${side}|${member[1] ?? ''}`];
  }
  if (member[0] === 'result' || member[0] === 'grade') {
    return [`test|${test}|${side}|`, ...measuresBy((row) => row.test === test, side)];
  }
  if (member[0] === 'score') return measuresBy((row) => row.scale === scale, side);
  return member[0] === 'value' ? [`measure|${measure}|${side}|`] : [];
}

function measuresBy(
  is: (row: { readonly test?: string; readonly scale?: string }) => boolean,
  side: string,
): readonly string[] {
  return [...builtInCatalogue.measures.values()]
    .filter(is)
    .map(({ code }) => `measure|${code}|${side}|`);
}
