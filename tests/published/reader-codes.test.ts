import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { modifierTableText } from '../../src/generate/fhir-tables/modifiers.ts';
import { published } from '../../src/generate/published.ts';
import {
  answers,
  assertions,
  interpretations,
  lateralityAttribute,
  type PublishedCode,
  sideCodes,
  sidedSites,
  sideExtensions,
} from '../../src/read/foreign/published-codes.ts';

test('src/read/foreign/tables/modifiers.ts is what the published packages give', async () => {
  const file = new URL('../../src/read/foreign/tables/modifiers.ts', import.meta.url);
  expect(await modifierTableText()).toBe(await readFile(file, 'utf8'));
});

const all: readonly PublishedCode<unknown>[] = [
  ...answers,
  ...interpretations,
  ...assertions,
  ...sideCodes,
  ...sidedSites,
  lateralityAttribute,
];

const files = new Map<string, Promise<unknown>>();

function fileOf(source: string): Promise<unknown> {
  const known = files.get(source);
  if (known !== undefined) return known;
  const [at = '', name = ''] = source.split(' ');
  const cut = at.lastIndexOf('@');
  const read = published(at.slice(0, cut), at.slice(cut + 1))
    .then((folder) => readFile(join(folder, name), 'utf8'))
    .then((text): unknown => JSON.parse(text));
  files.set(source, read);
  return read;
}

/** Names under which a code stands in a file: its display, without the kind of concept in brackets. */
function namesIn(value: unknown, code: string): string[] {
  if (value === null || typeof value !== 'object') return [];
  const { code: own, display } = value as { code?: unknown; display?: unknown };
  const name = own === code && typeof display === 'string' ? [display] : [];
  return [...name, ...Object.values(value).flatMap((inner) => namesIn(inner, code))];
}

test.each(all)('$system|$code is $display in $source', async ({ code, display, source }) => {
  const names = namesIn(await fileOf(source), code);
  expect(
    names.map((name) =>
      name.replace(/ \((qualifier value|body structure|finding|attribute)\)$/, ''),
    ),
  ).toContain(display);
});

test('extensions for a side are published', async () => {
  const extensions = await published('hl7.fhir.uv.extensions.r4', '5.3.0-ballot-tc1');
  const mcode = await published('hl7.fhir.us.mcode', '4.0.0');
  const urls = await Promise.all(
    [
      join(extensions, 'StructureDefinition-observation-structureLaterality.json'),
      join(mcode, 'StructureDefinition-mcode-laterality-qualifier.json'),
    ].map(async (file) => JSON.parse(await readFile(file, 'utf8')).url),
  );
  expect(sideExtensions).toEqual(urls);
});
