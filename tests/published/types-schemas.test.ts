import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { checkSettingsSchemaText } from '../../src/generate/schema/check-settings-schema.ts';
import { clinicSchemaText } from '../../src/generate/schema/clinic-schema.ts';
import { examSchemaText } from '../../src/generate/schema/exam-schema.ts';
import { mappingSchemaText } from '../../src/generate/schema/mapping-schema.ts';

// TypeScript's own compiler reads the types, which takes seconds: too long for the quick suite.
it.each([
  ['exam.schema.json', examSchemaText],
  ['mapping.schema.json', mappingSchemaText],
  ['check-settings.schema.json', checkSettingsSchemaText],
  ['clinic.schema.json', clinicSchemaText],
])('profiles/%s is what the types say', { timeout: 120_000 }, (file, made) => {
  expect(readFileSync(new URL(`../../profiles/${file}`, import.meta.url), 'utf8')).toBe(made());
});
