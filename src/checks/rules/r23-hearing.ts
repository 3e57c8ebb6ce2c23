import type { Symptom } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { every, type Fact, known, knownBy, not, some, unknown } from '../facts/fact.ts';
import { lowerFace, weakerThan } from '../facts/movements.ts';
import { withJudgement } from '../facts/neck-lumps.ts';
import { ageAtLeast, lastedDays, sign, symptom, symptomsNamed } from '../facts/stated.ts';
import { type OneSide, oneSides, otherSide } from '../places/sides.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';
import { fill } from '../words/check-words.ts';

const ADULT = 18;
const RECENT_DAYS = 30;
const RAPID_LEAST = 4;
const RAPID_MOST = 90;
const anyLoss = [
  'sym-ear.hearing-loss',
  'sym-ear.hearing-loss-sudden',
  'sym-ear.hearing-loss-gradual',
];

/** Sudden, rapidly worsening, and one-sided loss of hearing with signs of the face on that side. */
export const r23Hearing: PromptRule = {
  id: 'R23',
  title: 'Sudden or rapid loss of hearing',
  kind: 'prompt',
  ruleSet: 'hearing-loss-england',
  version: '1',
  severity: 'prompt',
  source: 'NICE NG98 recommendations 1.1.2 and 1.1.3; NICE QS185 statement 2 (nice.org.uk)',
  evidence: 'read',
  run: (context) => [
    ...sudden(context),
    rapid(context),
    ...oneSides.map((side) => withFace(context, side)),
  ],
};

/** A code of its own says that the loss came within three days. */
function sudden(context: CheckContext): readonly RuleFinding[] {
  const told = symptom(context, 'sym-ear.hearing-loss-sudden');
  const old = lastedIfTold(context, told, RECENT_DAYS + 1);
  const adult = ageAtLeast(context, ADULT);
  const judgedLoss = withJudgement(context, told, ['unexplained'], 'the-hearing-loss');
  return [
    promptFinding(context, every([adult, judgedLoss, not(old)]), {
      on: 'sudden, recent',
      urgency: 'same-day',
      says: 'hearing-recent',
    }),
    promptFinding(context, every([adult, judgedLoss, old]), {
      on: 'sudden, older',
      urgency: 'weeks',
      says: 'hearing-older',
    }),
  ];
}

function lastedIfTold(context: CheckContext, told: Fact, days: number): Fact {
  if (told.holds !== true) return unknown();
  return some(symptomsNamed(context, told.used).map((one) => lastedDays(context, one, days)));
}

function rapid(context: CheckContext): RuleFinding {
  const told = some(
    ['sym-ear.hearing-loss', 'sym-ear.hearing-loss-gradual'].map((code) => symptom(context, code)),
  );
  const losses = told.holds === true ? symptomsNamed(context, told.used) : [];
  const worsening =
    losses.length === 0
      ? told
      : some(
          losses.map((one) =>
            every([
              worse(context, one),
              lastedDays(context, one, RAPID_LEAST),
              not(lastedDays(context, one, RAPID_MOST + 1)),
            ]),
          ),
        );
  const fact = every([
    ageAtLeast(context, ADULT),
    withJudgement(context, worsening, ['unexplained'], 'the-hearing-loss'),
  ]);
  return promptFinding(context, fact, { on: 'rapid', urgency: 'weeks', says: 'hearing-rapid' });
}

function worse({ catalogue, words }: CheckContext, statement: Symptom): Fact {
  if (statement.course === undefined) {
    const display = catalogue.symptoms.get(statement.symptom)?.display ?? statement.symptom;
    return unknown(fill(words.phrases.course, { name: words.within(display) }));
  }
  return known(statement.course === 'worse', statement.key);
}

function withFace(context: CheckContext, side: OneSide): RuleFinding {
  const here = some(anyLoss.map((code) => symptom(context, code, side)));
  const there = anyLoss
    .map((code) => symptom(context, code, otherSide(side)))
    .some((fact) => fact.holds === true);
  const oneSided = here.holds === true && there ? knownBy(false, here.used) : here;
  const face = some([droop(context, side), alteredSensation(context, side)]);
  return promptFinding(context, every([ageAtLeast(context, ADULT), oneSided, face]), {
    on: `with face, ${side}`,
    side,
    urgency: 'same-day',
    says: 'hearing-face',
  });
}

function droop(context: CheckContext, side: OneSide): Fact {
  return some([
    ...lowerFace.map((test) => weakerThan(context, test, side, 0)),
    symptom(context, 'sym-motor.weakness', side),
    sign(context, { finding: 'facial-weakness', regions: ['general'], side, by: ['inspection'] }),
  ]);
}

function alteredSensation(context: CheckContext, side: OneSide): Fact {
  const { index, catalogue, words } = context;
  const tested = index
    .all('sensation')
    .filter((one) => one.side === side)
    .flatMap((one) => one.results.map(({ result }) => ({ key: one.key, result })))
    .map(({ key, result }) => ({ key, row: catalogue.sensationResults.get(result) }))
    .filter(({ row }) => row !== undefined && row.untested !== true);
  const altered = tested.filter(({ row }) => row?.usual !== true).map(({ key }) => key);
  const felt =
    tested.length === 0
      ? unknown(fill(words.phrases.sensation, { side: words.sides[side] }))
      : knownBy(altered.length > 0, altered.length > 0 ? altered : tested.map(({ key }) => key));
  return some([felt, symptom(context, 'sym-sensory.numbness', side)]);
}
