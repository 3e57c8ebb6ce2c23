import { firstNearest } from '../../issues/nearest.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Exam } from '../exam.ts';
import type { Statement } from '../statement.ts';
import type { ExamRule } from './rule.ts';

type Step = string | number;

/** Asks that a code, where there is one, stands in its table; `path` is where the code is. */
type Need = (table: TableName, code: string | undefined, ...path: readonly Step[]) => void;

/** Every code must stand in its table. */
export const knownCodes: ExamRule = ({ exam, catalogue, report }) => {
  const nearest = firstNearest();
  const need: Need = (table, code, ...path) => {
    const rows = catalogue[table];
    if (code === undefined || rows.has(code)) return;
    const near = nearest(code, rows.keys());
    const facts = { reason: 'table', near } as const;
    if (table === 'regions') report('unknown-region', path, facts, { value: code });
    else report('unknown-code', path, { ...facts, table }, { value: code });
  };
  examCodes(exam, need);
  exam.statements.forEach((statement, at) => {
    placeCodes(statement, at, need);
    for (const { table, code, path } of formOf(statement).codes?.(statement) ?? []) {
      need(table, code, 'statements', at, ...path);
    }
  });
};

function examCodes(exam: Exam, need: Need): void {
  need('protocols', exam.protocol.id, 'protocol', 'id');
  exam.instruments?.forEach((instrument, at) => {
    need('instruments', instrument.type, 'instruments', at, 'type');
  });
  exam.conditions?.forEach((condition, at) => {
    need('conditions', condition.condition, 'conditions', at, 'condition');
    condition.regions?.forEach((region, r) => {
      need('regions', region, 'conditions', at, 'regions', r);
    });
  });
  exam.conclusion?.plan?.forEach((item, at) => {
    need('services', item.service, 'conclusion', 'plan', at, 'service');
  });
}

/** Codes that several kinds of statement have. */
function placeCodes(statement: Statement, at: number, need: Need): void {
  if ('region' in statement) need('regions', statement.region, 'statements', at, 'region');
  if ('except' in statement) {
    statement.except?.forEach(({ region }, e) => {
      need('regions', region, 'statements', at, 'except', e, 'region');
    });
  }
  if ('reason' in statement) {
    need('reasons', statement.reason?.code, 'statements', at, 'reason', 'code');
  }
  if ('methods' in statement) {
    statement.methods?.forEach((code, m) => {
      need('methods', code, 'statements', at, 'methods', m);
    });
  }
}
