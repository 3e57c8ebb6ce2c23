import type { IssueCode } from '../../issue.ts';
import { nearest } from '../../nearest.ts';
import type { Path } from '../../path.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Exam } from '../exam.ts';
import type { Statement } from '../statement.ts';
import type { ExamRule } from './rule.ts';

/** A code, the table it must stand in, and where it is. */
type Use = readonly [table: TableName, code: string | undefined, path: Path];

/** Every code must stand in its table. */
export const knownCodes: ExamRule = ({ exam, catalogue, report }) => {
  const uses = [
    ...examUses(exam),
    ...exam.statements.flatMap((statement, at) => statementUses(statement, ['statements', at])),
  ];
  for (const [table, code, path] of uses) {
    const rows = catalogue[table];
    if (code === undefined || rows.has(code)) continue;
    const near = nearest(code, rows.keys());
    const issueCode: IssueCode = table === 'regions' ? 'unknown-region' : 'unknown-code';
    report(issueCode, path, `the table ${table} does not hold this code`, {
      expected: near === undefined ? `a code of the table ${table}` : `perhaps ${near}`,
      value: code,
    });
  }
};

function examUses(exam: Exam): Use[] {
  const uses: Use[] = [['protocols', exam.protocol.id, ['protocol', 'id']]];
  exam.instruments?.forEach((instrument, at) => {
    uses.push(['instruments', instrument.type, ['instruments', at, 'type']]);
  });
  exam.conditions?.forEach((condition, at) => {
    uses.push(['conditions', condition.condition, ['conditions', at, 'condition']]);
    condition.regions?.forEach((region, r) => {
      uses.push(['regions', region, ['conditions', at, 'regions', r]]);
    });
  });
  exam.conclusion?.plan?.forEach((item, at) => {
    uses.push(['services', item.service, ['conclusion', 'plan', at, 'service']]);
  });
  return uses;
}

function statementUses(statement: Statement, path: Path): Use[] {
  const uses: Use[] = [...ownUses(statement, path)];
  if ('region' in statement) uses.push(['regions', statement.region, [...path, 'region']]);
  if ('reason' in statement)
    uses.push(['reasons', statement.reason?.code, [...path, 'reason', 'code']]);
  if ('methods' in statement) {
    statement.methods?.forEach((code, i) => {
      uses.push(['methods', code, [...path, 'methods', i]]);
    });
  }
  return uses;
}

/** Codes that only one kind of statement has. */
function ownUses(statement: Statement, path: Path): Use[] {
  switch (statement.kind) {
    case 'finding':
      return [
        ['findings', statement.finding, [...path, 'finding']],
        ...(statement.attributes ?? []).map(
          ({ attribute }, i): Use => [
            'attributes',
            attribute,
            [...path, 'attributes', i, 'attribute'],
          ],
        ),
      ];
    case 'region-state':
      return statement.state === 'partial'
        ? [['reasons', statement.limit.code, [...path, 'limit', 'code']]]
        : [];
    case 'sensation':
      return [
        ['testPoints', statement.point, [...path, 'point']],
        ...statement.results.flatMap((result, i): Use[] => [
          ['modalities', result.modality, [...path, 'results', i, 'modality']],
          ['sensationResults', result.result, [...path, 'results', i, 'result']],
          ['reasons', result.reason?.code, [...path, 'results', i, 'reason', 'code']],
        ]),
      ];
    case 'sensation-comparison':
      return [
        ['testPoints', statement.point, [...path, 'point']],
        ['modalities', statement.modality, [...path, 'modality']],
      ];
    case 'movement':
      return [
        ['testPoints', statement.test, [...path, 'test']],
        ['testResults', statement.grade, [...path, 'grade']],
      ];
    case 'function-test':
      return [
        ['testPoints', statement.test, [...path, 'test']],
        ['testResults', statement.result, [...path, 'result']],
      ];
    case 'measurement':
      return [
        ['measures', statement.measure, [...path, 'measure']],
        ['reasons', statement.unusable?.code, [...path, 'unusable', 'code']],
        ...(statement.conditions ?? []).map(
          (code, i): Use => ['measureConditions', code, [...path, 'conditions', i]],
        ),
      ];
    case 'scale-score':
      return [['scales', statement.scale, [...path, 'scale']]];
    case 'symptom':
      return [['symptoms', statement.symptom, [...path, 'symptom']]];
    default:
      return [];
  }
}
