import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { schemaFromTypes } from './schema-from-types.ts';

const target = fileURLToPath(new URL('../../../profiles/clinic.schema.json', import.meta.url));

/** JSON Schema of a clinic file, made from the types in src/clinic, as the text of the committed file. */
export function clinicSchemaText(): string {
  return schemaFromTypes({
    path: 'src/clinic/clinic-file.ts',
    type: 'ClinicFile',
    file: 'clinic.schema.json',
    title: 'What a clinic decides about its face and neck exams',
    discriminators: {},
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, clinicSchemaText());
}
