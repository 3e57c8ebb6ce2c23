import type { CheckContext } from '../context.ts';
import { type Fact, not, unknown } from '../facts/fact.ts';
import { sign } from '../facts/stated.ts';
import { isWithin } from '../places/regions.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

const regions = ['neck-midline', 'thyroid'];
const lumps: readonly string[] = [
  'neck-mass',
  'thyroid-mass',
  'lump-felt',
  'thy-surface.single-nodule',
  'thy-surface.multinodular',
  'midline-lump-motion.swallow',
  'midline-lump-motion.tongue',
  'midline-lump-motion.fixed',
];

/** What the movement of a lump in the midline is consistent with. It excludes nothing. */
export const r24LumpMotion: ComputationRule = {
  id: 'R24',
  title: 'Movement of a lump in the middle of the neck',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'NHS page on goitre, read second-hand; common practice',
  evidence: 'second-hand',
  run: (context) => {
    const lump = lumpKeys(context);
    return lump.length === 0 ? [] : [motion(context, lump)];
  },
};

function lumpKeys({ index, catalogue }: CheckContext): readonly string[] {
  return lumps
    .flatMap((code) => index.about('finding', code))
    .filter((one) => one.presence === 'present')
    .filter((one) => regions.some((region) => isWithin(catalogue, one.region, region)))
    .map((one) => one.key);
}

function motion(context: CheckContext, lump: readonly string[]): RuleFinding {
  const swallow = moves(context, 'midline-lump-motion.swallow', 'thy-swallow');
  const tongue = moves(context, 'midline-lump-motion.tongue', 'thy-tongue');
  const base = {
    inputsUsed: [...new Set([...lump, ...swallow.used, ...tongue.used])],
    inputsMissing: [
      ...(swallow.holds === undefined ? ['movement on swallowing'] : []),
      ...(tongue.holds === undefined ? ['movement on putting out the tongue'] : []),
    ],
  };
  const texts = [
    ...(tongue.holds === true
      ? ['It moves on putting out the tongue: consistent with a thyroglossal origin.']
      : []),
    ...(swallow.holds === true
      ? ['It moves on swallowing: consistent with the thyroid or with something attached to it.']
      : []),
  ];
  if (texts.length > 0) {
    return {
      ...base,
      outcome: 'fires',
      text: `Lump in the middle of the neck. ${texts.join(' ')}`,
    };
  }
  if (swallow.holds === undefined || tongue.holds === undefined) {
    return {
      ...base,
      outcome: 'not-evaluable',
      text: 'Lump in the middle of the neck: its movement was not tested in full.',
    };
  }
  return {
    ...base,
    outcome: 'does-not-fire',
    text: 'Lump in the middle of the neck: it does not move on swallowing or on putting out the tongue, which excludes neither origin.',
  };
}

function moves(context: CheckContext, lumpSign: string, thyroidFeature: string): Fact {
  const at = (finding: string): readonly Fact[] =>
    regions.map((region) => sign(context, { finding, regions: [region], by: [] }));
  // Being fixed denies the movement; being not fixed says no more than the sign itself.
  const denied = [...at(`${thyroidFeature}.fixed`), ...at('midline-lump-motion.fixed')]
    .filter((fact) => fact.holds === true)
    .map(not);
  const facts = [...at(lumpSign), ...at(`${thyroidFeature}.moves`), ...denied];
  return (
    facts.find((fact) => fact.holds === true) ??
    facts.find((fact) => fact.holds === false) ??
    unknown('movement of the lump')
  );
}
