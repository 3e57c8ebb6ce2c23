import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { schemaFromTypes } from './schema-from-types.ts';

const target = fileURLToPath(
  new URL('../../../profiles/check-settings.schema.json', import.meta.url),
);

/** JSON Schema of the settings of a check, made from the types in src/checks, as the text of the committed file. */
export function checkSettingsSchemaText(): string {
  return schemaFromTypes({
    path: 'src/checks/settings/check-settings.ts',
    type: 'CheckSettings',
    file: 'check-settings.schema.json',
    title: 'Settings of the checks on a face and neck exam',
    discriminators: {},
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, checkSettingsSchemaText());
}
