import type { OneSide } from '../../model/sides.ts';
import type { FormItem } from '../form.ts';
import type { FormWriter } from '../writer.ts';
import { reasonItems } from './reason-items.ts';

/** A region on one side, and the methods that the protocol asks for there. */
export interface RegionAsked {
  readonly region: string;
  readonly side: OneSide | undefined;
  readonly methods: readonly string[];
}

const examined = ['normal', 'abnormal', 'partial'] as const;

/** Statement key of the state of a region, which is also the linkId of its question. */
export function stateKey({ region, side }: Pick<RegionAsked, 'region' | 'side'>): string {
  return ['region-state', region, ...(side === undefined ? [] : [side])].join('/');
}

/** Where a region was looked at, as condition of what is asked of it. */
export function whereExamined(
  asked: RegionAsked,
  states: readonly (typeof examined)[number][] = examined,
): NonNullable<FormItem['enabledBy']> {
  return { item: stateKey(asked), codes: states.map((state) => `state.${state}`) };
}

/**
 * What became of a region: a choice without anything chosen, then how it was examined, or why it was
 * not, or what was in the way.
 */
export function stateItems(writer: FormWriter, asked: RegionAsked): readonly FormItem[] {
  const { region, side, methods } = asked;
  const key = stateKey(asked);
  const target = {
    part: 'statement' as const,
    key,
    statement: { kind: 'region-state', region, ...(side !== undefined && { side }) },
  };
  const where = writer.sided(writer.display('regions', region), side);
  const taken = writer.catalogue.regions.get(region)?.methods ?? [];
  const why = (name: string, state: string) => ({
    linkId: `${key}:${name}`,
    enabledBy: { item: key, codes: [state] },
    target,
    member: [name],
  });
  return [
    {
      linkId: key,
      type: 'choice',
      text: where,
      required: true,
      options: writer.valueOptions('state', [...examined, 'not-examined', 'not-applicable']),
      says: { ...target, member: ['state'] },
    },
    {
      linkId: `${key}:methods`,
      type: 'choice',
      text: writer.words.methods,
      required: true,
      repeats: true,
      enabledBy: whereExamined(asked),
      options: writer.answers('methods', new Set([...methods, ...taken])),
      says: { ...target, member: ['methods'] },
    },
    ...reasonItems(writer, {
      ...why('reason', 'state.not-examined'),
      enabledBy: { item: key, codes: ['state.not-examined', 'state.not-applicable'] },
      text: writer.words.reason,
    }),
    ...reasonItems(writer, { ...why('limit', 'state.partial'), text: writer.words.limit }),
  ];
}
