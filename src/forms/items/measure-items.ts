import { lineage } from '../../checks/places/regions.ts';
import type { OneSide } from '../../model/sides.ts';
import { limitsOf } from '../../terminology/limits.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Measure } from '../../terminology/types.ts';
import type { FormItem, FormOption } from '../form.ts';
import type { FormWriter } from '../writer.ts';
import { scoreItems } from './score-items.ts';
import { testItems } from './test-items.ts';

/** A measure on one side: a figure in its one unit, or what it is recorded as: a score or a test. */
export function measureItems(
  writer: FormWriter,
  row: Lean<Measure>,
  side: OneSide | undefined,
  places: readonly Place[],
): readonly FormItem[] {
  const { catalogue } = writer;
  const scale = row.scale === undefined ? undefined : catalogue.scales.get(row.scale);
  if (scale !== undefined) return scoreItems(writer, scale, side);
  const test = row.test === undefined ? undefined : catalogue.testPoints.get(row.test);
  if (test !== undefined) return testItems(writer, test, side);
  return isAnywhere(writer, row) ? anywhere(writer, row, places) : inPlace(writer, row, side);
}

/** One region and side of the protocol. */
export interface Place {
  readonly region: string;
  readonly side: OneSide | undefined;
}

/** The measure of a lesion, node or lump, which can lie in any region below that of the measure. */
function isAnywhere({ catalogue }: FormWriter, row: Lean<Measure>): boolean {
  const region = catalogue.regions.get(row.region);
  return region?.group === true && region.laterality !== 'paired' && row.laterality !== 'paired';
}

function inPlace(
  writer: FormWriter,
  row: Lean<Measure>,
  side: OneSide | undefined,
): readonly FormItem[] {
  const { code: measure, region, unit } = row;
  const linkId = ['measurement', measure, region, ...(side === undefined ? [] : [side])].join('/');
  const statement = { kind: 'measurement', measure, unit, region, ...(side && { side }) };
  return [figure(row, { linkId, key: linkId, statement, text: writer.sided(row.display, side) })];
}

function anywhere(
  writer: FormWriter,
  row: Lean<Measure>,
  asked: readonly Place[],
): readonly FormItem[] {
  const linkId = `measurement/${row.code}`;
  const statement = { kind: 'measurement', measure: row.code, unit: row.unit };
  return [
    {
      linkId,
      type: 'group',
      text: row.display,
      repeats: true,
      items: [
        {
          linkId: `${linkId}:place`,
          type: 'choice',
          text: writer.words.place,
          options: placeOptions(writer, row, asked),
          says: { part: 'statement', key: linkId, statement, member: ['region'] },
        },
        {
          ...figure(row, {
            linkId: `${linkId}:value`,
            key: linkId,
            statement,
            text: writer.words.figure,
          }),
          required: true,
          // Renderers show one empty filling of the group, in which nothing is needed.
          enabledBy: { item: `${linkId}:place` },
        },
      ],
    },
  ];
}

/** Regions below that of the measure: those of the protocol, or all where it names none of them. */
function placeOptions(
  writer: FormWriter,
  { region: group }: Lean<Measure>,
  asked: readonly Place[],
): readonly FormOption[] {
  const { catalogue } = writer;
  const isBelow = (region: string): boolean => lineage(catalogue, region).includes(group);
  const named = [...new Set(asked.map(({ region }) => region))].filter(isBelow);
  const regions =
    named.length > 0
      ? named
      : [...catalogue.regions.values()].flatMap(({ code, group: isGroup }) =>
          isGroup !== true && isBelow(code) ? [code] : [],
        );
  return regions.flatMap((region) => {
    const row = catalogue.regions.get(region);
    if (row === undefined) return [];
    const { sides, required } = lateralitySides[row.laterality];
    const base = { system: writer.system('regions', region), value: region };
    const whole = { ...base, code: region, display: row.display };
    if (!required) return [whole];
    return sides
      .filter((side) => side !== 'both')
      .map((side) => ({
        ...base,
        code: `${region}.${side}`,
        display: `${row.display}, ${writer.display('values', `side.${side}`)}`,
        also: { side },
      }));
  });
}

interface FigureAsked {
  readonly linkId: string;
  readonly key: string;
  readonly statement: { readonly kind: string } & Readonly<Record<string, string>>;
  readonly text: string;
}

function figure(
  { code, unit, type }: Lean<Measure>,
  { linkId, key, statement, text }: FigureAsked,
): FormItem {
  const limits = limitsOf(code);
  // Units in braces and the unit 1 count something and have no name of their own.
  const named = unit === '1' || unit.startsWith('{') ? text : `${text} (${unit})`;
  return {
    linkId,
    type: type === 'count' ? 'integer' : 'decimal',
    text: named,
    unit,
    ...(limits && {
      minimum: limits.possible.low,
      maximum: limits.possible.high,
      usual: { minimum: limits.usual.low, maximum: limits.usual.high },
    }),
    says: { part: 'statement', key, statement, member: ['value'] },
  };
}
