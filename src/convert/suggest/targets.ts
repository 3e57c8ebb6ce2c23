import type { FindKind } from '../../find/phrases.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { TestPoint } from '../../terminology/types.ts';
import type { Target } from '../mapping/target.ts';

type Maker = (code: string, catalogue: Catalogue, region?: string) => Target | undefined;

const pointTargets: { readonly [G in TestPoint['group']]: (code: string) => Target } = {
  sensation: (point) => ({ kind: 'sensation', point, words: {} }),
  'facial-movement': (test) => ({ kind: 'movement', test, words: {} }),
  movement: (test) => ({ kind: 'movement', test, words: {} }),
  function: (test) => ({ kind: 'function-test', test, words: {} }),
};

const makers: { readonly [K in FindKind]: Maker } = {
  region: (region) => ({ kind: 'region-state', region, words: {} }),
  sign: (finding, { findings }, stated) => {
    const regions = findings.get(finding)?.regions ?? [];
    // A sign that can be anywhere, or in several places, needs its region from a person.
    const region = stated ?? (regions.length === 1 ? regions[0] : undefined);
    return { kind: 'finding', finding, ...(region !== undefined && { region }), words: {} };
  },
  point: (code, { testPoints }) => {
    const group = testPoints.get(code)?.group;
    return group === undefined ? undefined : pointTargets[group](code);
  },
  measure: (measure) => ({ kind: 'measurement', measure }),
  scale: (scale, { scales }) => {
    const [version = ''] = scales.get(scale)?.versions ?? [];
    return { kind: 'scale-score', scale, version };
  },
  symptom: (symptom) => ({ kind: 'symptom', symptom, words: {} }),
  reason: () => undefined,
};

/** The target for a row of the catalogue, without side, unit and words; none for a reason. */
export function makeTarget(
  kind: FindKind,
  code: string,
  catalogue: Catalogue,
  region?: string,
): Target | undefined {
  return makers[kind](code, catalogue, region);
}
