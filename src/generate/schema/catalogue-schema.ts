import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { schemaFromTypes } from './schema-from-types.ts';

const target = fileURLToPath(new URL('../../../profiles/catalogue.schema.json', import.meta.url));

/** JSON Schema of the rows that an adopter adds, made from the types in src/terminology, as the text of the committed file. */
export function catalogueSchemaText(): string {
  return schemaFromTypes({
    path: 'src/terminology/catalogue.ts',
    type: 'CatalogueAdditions',
    file: 'catalogue.schema.json',
    title: 'Rows that an adopter adds to the tables of face and neck exams',
    discriminators: {},
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, catalogueSchemaText());
}
