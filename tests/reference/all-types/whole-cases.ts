import { createHash } from 'node:crypto';
import type { FhirRelease } from '../corpus.ts';
import type { Json } from './places.ts';
import type { AnyResource } from './resources.ts';
import { bundleCases } from './wholes/bundles.ts';
import { codeSystemCases } from './wholes/code-systems.ts';
import { conceptMapCases } from './wholes/concept-maps.ts';
import { definitionCases } from './wholes/definitions.ts';
import { namingSystemCases } from './wholes/naming-systems.ts';
import { questionnaireCases } from './wholes/questionnaires.ts';
import { scopeCases } from './wholes/scopes.ts';
import { valueSetCases } from './wholes/value-sets.ts';

/** Resources written for a rule each, sound and broken; the same on every machine. */
export function wholeCases(version: FhirRelease): AnyResource[] {
  const tables: readonly Record<string, Json>[] = [
    bundleCases(version),
    codeSystemCases,
    valueSetCases,
    conceptMapCases(version),
    namingSystemCases,
    questionnaireCases(version),
    definitionCases(version),
    scopeCases(version),
  ];
  return tables.flatMap((cases) =>
    Object.entries(cases).map(([id, resource]) => {
      const text = JSON.stringify(resource);
      const digest = createHash('sha256').update(text).digest('hex').slice(0, 8);
      return { id, version, text, digest };
    }),
  );
}
