import type { OneSide } from '../../model/sides.ts';
import type { Lean, Scale } from '../../terminology/types.ts';
import type { FormItem } from '../form.ts';
import type { FormWriter } from '../writer.ts';

/** A score as the examiner gives it, on a version that is asked for where the scale has several. */
export function scoreItems(
  writer: FormWriter,
  scale: Lean<Scale>,
  side: OneSide | undefined,
): readonly FormItem[] {
  const linkId = ['scale-score', scale.code, ...(side === undefined ? [] : [side])].join('/');
  const [only, ...others] = scale.versions;
  const target = {
    part: 'statement' as const,
    key: linkId,
    statement: {
      kind: 'scale-score',
      scale: scale.code,
      ...(only !== undefined && others.length === 0 && { version: only }),
      // A side belongs to a region.
      ...(side !== undefined && { region: scale.region, side }),
    },
  };
  const text = writer.sided(scale.display, side);
  const system = writer.system('scales', scale.code);
  const score = { linkId, text, says: { ...target, member: ['score'] } };
  const coded = (code: string, display: string) => ({
    system,
    code: `${scale.code}.${code}`,
    display,
    value: code,
  });
  return [
    scale.type === 'ordinal'
      ? {
          ...score,
          type: 'choice',
          options: (scale.grades ?? []).map(({ code, display }) => coded(code, display)),
        }
      : {
          ...score,
          type: 'integer',
          minimum: 0,
          ...(scale.max !== undefined && { maximum: scale.max }),
          says: { ...score.says, as: 'number' },
        },
    ...(others.length === 0
      ? []
      : [
          {
            linkId: `${linkId}:version`,
            type: 'choice' as const,
            text: writer.words.version,
            options: scale.versions.map((version) => coded(version, version)),
            says: { ...target, member: ['version'] },
          },
        ]),
  ];
}
