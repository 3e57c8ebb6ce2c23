import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { schemaFromTypes } from './schema-from-types.ts';

const target = fileURLToPath(new URL('../../../profiles/mapping.schema.json', import.meta.url));

/** JSON Schema of a mapping file, made from the types in src/convert, as the text of the committed file. */
export function mappingSchemaText(): string {
  return schemaFromTypes({
    path: 'src/convert/mapping/mapping.ts',
    type: 'Mapping',
    file: 'mapping.schema.json',
    title: 'Mapping of a legacy export to face and neck exams',
    discriminators: { Target: 'kind', Source: 'syntax' },
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, mappingSchemaText());
}
