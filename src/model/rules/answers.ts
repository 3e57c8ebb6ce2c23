import type { Path } from '../../path.ts';
import type { AttributeConcept, Lean, Scale } from '../../terminology/types.ts';
import type {
  Attribute,
  Finding,
  FunctionTest,
  Movement,
  ScaleScore,
  Sensation,
} from '../statement.ts';
import type { ExamRule, RuleContext } from './rule.ts';

/** Attributes, grades, results and scores must be among those that their sign, test or scale has. */
export const allowedAnswers: ExamRule = (context) => {
  context.exam.statements.forEach((statement, at) => {
    const path = ['statements', at];
    if (statement.kind === 'finding') checkAttributes(statement, path, context);
    if (statement.kind === 'sensation') checkSensation(statement, path, context);
    if (statement.kind === 'movement' || statement.kind === 'function-test') {
      checkResult(statement, path, context);
    }
    if (statement.kind === 'scale-score') checkScore(statement, path, context);
  });
  context.exam.conditions?.forEach((condition, at) => {
    const row = context.catalogue.conditions.get(condition.condition);
    if (row === undefined) return;
    const values = row.values ?? [];
    if (condition.value !== undefined && !values.some(({ code }) => code === condition.value)) {
      context.report(
        'unknown-code',
        ['conditions', at, 'value'],
        'this condition does not have that value',
        {
          expected: values.map(({ code }) => code).join(', ') || 'no value',
          value: condition.value,
        },
      );
    }
  });
};

function checkAttributes(finding: Finding, path: Path, { catalogue, report }: RuleContext): void {
  if (finding.attributes !== undefined && finding.presence !== 'present') {
    report(
      'contradiction',
      [...path, 'attributes'],
      'only a finding that is present has attributes',
    );
  }
  if (finding.certainty !== undefined && finding.presence !== 'present') {
    report(
      'contradiction',
      [...path, 'certainty'],
      'only a finding that is present has a certainty',
    );
  }
  const sign = catalogue.findings.get(finding.finding);
  if (sign === undefined) return;
  const family = sign.attributes;
  finding.attributes?.forEach((attribute, i) => {
    const row = catalogue.attributes.get(attribute.attribute);
    if (row === undefined) return;
    if (row.family !== family) {
      report(
        'unknown-code',
        [...path, 'attributes', i, 'attribute'],
        'this sign does not have that attribute',
        {
          expected: family === undefined ? 'no attributes' : `an attribute of the family ${family}`,
          value: attribute.attribute,
        },
      );
    } else if (!attributeFits(row, attribute.value)) {
      report(
        'wrong-type',
        [...path, 'attributes', i, 'value'],
        'this attribute takes another value',
        {
          expected: attributeForm(row),
          value: attribute.value,
        },
      );
    }
  });
}

function attributeFits(row: Lean<AttributeConcept>, value: Attribute['value']): boolean {
  switch (row.type) {
    case 'boolean':
      return typeof value === 'boolean';
    case 'count':
      return typeof value === 'number';
    case 'quantity':
      return typeof value === 'object' && value.unit === row.unit;
    case 'code':
      return typeof value === 'string' && (row.values ?? []).some(({ code }) => code === value);
  }
}

function attributeForm(row: Lean<AttributeConcept>): string {
  if (row.type === 'code') return (row.values ?? []).map(({ code }) => code).join(', ');
  if (row.type === 'quantity') return `a quantity in ${row.unit ?? '1'}`;
  return row.type === 'boolean' ? 'true or false' : 'a whole number';
}

function checkSensation(
  sensation: Sensation,
  path: Path,
  { catalogue, report }: RuleContext,
): void {
  const point = catalogue.testPoints.get(sensation.point);
  if (point !== undefined && point.group !== 'sensation') {
    report('unknown-code', [...path, 'point'], 'this is no point of sensation', {
      expected: 'a test point of the group sensation',
      value: sensation.point,
    });
    return;
  }
  const seen = new Set<string>();
  sensation.results.forEach(({ modality }, i) => {
    const at = [...path, 'results', i, 'modality'];
    if (seen.has(modality))
      report('duplicate-key', at, 'this modality stands twice', { value: modality });
    seen.add(modality);
    if (point?.modalities?.includes(modality) === false && catalogue.modalities.has(modality)) {
      report('impossible-method', at, 'this point does not take that modality', {
        expected: point.modalities.join(', '),
        value: modality,
      });
    }
  });
}

function checkResult(statement: Movement | FunctionTest, path: Path, context: RuleContext): void {
  const { catalogue, report } = context;
  const point = catalogue.testPoints.get(statement.test);
  if (point === undefined) return;
  const isFunction = point.group === 'function';
  if (point.group === 'sensation' || isFunction !== (statement.kind === 'function-test')) {
    report('unknown-code', [...path, 'test'], 'this test belongs to another kind of statement', {
      expected: `a test for a statement of the kind ${statement.kind}`,
      value: statement.test,
    });
    return;
  }
  const [property, answer] =
    statement.kind === 'movement' ? ['grade', statement.grade] : ['result', statement.result];
  if (catalogue.testResults.has(answer) && !point.results?.includes(answer)) {
    report('unknown-code', [...path, property], 'this test does not have that result', {
      expected: point.results?.join(', '),
      value: answer,
    });
  }
}

function checkScore(score: ScaleScore, path: Path, { catalogue, report }: RuleContext): void {
  const scale = catalogue.scales.get(score.scale);
  if (scale === undefined) return;
  if (!scale.versions.includes(score.version)) {
    report('unknown-code', [...path, 'version'], 'this scale does not have that version', {
      expected: scale.versions.join(', '),
      value: score.version,
    });
  }
  if (!scoreFits(scale, score.score)) {
    report('invalid-value', [...path, 'score'], 'this scale does not have that score', {
      expected:
        scale.type === 'ordinal'
          ? (scale.grades ?? []).map(({ code }) => code).join(', ')
          : `a whole number from 0 to ${scale.max ?? 'the scale maximum'}`,
      value: score.score,
    });
  }
  score.items?.forEach(({ item }, i) => {
    if (scale.items?.some(({ code }) => code === item)) return;
    report('unknown-code', [...path, 'items', i, 'item'], 'this scale does not have that item', {
      expected: scale.items?.map(({ code }) => code).join(', ') ?? 'no items',
      value: item,
    });
  });
}

function scoreFits(scale: Lean<Scale>, score: string | number): boolean {
  if (scale.type === 'ordinal') return (scale.grades ?? []).some(({ code }) => code === score);
  return typeof score === 'number' && (scale.max === undefined || score <= scale.max);
}
