import type { Path } from '../../path.ts';
import type { Measurement, Statement } from '../statement.ts';
import type { ExamRule, RuleContext } from './rule.ts';

/** What a statement must carry to be understood: reasons, values, units. */
export const completeStatements: ExamRule = (context) => {
  context.exam.statements.forEach((statement, at) => {
    const path = ['statements', at];
    checkReasons(statement, path, context);
    if (statement.kind === 'measurement') checkMeasurement(statement, path, context);
  });
  checkOrganization(context);
  checkSteps(context);
};

/** @see https://hl7.org/fhir/R4/organization.html constraint org-1 */
function checkOrganization({ exam: { organization }, report }: RuleContext): void {
  if (organization === undefined) return;
  const { reference, identifiers, name } = organization;
  if (reference === undefined && identifiers === undefined && name === undefined) {
    report('empty-value', ['organization'], 'the organization is not named', {
      expected: 'a reference, a name or an identifier',
    });
  }
}

/** An untested result has its reason; without one it would read like silence. A result has none. */
function checkReasons(statement: Statement, path: Path, { catalogue, report }: RuleContext): void {
  const needReason = (untested: boolean | undefined, reason: unknown, at: Path): void => {
    if (untested === true && reason === undefined) {
      report('missing-reason', [...at, 'reason'], 'the reason is missing', {
        expected: 'a reason, since there is no result',
      });
    } else if (untested !== true && reason !== undefined) {
      report('contradiction', [...at, 'reason'], 'a reason why there is no result beside a result');
    }
  };
  if (statement.kind === 'sensation') {
    statement.results.forEach(({ result, reason }, i) => {
      needReason(catalogue.sensationResults.get(result)?.untested, reason, [...path, 'results', i]);
    });
  } else if (statement.kind === 'movement') {
    needReason(catalogue.testResults.get(statement.grade)?.untested, statement.reason, path);
  } else if (statement.kind === 'function-test') {
    needReason(catalogue.testResults.get(statement.result)?.untested, statement.reason, path);
  } else if (statement.kind === 'sensation-comparison') {
    needReason(statement.result === 'not-compared', statement.reason, path);
  }
}

function checkMeasurement(
  measurement: Measurement,
  path: Path,
  { catalogue, report }: RuleContext,
): void {
  const { value, unusable, unit, readings, convention } = measurement;
  if ((value === undefined) === (unusable === undefined)) {
    report('contradiction', path, 'a measurement has a value, or a reason why there is none', {
      expected: 'value or unusable',
    });
  }
  if (value === undefined && measurement.comparator !== undefined) {
    report('contradiction', [...path, 'comparator'], 'a comparator without a value to compare');
  }
  if (
    readings !== undefined &&
    readings.length > 1 &&
    convention === undefined &&
    value !== undefined
  ) {
    report(
      'missing-property',
      [...path, 'convention'],
      'several readings without saying how the value came from them',
      {
        expected: 'mean, median, maximum, minimum or last',
      },
    );
  }
  const measure = catalogue.measures.get(measurement.measure);
  if (measure === undefined) return;
  if (measure.rangeOf !== undefined || measure.scale !== undefined) {
    report('unknown-code', [...path, 'measure'], 'this row is no measure of its own', {
      expected:
        measure.scale === undefined
          ? `the measure ${measure.rangeOf}`
          : `a scale-score of the scale ${measure.scale}`,
      value: measurement.measure,
    });
  } else if (unit !== measure.unit && !measure.units?.includes(unit)) {
    report('wrong-unit', [...path, 'unit'], 'this measure does not take that unit', {
      expected: [measure.unit, ...(measure.units ?? [])].join(', '),
      value: unit,
    });
  }
}

/** Steps that change a signed record say why. */
function checkSteps({ exam, report }: RuleContext): void {
  const needsReason = new Set(['amend', 'correct', 'cancel', 'retract']);
  exam.history?.forEach((event, at) => {
    if (needsReason.has(event.action) && event.reason === undefined) {
      report('missing-reason', ['history', at, 'reason'], 'the reason is missing', {
        expected: 'why the record was changed',
      });
    }
  });
}
