import { firstNearest } from '../../issues/nearest.ts';
import type { Path } from '../../issues/path.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import { type Unit, units } from '../../terminology/tables/units.ts';
import type { ExamRule } from './rule.ts';

const kinds: ReadonlyMap<string, Unit['kind']> = /*@__PURE__*/ new Map(
  units.map(({ code, kind }) => [code, kind]),
);

function unitsOf(kind: Unit['kind']): string[] {
  return units.flatMap((row) => (row.kind === kind ? [row.code] : []));
}

/**
 * Units of quantities whose unit no table row fixes: a duration is a time, and what an instrument
 * can resolve has a unit that the library knows. Measures and attributes have units of their own.
 */
export const knownUnits: ExamRule = ({ exam, report }) => {
  const nearest = firstNearest();
  const need = (unit: string, path: Path, kind?: Unit['kind']): void => {
    const found = kinds.get(unit);
    if (found === undefined) {
      const near = nearest(unit, kinds.keys());
      report('unknown-unit', path, { reason: 'ucum', near }, { value: unit });
    } else if (kind !== undefined && found !== kind) {
      report(
        'wrong-unit',
        path,
        { reason: 'dimension', kind, units: unitsOf(kind) },
        { value: unit },
      );
    }
  };
  exam.instruments?.forEach(({ resolution }, at) => {
    if (resolution !== undefined) {
      need(resolution.unit, ['instruments', at, 'resolution', 'unit']);
    }
  });
  exam.statements.forEach((statement, at) => {
    for (const { unit, kind, path } of formOf(statement).units?.(statement) ?? []) {
      need(unit, ['statements', at, ...path], kind);
    }
  });
};
