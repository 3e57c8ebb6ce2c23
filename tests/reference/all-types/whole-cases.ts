import { createHash } from 'node:crypto';
import type { FhirRelease } from '../corpus.ts';
import type { AnyResource } from './resources.ts';
import { bundleCases } from './wholes/bundles.ts';
import { definitionCases } from './wholes/definitions.ts';
import { questionnaireCases } from './wholes/questionnaires.ts';
import { scopeCases } from './wholes/scopes.ts';
import { terminologyCases } from './wholes/terminologies.ts';

/** Resources written for a rule each, sound and broken; the same on every machine. */
export function wholeCases(version: FhirRelease): AnyResource[] {
  const tables = [bundleCases, terminologyCases, questionnaireCases, definitionCases, scopeCases];
  return tables.flatMap((cases) =>
    Object.entries(cases(version)).map(([id, resource]) => {
      const text = JSON.stringify(resource);
      const digest = createHash('sha256').update(text).digest('hex').slice(0, 8);
      return { id, version, text, digest };
    }),
  );
}
