import type { Side } from '../../model/primitive.ts';
import type { Lean, NegativeSet } from '../../terminology/types.ts';
import type { CheckContext } from '../context.ts';
import { isWithin, regionName } from '../places/regions.ts';
import { coversSide, type OneSide, oneSides, sideText } from '../places/sides.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';
import { lowered } from '../words/english.ts';

/** Fires when a sign that was to be looked for has no statement: not assessed, never absent. */
export const r04Negatives: ComputationRule = {
  id: 'R04',
  title: 'Pertinent negatives without a statement',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'common practice, no source',
  evidence: 'common-practice',
  run: (context) => {
    const { coverage, settings } = context;
    if (coverage === undefined && settings.negatives === undefined) return [noLists];
    return setsOf(context).map((set) => assess(context, set));
  },
};

const noLists: RuleFinding = {
  outcome: 'not-evaluable',
  inputsUsed: [],
  inputsMissing: ['a protocol that the catalogue holds, or the lists to go through'],
  text: 'Which signs were to be looked for is not known.',
};

/** The lists that the caller named, or else those of the sections that the protocol asks for. */
function setsOf({ catalogue, coverage, settings }: CheckContext): readonly Lean<NegativeSet>[] {
  const sets = [...catalogue.negatives.values()];
  if (settings.negatives !== undefined) {
    const named = settings.negatives;
    return sets.filter((set) => named.includes(set.code));
  }
  const sections = new Set(coverage?.items.map((item) => item.section));
  return sets.filter((set) => sections.has(set.section));
}

function assess(context: CheckContext, set: Lean<NegativeSet>): RuleFinding {
  const used = new Set<string>();
  const open: string[] = [];
  for (const { finding, regions } of set.entries) {
    for (const region of regions) {
      for (const side of sidesOf(context, region)) {
        const keys = statedAt(context, finding, region, side);
        for (const key of keys) used.add(key);
        if (keys.length === 0) open.push(place(context, finding, region, side));
      }
    }
  }
  assessTests(context, set, used, open);
  return {
    outcome: open.length > 0 ? 'fires' : 'does-not-fire',
    on: set.code,
    inputsUsed: [...used],
    inputsMissing: open,
    text:
      open.length > 0
        ? `${set.display}: ${open.length} of the signs to look for have no statement. They were not assessed and are not to be read as absent.`
        : `${set.display}: every sign has a statement.`,
  };
}

/** Tests and comparisons of the list: one statement for each side or modality answers them. */
function assessTests(
  context: CheckContext,
  set: Lean<NegativeSet>,
  used: Set<string>,
  open: string[],
): void {
  const { index, catalogue } = context;
  const answer = (statements: readonly { readonly key: string }[], question: string): void => {
    for (const one of statements) used.add(one.key);
    if (statements.length === 0) open.push(question);
  };
  for (const { test } of set.tests ?? []) {
    const row = catalogue.testPoints.get(test);
    const name = lowered(row?.display ?? test);
    const stated = [...index.about('movement', test), ...index.about('function-test', test)];
    for (const side of row?.laterality === 'paired' ? oneSides : [undefined]) {
      const here = stated.filter((one) => side === undefined || coversSide(one.side, side));
      answer(here, `${name} ${sideText(side)}`.trim());
    }
  }
  for (const { point, modalities } of set.comparisons ?? []) {
    const name = lowered(catalogue.testPoints.get(point)?.display ?? point);
    const stated = index.about('sensation-comparison', point);
    for (const modality of modalities) {
      const here = stated.filter((one) => one.modality === modality);
      answer(here, `sides compared, ${name}, ${modality}`);
    }
  }
}

/** Anything that answers the question: the sign itself, another value of its feature, the region's state. */
function statedAt(
  { index, catalogue, features }: CheckContext,
  finding: string,
  region: string,
  side: OneSide | undefined,
): readonly string[] {
  const feature = catalogue.findings.get(finding)?.feature;
  const onSide = (one: { readonly side?: Side }): boolean =>
    side === undefined || coversSide(one.side, side);
  const alike = (feature === undefined ? undefined : features.get(feature)) ?? [finding];
  const signs = alike
    .flatMap((code) => index.about('finding', code))
    .filter(
      (one) =>
        (isWithin(catalogue, region, one.region) || isWithin(catalogue, one.region, region)) &&
        onSide(one),
    );
  const states = index.about('region-state', region).filter(onSide);
  return [...signs, ...states].map((one) => one.key);
}

function sidesOf({ catalogue }: CheckContext, region: string): readonly (OneSide | undefined)[] {
  return catalogue.regions.get(region)?.laterality === 'paired' ? oneSides : [undefined];
}

function place(
  { catalogue }: CheckContext,
  finding: string,
  region: string,
  side: OneSide | undefined,
): string {
  const sign = lowered(catalogue.findings.get(finding)?.display ?? finding);
  return `${sign}, ${lowered(regionName(catalogue, region))} ${sideText(side)}`.trim();
}
