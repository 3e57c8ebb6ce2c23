import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { every, type Fact, known, not, some, unknown } from '../facts/fact.ts';
import { exceeds } from '../facts/lesions.ts';
import { figureOf, isMeasured, type Measured } from '../facts/measured.ts';
import { neckLumps } from '../facts/neck-lumps.ts';
import { codedAttribute } from '../facts/signs.ts';
import { ageAtLeast, judged, lastedDays, symptom, symptomsNamed } from '../facts/stated.ts';
import { compare, whole } from '../figures/decimal.ts';
import { listText, promptFinding } from '../prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const set = 'neck-mass-us';
const ADULT = 18;
const TWO_WEEKS = 14;
const SIZE_MM = whole(15);

/** Features of a neck mass in an adult that raise the risk by the US guideline. */
export const r17NeckMass: PromptRule = {
  id: 'R17',
  title: 'Features of a neck mass that raise its risk',
  kind: 'prompt',
  ruleSet: set,
  version: '1',
  severity: 'prompt',
  source:
    'Pynnonen MA et al. 2017, Otolaryngol Head Neck Surg 157(2 suppl):S1-S30, statements on history and examination',
  evidence: 'read',
  run: (context) => neckLumps(context).map((mass) => massFinding(context, mass)),
};

function massFinding(context: CheckContext, mass: Finding): RuleFinding {
  const features: readonly (readonly [string, Fact])[] = [
    ['there for two weeks or more without signs of infection', lasting(context, mass)],
    ['fixed', attributeIs(mass, 'mobility', ['fixed'])],
    ['firm', attributeIs(mass, 'consistency', ['firm', 'hard'])],
    ['larger than 15 mm', size(context, mass)],
    ['ulcerated skin', attributeIs(mass, 'skin', ['ulcerated'])],
  ];
  const found = features.filter(([, fact]) => fact.holds === true).map(([name]) => name);
  const fact = every([ageAtLeast(context, ADULT), some(features.map(([, one]) => one))]);
  return promptFinding(
    set,
    { ...fact, used: [...new Set([mass.key, ...fact.used])] },
    {
      on: mass.key,
      ...(mass.side !== undefined && { side: mass.side }),
      advice: `Identify this neck mass of an adult as at increased risk, explain that, and examine or refer for examination of the mucosa of throat and larynx, which is not part of this exam: ${listText(found)}.`,
      criterion: 'Features that raise the risk of a neck mass in an adult',
    },
  );
}

/** Both the time and the lack of infection; the latter is for the clinician to judge. */
function lasting(context: CheckContext, mass: Finding): Fact {
  const told = ['sym-neck.lump', 'sym-neck.swelling'].flatMap((code) =>
    symptomsNamed(context, symptom(context, code).used).filter((one) => one.answer === 'yes'),
  );
  const time =
    told.length > 0
      ? some(told.map((one) => lastedDays(context, one, TWO_WEEKS)))
      : unknown('how long the mass has been there');
  const keys = [mass.key, ...told.map((one) => one.key)];
  return every([
    time,
    not(judged(context, keys, 'infectious', 'whether an infection explains it')),
  ]);
}

/** Nodes and other lumps have attributes of their own with the same values. */
function attributeIs(
  mass: Finding,
  name: 'mobility' | 'consistency' | 'skin',
  values: readonly string[],
): Fact {
  const value = codedAttribute(mass, `node-${name}`) ?? codedAttribute(mass, `lump-${name}`);
  const words = name === 'skin' ? 'the skin over it' : `its ${name}`;
  return value === undefined ? unknown(words) : known(values.includes(value), mass.key);
}

function size(context: CheckContext, mass: Finding): Fact {
  const figures = ['neck-mass', 'node-size']
    .flatMap((code) => context.index.about('measurement', code))
    .filter((one) => one.about === mass.key)
    .map((one) => figureOf(context, one))
    .filter(isMeasured);
  const largest = figures.reduce<Measured | undefined>(
    (most, one) => (most === undefined || compare(one.value, most.value) > 0 ? one : most),
    undefined,
  );
  return exceeds(largest ?? { missing: 'its size' }, SIZE_MM, false);
}
