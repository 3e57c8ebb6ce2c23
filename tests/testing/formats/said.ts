import type { Statement } from '../../../src/model/statement.ts';

/** What a statement says at its core, for a comparison that knows no table of losses. */
export function said(statement: Statement): readonly unknown[] {
  const { kind } = statement;
  const place = [
    'region' in statement ? statement.region : undefined,
    'side' in statement ? statement.side : undefined,
  ];
  switch (statement.kind) {
    case 'finding': {
      const { finding, presence, certainty, attributes } = statement;
      return [kind, ...place, finding, presence, certainty, attributes];
    }
    case 'region-state': {
      const { state } = statement;
      const reason = 'limit' in statement ? statement.limit : undefined;
      const why = 'reason' in statement ? statement.reason : reason;
      return [kind, ...place, state, why?.code, statement.methods?.[0]];
    }
    case 'sensation':
      return [
        kind,
        ...place,
        statement.point,
        statement.results.map(({ modality, result, reason }) => [
          modality,
          reason === undefined ? result : reason.code,
        ]),
      ];
    case 'sensation-comparison': {
      const { point, modality, result, reason } = statement;
      return [kind, point, modality, result, reason?.code];
    }
    case 'movement':
      return [kind, ...place, statement.test, statement.reason?.code ?? statement.grade];
    case 'function-test':
      return [kind, ...place, statement.test, statement.reason?.code ?? statement.result];
    case 'measurement': {
      const { measure, value, comparator, unit, unusable, conditions } = statement;
      const quantity = value === undefined ? [unusable?.code] : [value, comparator, unit];
      return [kind, ...place, measure, ...quantity, conditions?.[0]];
    }
    case 'scale-score':
      return [kind, ...place, statement.scale, statement.version, statement.score];
    case 'symptom':
      return [kind, ...place, statement.symptom, statement.answer, statement.toldBy];
    case 'note':
      return [kind, ...place, statement.text.replace(/\r\n?/g, '\n').trim()];
    case 'image':
      return [kind, ...place, statement.url];
  }
}
