import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { JsonSource } from '../../../src/convert/mapping/source.ts';
import { type Draw, itemsOf, mappingOf, type Truth, target, type Writer } from '../context.ts';

type Style = 'object' | 'flat' | 'item' | 'outer' | 'lists';

/** One exam as JSON: values in objects with their sides, side by side, or as items in lists. */
export const writeJson: Writer = (draw) => {
  const { truths, person, field } = draw;
  const style: Style = draw.pick(['object', 'flat', 'item', 'outer', 'lists']);
  // A property stands once in an object, and a value there has one side.
  const used = style === 'flat' ? truths.slice(0, 1) : truths;
  const parts = draw.shuffled(used.map((truth) => partOf(truth, style, draw)));
  const ids = draw.shuffled([
    { type: field('MR'), value: field(person.mr) },
    { type: field('SS'), value: field(person.ss) },
  ]);
  const body = style === 'flat' ? { ...parts[0] } : { [style === 'item' ? 'm' : 'eye']: parts };
  const exam = { no: '20240205', ...body, pat: { id: ids } };
  const text = JSON.stringify({ exams: [exam] });
  return { mapping: jsonMapping(style), text, truths, person };
};

function partOf(truth: Truth, style: Style, draw: Draw): object {
  const { field } = draw;
  const [side = 'R'] = truth.sides;
  const entries: (readonly [string, unknown])[] = [
    ['unit', field(truth.unit)],
    ['value', field(truth.value)],
  ];
  if (style === 'outer') {
    const inner = Object.fromEntries([...draw.shuffled(entries), ['code', 'MRD1']]);
    return Object.fromEntries(draw.shuffled([['side', field(side)] as const, ['m', [inner]]]));
  }
  const sides = style === 'lists' ? truth.sides.map((one) => field(one)) : field(side);
  const all = [...entries, ['side', sides] as const, ['note', field(truth.note)] as const];
  return Object.fromEntries(draw.shuffled(style === 'item' ? [...all, ['code', 'MRD1']] : all));
}

function jsonMapping(style: Style): Mapping {
  const source: JsonSource = { syntax: 'json', exam: 'exams' };
  const about = { id: 'no', person: 'pat/id/value', type: 'pat/id/type' };
  const code = (name: string): readonly string[] => [`${name}/code`];
  switch (style) {
    case 'flat':
      return mappingOf(source, {
        ...about,
        fields: { value: { ...target, sideFrom: 'side', unitFrom: 'unit', noteFrom: 'note' } },
      });
    case 'item':
      return mappingOf(
        { ...source, items: ['m'] },
        {
          ...about,
          items: itemsOf({
            ...{ code: code('m'), value: 'm/value', side: 'm/side', unit: 'm/unit' },
            note: 'm/note',
          }),
        },
      );
    case 'outer':
      return mappingOf(
        { ...source, items: ['eye/m'] },
        {
          ...about,
          items: itemsOf({ code: code('m'), value: 'm/value', side: '../side', unit: 'm/unit' }),
        },
      );
    default:
      return mappingOf(source, {
        ...about,
        fields: {
          'eye/value': {
            ...{ ...target, sideFrom: 'eye/side', unitFrom: 'eye/unit', noteFrom: 'eye/note' },
          },
        },
      });
  }
}
