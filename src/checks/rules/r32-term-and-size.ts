import { ruleTitles } from '../../issues/english/rules.ts';
import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { diameterOf } from '../facts/lesions.ts';
import { figureText, isMeasured } from '../facts/measured.ts';
import { codedAttribute } from '../facts/signs.ts';
import { compare, type Exact } from '../figures/decimal.ts';
import { baseValue } from '../figures/units.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

const smallTerms: ReadonlySet<string> = new Set(['papule', 'macule', 'vesicle', 'vesicles']);
const largeTerms: ReadonlySet<string> = new Set(['plaque', 'patch', 'bulla', 'nodule']);

/** Fires when the word for a lesion implies another size than was measured. */
export const r32TermAndSize: ConsistencyRule = {
  id: 'R32',
  title: ruleTitles.R32,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-statement',
  source:
    'dermatology pages, which disagree on 5 or 10 mm; the convention stated with the lesion counts',
  evidence: 'second-hand',
  run: (context) =>
    context.index
      .all('finding')
      .filter((one) => one.presence === 'present')
      .flatMap((one) => termFinding(context, one)),
};

function termFinding(context: CheckContext, finding: Finding): readonly RuleFinding[] {
  const terms = [finding.finding, codedAttribute(finding, 'lesion-type')];
  const small = terms.find((term) => term !== undefined && smallTerms.has(term));
  const large = terms.find((term) => term !== undefined && largeTerms.has(term));
  const term = small ?? large;
  if (term === undefined || (small !== undefined && large !== undefined)) return [];
  const diameter = diameterOf(context, finding.key);
  if (!isMeasured(diameter) || diameter.bound !== undefined) {
    return [
      {
        outcome: 'not-evaluable',
        on: finding.key,
        inputsUsed: [finding.key],
        inputsMissing: [isMeasured(diameter) ? 'the exact diameter' : diameter.missing],
        text: `The word ${term} cannot be held to a size.`,
      },
    ];
  }
  const fires = disagrees(context, finding, diameter.value, small !== undefined);
  return [
    {
      outcome: fires ? 'fires' : 'does-not-fire',
      on: finding.key,
      inputsUsed: [finding.key, diameter.statement.key],
      inputsMissing: [],
      text: fires
        ? `The word ${term} and the size of ${figureText(diameter)} do not fit together.`
        : `The word ${term} and the size of ${figureText(diameter)} fit together.`,
    },
  ];
}

function disagrees(context: CheckContext, finding: Finding, size: Exact, small: boolean): boolean {
  const stated = finding.attributes?.find((one) => one.attribute === 'lesion-size-rule')?.value;
  const convention =
    typeof stated === 'object' ? baseValue(stated.value, stated.unit)?.value : undefined;
  if (convention !== undefined) {
    const order = compare(size, convention);
    return small ? order > 0 : order < 0;
  }
  return context.limit(small ? 'small-lesion' : 'large-lesion')?.meets(size) === true;
}
