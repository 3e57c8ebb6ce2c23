import type { OneSide } from '../../model/sides.ts';
import type { Lean, ResultConcept, TestPoint } from '../../terminology/types.ts';
import type { FormItem } from '../form.ts';
import type { FormWriter } from '../writer.ts';
import { reasonItems } from './reason-items.ts';

/** The result of a movement or function test on one side, and why there is none. */
export function testItems(
  writer: FormWriter,
  row: Lean<TestPoint>,
  side: OneSide | undefined,
): readonly FormItem[] {
  const [kind, member] =
    row.group === 'function' ? ['function-test', 'result'] : ['movement', 'grade'];
  const linkId = [kind, row.code, ...(side === undefined ? [] : [side])].join('/');
  const target = {
    part: 'statement' as const,
    key: linkId,
    statement: { kind, test: row.code, ...(side !== undefined && { side }) },
  };
  const results = row.results ?? [];
  return [
    {
      linkId,
      type: 'choice',
      text: writer.sided(row.display, side),
      options: writer.answers('testResults', results),
      says: { ...target, member: [member] },
    },
    ...withoutResult(writer, writer.catalogue.testResults, results, (codes) => ({
      linkId: `${linkId}:reason`,
      text: writer.words.reason,
      enabledBy: { item: linkId, codes },
      target,
      member: ['reason'],
    })),
  ];
}

/** What was felt at a point on one side: a question for each modality. */
export function sensationItems(
  writer: FormWriter,
  row: Lean<TestPoint>,
  side: OneSide | undefined,
  modalities: readonly string[],
): readonly FormItem[] {
  const { catalogue } = writer;
  const at = side ?? 'midline';
  const key = ['sensation', row.code, at].join('/');
  const target = {
    part: 'statement' as const,
    key,
    statement: { kind: 'sensation', point: row.code, side: at },
  };
  const items = modalities.flatMap((modality) => {
    const results = [...catalogue.sensationResults.values()].flatMap(({ code, modalities: of }) =>
      of === undefined || of.includes(modality) ? [code] : [],
    );
    const linkId = `${key}:${modality}`;
    return [
      {
        linkId,
        type: 'choice' as const,
        text: `${writer.sided(row.display, side)}: ${writer.display('modalities', modality)}`,
        options: writer.answers('sensationResults', results),
        says: { ...target, member: ['results', modality, 'result'] },
      },
      ...withoutResult(writer, catalogue.sensationResults, results, (codes) => ({
        linkId: `${linkId}:reason`,
        text: writer.words.reason,
        enabledBy: { item: linkId, codes },
        target,
        member: ['results', modality, 'reason'],
      })),
    ];
  });
  return items;
}

/** The reason is asked where the answer says that there is no result. */
function withoutResult(
  writer: FormWriter,
  table: ReadonlyMap<string, Lean<ResultConcept>>,
  results: readonly string[],
  asked: (codes: readonly string[]) => Parameters<typeof reasonItems>[1],
): readonly FormItem[] {
  const untested = results.filter((code) => table.get(code)?.untested === true);
  return untested.length === 0 ? [] : reasonItems(writer, asked(untested));
}
