import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { type Fact, known, unknown } from '../facts/fact.ts';
import { type Lesion, lesionsOf } from '../facts/lesions.ts';
import { SEVEN_POINT_LIMIT, sevenPoint } from '../facts/seven-point.ts';
import { codedAttribute } from '../facts/signs.ts';
import { promptFinding } from '../prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const set = 'ng12-england';
const pathway = 'a suspected cancer pathway referral';
const dermoscopy = 'what dermoscopy suggests';

/** Skin lesions: melanoma by checklist or dermoscopy, and what the examiner suspects. */
export const r14SkinReferral: PromptRule = {
  id: 'R14',
  title: 'Referral of a skin lesion',
  kind: 'prompt',
  ruleSet: set,
  version: '1',
  severity: 'prompt',
  source: 'NICE NG12, skin cancers, read in copies (GPnotebook, Macmillan)',
  evidence: 'second-hand',
  run: (context) => [
    ...lesionsOf(context).map((lesion) => byChecklist(context, lesion)),
    ...context.index
      .all('finding')
      .filter((one) => one.presence === 'present')
      .flatMap((one) => bySuspicion(context, one)),
  ],
};

function byChecklist(context: CheckContext, lesion: Lesion): RuleFinding {
  const { least, most, used, missing } = sevenPoint(context, lesion);
  const holds = least >= SEVEN_POINT_LIMIT || (most < SEVEN_POINT_LIMIT ? false : undefined);
  const fact: Fact = { holds, used, missing };
  return promptFinding(set, fact, {
    on: `${lesion.key} checklist`,
    advice: `Refer for melanoma, by ${pathway}, where the pigmented lesion is suspicious: weighted 7-point checklist of ${least} (3 or more).`,
    criterion: 'Weighted 7-point checklist of 3 or more',
  });
}

function bySuspicion(context: CheckContext, finding: Finding): readonly RuleFinding[] {
  const { finding: code, key } = finding;
  if (code === 'melanoma') return [melanoma(context, finding)];
  if (code === 'squamous-cell-carcinoma') {
    return [
      promptFinding(set, known(true, key), {
        on: `${key} suspicion`,
        advice: `Consider ${pathway} for a lesion that raises the suspicion of squamous cell carcinoma.`,
        criterion: 'Suspicion of squamous cell carcinoma',
      }),
    ];
  }
  if (!code.startsWith('basal-cell-carcinoma')) return [];
  return [
    promptFinding(set, known(true, key), {
      on: `${key} suspicion`,
      advice: `Consider routine referral for a lesion that raises the suspicion of basal cell carcinoma; only consider ${pathway} where a delay may matter much because of its site or size.`,
      criterion: 'Suspicion of basal cell carcinoma',
    }),
  ];
}

/** Dermoscopy makes it "refer", a nodule "consider"; a suspicion alone needs one of them or the checklist. */
function melanoma(context: CheckContext, finding: Finding): RuleFinding {
  const { key } = finding;
  const on = `${key} suspicion`;
  const criterion = 'Suspicion of melanoma by dermoscopy or in a nodule';
  if (usedDermatoscope(context, finding)) {
    return promptFinding(set, known(true, key), {
      on,
      advice: `Refer for melanoma, by ${pathway}: dermoscopy suggests it.`,
      criterion,
    });
  }
  const nodular = codedAttribute(finding, 'lesion-type') === 'nodule';
  return promptFinding(
    set,
    nodular ? known(true, key) : unknown(dermoscopy, 'the form of the lesion'),
    {
      on,
      advice: `Consider ${pathway} for a lesion that suggests nodular melanoma.`,
      criterion,
    },
  );
}

function usedDermatoscope({ exam }: CheckContext, finding: Finding): boolean {
  return (exam.instruments ?? []).some(
    (one) => one.type === 'dermatoscope' && finding.instruments?.includes(one.key) === true,
  );
}
