import { claimEqual, flagOf, innerOf, textOf, wholeOf } from '../../read/bundle/element.ts';
import { innerValue, ownCode } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import { aboutOf, claimCommon, type Observed } from '../../read/observation/observation.ts';
import { placeOrSide } from '../../read/observation/site.ts';
import { codingsOf, filled } from '../../read/observation/values.ts';
import type { ScaleItem, ScaleScore } from './statement.ts';

export const scaleScoreReader: Reader<ScaleScore> = {
  of: ({ table }) => table === 'scales',
  read: readScaleScore,
};

function readScaleScore(observed: Observed, key: string | undefined): Read<ScaleScore> | undefined {
  const { reading, element, components } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'scales');
  const version = components.text('scale-version');
  if (code === undefined || version === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });
  const row = reading.catalogue.scales.get(code.code);
  const grade = innerValue(reading, innerOf(element, 'valueCodeableConcept'), {
    table: 'scales',
    code: code.code,
    values: row?.grades,
  });
  const score = grade?.code ?? wholeOf(element, 'valueInteger') ?? textOf(element, 'valueString');
  if (score === undefined) return undefined;
  claimEqual(element, 'method', {
    text: `${row?.display ?? code.code}, ${reading.language.texts.version} ${version}`,
  });
  const items = filled(itemsOf(observed, code.code));
  const place = placeOrSide(observed);
  const [about] = aboutOf(observed) ?? [];
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'scale-score',
    scale: code.code,
    version,
    score,
    ...place,
    ...(items && { items }),
    ...(about !== undefined && { about }),
    ...(codings && { codings }),
  };
}

function itemsOf({ reading, components }: Observed, scale: string): ScaleItem[] {
  const values = reading.catalogue.scales.get(scale)?.items;
  return components.others.flatMap((component) => {
    const item = component.claims.attempt(() => {
      const row = innerValue(reading, innerOf(component, 'code'), {
        table: 'scales',
        code: scale,
        values,
      });
      const value = flagOf(component, 'valueBoolean') ?? wholeOf(component, 'valueInteger');
      return row === undefined || value === undefined ? undefined : { item: row.code, value };
    });
    return item ?? [];
  });
}
