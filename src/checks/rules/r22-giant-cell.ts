import type { CheckContext } from '../context.ts';
import { alsoMissing, every, type Fact, some } from '../facts/fact.ts';
import { ageAtLeast, sign, symptom } from '../facts/stated.ts';
import { promptFinding } from '../prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const set = 'giant-cell-arteritis-uk';
const AGE = 50;
const arterySigns = [
  'tender',
  'artery-thickened',
  'artery-nodular',
  'artery-pulse.absent',
  'artery-pulse.reduced',
];
const visual = ['sym-eye.visual-loss', 'sym-eye.double-vision', 'sym-eye.blurred-vision'];

/** Temporal artery, jaw claudication or headache from 50 years on; the eyes make it an emergency. */
export const r22GiantCell: PromptRule = {
  id: 'R22',
  title: 'Temporal artery, jaw or headache at 50 years or over',
  kind: 'prompt',
  ruleSet: set,
  version: '1',
  severity: 'prompt',
  source:
    'British Society for Rheumatology 2020, Rheumatology 59:e1-e23, read second-hand; NHS Lanarkshire and NHS Highland pathways',
  evidence: 'second-hand',
  run: (context) => [arteritis(context)],
};

function arteritis(context: CheckContext): RuleFinding {
  const features = some([
    ...arterySigns.map((finding) => artery(context, finding)),
    symptom(context, 'sym-jaw.jaw-claudication'),
    symptom(context, 'sym-general.headache'),
  ]);
  const sight = some(visual.map((code) => symptom(context, code)));
  const suspected = every([ageAtLeast(context, AGE), features]);
  const fact = suspected.holds === true ? alsoMissing(suspected, sight) : suspected;
  const emergency = sight.holds === true;
  return promptFinding(
    set,
    emergency ? { ...fact, used: [...new Set([...fact.used, ...sight.used])] } : fact,
    {
      advice: emergency
        ? 'Where giant cell arteritis is suspected, symptoms of the eyes make it an emergency: assessment should be immediate, by the local guidance.'
        : 'Where giant cell arteritis is suspected, a specialist should assess on the same day where possible, by the local guidance. A headache counts where it is new.',
      criterion: `Temporal artery, jaw claudication or new headache at ${AGE} years or over`,
      severity: emergency ? 'urgent' : 'prompt',
    },
  );
}

function artery(context: CheckContext, finding: string): Fact {
  return sign(context, { finding, regions: ['temporal-artery'], by: ['palpation'] });
}
