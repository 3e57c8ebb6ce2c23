import type { CoverageItem } from '../checks/coverage/coverage.ts';
import type { OneSide } from '../model/sides.ts';
import type { FormItem } from './form.ts';
import { measureItems } from './items/measure-items.ts';
import { signItems } from './items/sign-items.ts';
import { type RegionAsked, stateItems } from './items/state-items.ts';
import { sensationItems, testItems } from './items/test-items.ts';
import { withLastTime } from './last-time.ts';
import type { FormWriter } from './writer.ts';

type Asked = Pick<CoverageItem, 'kind' | 'code' | 'section' | 'side' | 'method' | 'modality'>;

/** What is asked at one region: of the region as a whole, and of each side. */
interface Page {
  readonly region: string;
  readonly blocks: Map<OneSide | undefined, FormItem[]>;
}

/**
 * A page for each region, in the order of the body, with what the protocol asks for there: the region
 * itself, points, tests and measures, for each side by itself, and a note.
 */
export function formPages(writer: FormWriter, asked: readonly Asked[]): readonly FormItem[] {
  const pages = new Map<string, Page>();
  const add = (region: string, side: OneSide | undefined, items: readonly FormItem[]): void => {
    const page = pages.get(region) ?? { region, blocks: new Map() };
    pages.set(region, page);
    const block = page.blocks.get(side) ?? [];
    page.blocks.set(side, block);
    for (const item of withLastTime(writer, items)) block.push(item);
  };
  const regions = regionsAsked(asked);
  for (const one of regions) {
    add(one.region, one.side, [...stateItems(writer, one), ...signItems(writer, one)]);
  }
  const { catalogue } = writer;
  for (const [{ code, side }, modalities] of pointsAsked(asked)) {
    const row = catalogue.testPoints.get(code);
    if (row !== undefined) add(row.region, side, sensationItems(writer, row, side, modalities));
  }
  for (const { kind, code, side } of asked) {
    const test = kind === 'test' ? catalogue.testPoints.get(code) : undefined;
    if (test !== undefined) add(test.region, side, testItems(writer, test, side));
    const measure = kind === 'measure' ? catalogue.measures.get(code) : undefined;
    if (measure !== undefined) {
      add(measure.region, side, measureItems(writer, measure, side, regions));
    }
  }
  return inOrder(writer, [...pages.values()]).map((page) => pageOf(writer, page));
}

function regionsAsked(asked: readonly Asked[]): readonly RegionAsked[] {
  const regions = new Map<
    string,
    { region: string; side: OneSide | undefined; methods: string[] }
  >();
  for (const { kind, code, side, method } of asked) {
    if (kind !== 'region' && kind !== 'method') continue;
    const name = `${code}/${side ?? ''}`;
    const known = regions.get(name) ?? { region: code, side, methods: [] };
    regions.set(name, known);
    if (method !== undefined) known.methods.push(method);
  }
  return [...regions.values()];
}

/** The modalities of each point and side, which are one statement. */
function pointsAsked(
  asked: readonly Asked[],
): readonly (readonly [Pick<Asked, 'code' | 'side'>, readonly string[]])[] {
  const points = new Map<string, readonly [Asked, string[]]>();
  for (const one of asked) {
    if (one.kind !== 'point' || one.modality === undefined) continue;
    const name = `${one.code}/${one.side ?? ''}`;
    const known = points.get(name) ?? [one, []];
    points.set(name, known);
    if (!known[1].includes(one.modality)) known[1].push(one.modality);
  }
  return [...points.values()];
}

/** By section of the body; within one as the protocol has them. */
function inOrder({ catalogue }: FormWriter, pages: readonly Page[]): readonly Page[] {
  const order = ({ region }: Page): number => {
    const section = catalogue.regions.get(region)?.section ?? '';
    return catalogue.sections.get(section)?.order ?? Number.MAX_SAFE_INTEGER;
  };
  return [...pages].sort((one, other) => order(one) - order(other));
}

function pageOf(writer: FormWriter, { region, blocks }: Page): FormItem {
  const items = [...blocks].flatMap(([side, block]): readonly FormItem[] =>
    side === undefined
      ? block
      : [
          {
            linkId: `region/${region}/${side}`,
            type: 'group',
            text: writer.sided(writer.display('regions', region), side),
            items: block,
          },
        ],
  );
  const key = `note/${region}`;
  const statement = { kind: 'note', region };
  const note: FormItem = {
    linkId: key,
    type: 'text',
    text: writer.display('items', 'note'),
    says: { part: 'statement', key, statement, member: ['text'] },
  };
  return {
    linkId: `region/${region}`,
    type: 'group',
    text: writer.display('regions', region),
    page: true,
    items: [...items, note],
  };
}
