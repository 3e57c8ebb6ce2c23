import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { schemaFromTypes } from './schema-from-types.ts';

const target = fileURLToPath(new URL('../../../profiles/exam.schema.json', import.meta.url));

/** JSON Schema of an exam, made from the types in src/model, as the text of the committed file. */
export function examSchemaText(): string {
  return schemaFromTypes({
    path: 'src/model/exam.ts',
    type: 'Exam',
    file: 'exam.schema.json',
    title: 'Face and neck exam',
    discriminators: { Statement: 'kind', RegionState: 'state' },
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, examSchemaText());
}
