import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { type Fact, known, unknown } from '../facts/fact.ts';
import { type Lesion, lesionsOf } from '../facts/lesions.ts';
import { SEVEN_POINT_LIMIT, sevenPoint } from '../facts/seven-point.ts';
import { codedAttribute } from '../facts/signs.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

/** Skin lesions: melanoma by checklist or dermoscopy, and what the examiner suspects. */
export const r14SkinReferral: PromptRule = {
  id: 'R14',
  title: 'Referral of a skin lesion',
  kind: 'prompt',
  ruleSet: 'ng12-england',
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
  return promptFinding(context, fact, {
    on: `${lesion.key} checklist`,
    urgency: 'weeks',
    says: 'skin-checklist',
    values: { points: least },
  });
}

function bySuspicion(context: CheckContext, finding: Finding): readonly RuleFinding[] {
  const { finding: code, key } = finding;
  if (code === 'melanoma') return [melanoma(context, finding)];
  if (code === 'squamous-cell-carcinoma') {
    return [
      promptFinding(context, known(true, key), {
        on: `${key} suspicion`,
        urgency: 'weeks',
        says: 'skin-squamous',
      }),
    ];
  }
  if (!code.startsWith('basal-cell-carcinoma')) return [];
  return [
    promptFinding(context, known(true, key), {
      on: `${key} suspicion`,
      urgency: 'routine',
      says: 'skin-basal',
    }),
  ];
}

/** Dermoscopy makes it "refer", a nodule "consider"; a suspicion alone needs one of them or the checklist. */
function melanoma(context: CheckContext, finding: Finding): RuleFinding {
  const { key } = finding;
  const on = `${key} suspicion`;
  if (usedDermatoscope(context, finding)) {
    return promptFinding(context, known(true, key), {
      on,
      urgency: 'weeks',
      says: 'skin-dermoscopy',
    });
  }
  const nodular = codedAttribute(finding, 'lesion-type') === 'nodule';
  const { phrases } = context.words;
  return promptFinding(
    context,
    nodular ? known(true, key) : { ...unknown(phrases.dermoscopy, phrases.form), used: [key] },
    { on, urgency: 'weeks', says: 'skin-nodular' },
  );
}

function usedDermatoscope({ exam }: CheckContext, finding: Finding): boolean {
  return (exam.instruments ?? []).some(
    (one) => one.type === 'dermatoscope' && finding.instruments?.includes(one.key) === true,
  );
}
