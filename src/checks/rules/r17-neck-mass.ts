import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { every, type Fact, known, knownBy, not, some, unknown } from '../facts/fact.ts';
import { exceeds } from '../facts/lesions.ts';
import { figureOf, isMeasured, type Measured } from '../facts/measured.ts';
import { neckLumps } from '../facts/neck-lumps.ts';
import { codedAttribute } from '../facts/signs.ts';
import { ageAtLeast, judged, lastedDays, symptom, symptomsNamed } from '../facts/stated.ts';
import { compare, whole } from '../figures/decimal.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';
import { listText } from '../words/check-words.ts';
import type { Phrase } from '../words/english.ts';

const ADULT = 18;
const TWO_WEEKS = 14;
const SIZE_MM = whole(15);

/** Features of a neck mass in an adult that raise the risk by the US guideline. */
export const r17NeckMass: PromptRule = {
  id: 'R17',
  title: 'Features of a neck mass that raise its risk',
  kind: 'prompt',
  ruleSet: 'neck-mass-us',
  version: '2',
  severity: 'prompt',
  source:
    'Pynnonen MA et al. 2017, Otolaryngol Head Neck Surg 157(2 suppl):S1-S30, statements on history and examination',
  evidence: 'read',
  run: (context) => neckLumps(context).map((mass) => massFinding(context, mass)),
};

function massFinding(context: CheckContext, mass: Finding): RuleFinding {
  const { words } = context;
  const features: readonly (readonly [Phrase, Fact])[] = [
    ['feature-time', lasting(context, mass)],
    ['feature-fixed', attributeIs(context, mass, 'mobility', ['fixed'])],
    ['feature-firm', attributeIs(context, mass, 'consistency', ['firm', 'hard'])],
    ['feature-size', size(context, mass)],
    ['feature-ulcerated', attributeIs(context, mass, 'skin', ['ulcerated'])],
  ];
  const found = features
    .filter(([, fact]) => fact.holds === true)
    .map(([name]) => words.phrases[name]);
  const fact = every([ageAtLeast(context, ADULT), some(features.map(([, one]) => one))]);
  return promptFinding(
    context,
    { ...fact, used: [...new Set([mass.key, ...fact.used])] },
    {
      on: mass.key,
      ...(mass.side !== undefined && { side: mass.side }),
      urgency: 'weeks',
      says: 'neck-mass',
      values: { features: listText(words, found) },
    },
  );
}

/**
 * There for two weeks or for a time that nobody can tell, and no infection; the latter is for the
 * clinician to judge.
 */
function lasting(context: CheckContext, mass: Finding): Fact {
  const told = ['sym-neck.lump', 'sym-neck.swelling'].flatMap((code) =>
    symptomsNamed(context, symptom(context, code).used).filter((one) => one.answer === 'yes'),
  );
  const time = some(told.map((one) => lastedDays(context, one, TWO_WEEKS)));
  const uncertain = told.length === 0 || time.holds === undefined;
  const keys = [mass.key, ...told.map((one) => one.key)];
  const { phrases } = context.words;
  return every([
    uncertain ? knownBy(true, keys) : time,
    not(judged(context, keys, 'infectious', phrases['judge-infection'])),
  ]);
}

/** Nodes and other lumps have attributes of their own with the same values. */
function attributeIs(
  { words }: CheckContext,
  mass: Finding,
  name: 'mobility' | 'consistency' | 'skin',
  values: readonly string[],
): Fact {
  const value = codedAttribute(mass, `node-${name}`) ?? codedAttribute(mass, `lump-${name}`);
  return value === undefined
    ? unknown(words.phrases[`its-${name}`])
    : known(values.includes(value), mass.key);
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
  return exceeds(
    context,
    largest ?? { missing: context.words.phrases['its-size'] },
    SIZE_MM,
    false,
  );
}
