import type { CheckContext } from '../context.ts';
import { listIn } from '../exam-index.ts';
import { type OneSide, oneSides, otherSide } from '../places/sides.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';
import { listText } from '../words/check-words.ts';
import { englishChecks, lowered } from '../words/english.ts';

const deficits: ReadonlySet<string> = new Set(['reduced', 'absent']);
const divisions = ['V1', 'V2', 'V3'];

/** One result at one point on one side. */
interface Result {
  readonly area: string;
  readonly point: string;
  readonly modality: string;
  readonly result: string;
  readonly usual: boolean;
  readonly untested: boolean;
  readonly key: string;
}

/** Divisions and cervical areas with a loss, by side; a loss at the jaw angle alone is not the third division. */
export const r20SensationMap: ComputationRule = {
  id: 'R20',
  title: 'Areas of sensation with a loss',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source:
    'anatomy pages, read second-hand: the angle of the jaw is C2 to C3, great auricular, and not V3',
  evidence: 'second-hand',
  run: (context) => {
    if (context.index.all('sensation').length === 0) return [];
    const results = { right: resultsOn(context, 'right'), left: resultsOn(context, 'left') };
    return oneSides
      .filter((side) => results[side].length > 0)
      .map((side) => sideFinding(context, side, results[side], results[otherSide(side)]));
  },
};

function resultsOn({ index, catalogue }: CheckContext, side: OneSide): readonly Result[] {
  return index
    .all('sensation')
    .filter((one) => one.side === side)
    .flatMap((one) => {
      const point = catalogue.testPoints.get(one.point);
      const division = point?.areas?.find((area) => divisions.includes(area));
      return one.results.map(({ modality, result }) => {
        const row = catalogue.sensationResults.get(result);
        return {
          area: division ?? lowered(point?.nerve ?? one.point),
          point: one.point,
          modality,
          result,
          usual: row?.usual === true,
          untested: row?.untested === true,
          key: one.key,
        };
      });
    });
}

function sideFinding(
  context: CheckContext,
  side: OneSide,
  here: readonly Result[],
  there: readonly Result[],
): RuleFinding {
  const tested = here.filter((one) => !one.untested);
  const lost = areasOf(tested.filter((one) => deficits.has(one.result)));
  const open = divisions.filter((area) => !tested.some((one) => one.area === area));
  const used = [...new Set(tested.map((one) => one.key))];
  const base = { on: side, side, inputsUsed: used, inputsMissing: open };
  const altered = alteredText(context, tested);
  if (lost.size === 0) {
    return {
      ...base,
      outcome: open.length > 0 ? 'not-evaluable' : 'does-not-fire',
      text: `Sensation on the ${side}: no loss where it was tested${altered}.`,
    };
  }
  const parts = [...lost].map(([area, results]) => areaText(context, area, results, tested));
  const auricularAlone = lost.has('great auricular') && !lost.has('V3');
  const crossing = [...lost.keys()].filter((area) =>
    there.some((one) => one.area === area && deficits.has(one.result)),
  );
  return {
    ...base,
    outcome: 'fires',
    text: [
      `Sensation on the ${side}, loss: ${parts.join('; ')}${altered}.`,
      ...(auricularAlone ? ['A loss at the angle of the jaw is great auricular and not V3.'] : []),
      ...(crossing.length > 0
        ? [`The loss of ${listText(englishChecks, crossing)} is on both sides of the midline.`]
        : []),
    ].join(' '),
    values: [{ name: 'areas', value: [...lost.keys()].join(', ') }],
  };
}

function areasOf(results: readonly Result[]): ReadonlyMap<string, Result[]> {
  const areas = new Map<string, Result[]>();
  for (const one of results) listIn(areas, one.area).push(one);
  return areas;
}

/** `V3, light touch only`: only where the other modality was tested there and felt as usual. */
function areaText(
  { catalogue }: CheckContext,
  area: string,
  lost: readonly Result[],
  tested: readonly Result[],
): string {
  const modalities = [...new Set(lost.map((one) => one.modality))];
  const points = new Set(lost.map((one) => one.point));
  const spared = tested.some(
    (one) => one.usual && points.has(one.point) && !modalities.includes(one.modality),
  );
  const names = modalities.map((code) => lowered(catalogue.modalities.get(code)?.display ?? code));
  return `${area}, ${listText(englishChecks, names)}${spared ? ' only' : ''}`;
}

/** Results that are neither usual nor a loss: more, unpleasant, or changing from try to try. */
function alteredText({ catalogue }: CheckContext, tested: readonly Result[]): string {
  const other = tested.filter((one) => !one.usual && !deficits.has(one.result));
  const words = new Set(
    other.map(
      (one) =>
        `${lowered(catalogue.sensationResults.get(one.result)?.display ?? one.result)} at ${one.area}`,
    ),
  );
  return words.size === 0 ? '' : `; otherwise altered: ${listText(englishChecks, [...words])}`;
}
