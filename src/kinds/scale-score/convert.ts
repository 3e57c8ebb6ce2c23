import { unknownWord } from '../../convert/build/built.ts';
import { issue } from '../../convert/issue.ts';
import type { ScaleTarget } from '../../convert/mapping/target.ts';
import type { StatementConversion, TargetConversion } from '../facets/conversion.ts';
import type { ScaleScore } from './statement.ts';

export const scaleScoreConversion: StatementConversion<ScaleScore> = {
  about: ({ scale, version, region }) => [scale, version, ...(region ? [region] : [])],
  ofFinding: true,
};

export const scaleScoreTarget: TargetConversion<ScaleTarget> = {
  codes: ({ scale }) => [['scales', scale, 'scale']],
  home: ({ scale }, catalogue) => catalogue.scales.get(scale)?.region,
  laterality: ({ scale, region }, catalogue) =>
    region === undefined
      ? catalogue.scales.get(scale)?.laterality
      : catalogue.regions.get(region)?.laterality,
  meanings: ({ scale }, catalogue) =>
    (catalogue.scales.get(scale)?.grades ?? []).map(({ code }) => code),
  states: [],
  issues: ({ scale, version }, path, { catalogue }) => {
    const versions = catalogue.scales.get(scale)?.versions ?? [];
    if (versions.length === 0 || versions.includes(version)) return [];
    return [
      issue('unknown-code', [...path, 'version'], { reason: 'scale-version', codes: versions }),
    ];
  },
  build: ({ target }, reading, plan) => {
    const { side, at, meaning, text } = reading;
    const scale = plan.catalogue.scales.get(target.scale);
    const region = reading.region ?? target.region;
    const shared = {
      kind: 'scale-score' as const,
      scale: target.scale,
      version: target.version,
      ...(region !== undefined && { region }),
      ...(side !== undefined && { side }),
      ...(at !== undefined && { at }),
    };
    if (scale?.type === 'ordinal') {
      const grades = (scale.grades ?? []).map(({ code }) => code);
      if (typeof meaning !== 'string' || !grades.includes(meaning)) {
        return unknownWord({ reason: 'one-of', codes: grades });
      }
      return { statements: [{ ...shared, score: meaning }] };
    }
    if (meaning !== undefined || !/^\d{1,5}$/.test(text)) {
      return { problem: 'not-a-number', facts: { reason: 'score' } };
    }
    return { statements: [{ ...shared, score: Number(text) }] };
  },
};
