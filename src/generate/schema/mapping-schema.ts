import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { presetNames } from '../../convert/mapping/presets/index.ts';
import { schemaFromTypes } from './schema-from-types.ts';

const target = fileURLToPath(new URL('../../../profiles/mapping.schema.json', import.meta.url));

/** JSON Schema of a mapping file, made from the types in src/convert, as the text of the committed file. */
export function mappingSchemaText(): string {
  const text = schemaFromTypes({
    path: 'src/convert/mapping/mapping.ts',
    type: 'Mapping',
    file: 'mapping.schema.json',
    title: 'Mapping of a legacy export to face and neck exams',
    discriminators: { Target: 'kind', SidedTarget: 'kind', Source: 'syntax', CellOperation: 'do' },
  });
  const ofFhir = schemaFromTypes({
    path: 'src/convert/mapping/fhir-mapping.ts',
    type: 'FhirMapping',
    file: 'mapping.schema.json',
    title: 'Mapping of FHIR of another system',
    discriminators: {},
  });
  const { $ref: whole, ...schema } = JSON.parse(text);
  const both = { ...JSON.parse(ofFhir).definitions, ...schema.definitions };
  const names = Object.keys(both).sort();
  const definitions = Object.fromEntries(names.map((name) => [name, both[name]]));
  Object.assign(definitions, presetDefinitions(definitions));
  const anyOf = [
    { $ref: whole },
    { $ref: '#/definitions/PresetMapping' },
    { $ref: '#/definitions/FhirMapping' },
  ];
  return `${JSON.stringify({ ...schema, anyOf, definitions }, undefined, 1)}\n`;
}

interface Definition {
  readonly properties: { readonly [name: string]: object };
  readonly required?: readonly string[];
}

/** What a mapping that uses a preset may leave open: the source, the exam and the parts of both. */
function presetDefinitions(all: { readonly [name: string]: Definition }): object {
  const open = (name: string): object => {
    const { required: _, ...rest } = all[name] ?? { properties: {} };
    return rest;
  };
  const { properties = {} } = all['Mapping'] ?? {};
  const exam = all['ExamFields']?.properties ?? {};
  const sources = ['CsvSource', 'Hl7v2Source', 'CdaSource'];
  return {
    PresetMapping: {
      title: 'PresetMapping',
      description:
        'A mapping that uses a preset of the library, which says what this one leaves out.',
      type: 'object',
      properties: {
        ...properties,
        use: { enum: presetNames },
        source: { anyOf: sources.map(open) },
        exam: {
          type: 'object',
          properties: Object.fromEntries(
            Object.entries(exam).map(([name, node]) => [name, openNode(node, open)]),
          ),
          additionalProperties: false,
        },
      },
      required: ['format', 'use'],
      additionalProperties: false,
    },
  };
}

function openNode(node: object, open: (name: string) => object): object {
  const ref = '$ref' in node && typeof node.$ref === 'string' ? node.$ref : undefined;
  if (ref === undefined) return 'required' in node ? { ...node, required: [] } : node;
  const { $ref: _, ...rest } = node as { $ref: string };
  return { ...open(ref.replace('#/definitions/', '')), ...rest };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, mappingSchemaText());
}
