import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Document } from '../../../src/cli/input/documents.ts';
import { documentsOrLarge, type LargeDocument } from '../../../src/cli/input/large-file.ts';
import type { CliIo } from '../../../src/cli/io.ts';
import { gathered } from '../../../src/cli/output/gathered-verdict.ts';
import { validateBundle, validateEntries } from '../../../src/validate/versions/all-r4.ts';
import { inFolder } from '../in-process.ts';

// tests/slow/large-bundle.test.ts has a file of 100 MB; here the bound is a few bytes.

function io(cwd: string): CliIo {
  const none = async (): Promise<void> => {};
  return {
    stdin: (async function* () {})(),
    interactive: true,
    out: none,
    err: none,
    errIsTerminal: false,
    now: () => new Date('2026-03-04T10:00:00Z'),
    cwd,
  };
}

function observation(at: number, more: object): object {
  const text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' };
  return { resourceType: 'Observation', id: `n${at}`, text, code: { text: 'x' }, ...more };
}

function bundle(count: number, broken: (at: number) => boolean): object {
  const entry = Array.from({ length: count }, (_, at) => ({
    fullUrl: `https://clinic.example/fhir/Observation/n${at}`,
    resource: observation(at, broken(at) ? {} : { status: 'final' }),
  }));
  return { resourceType: 'Bundle', type: 'collection', entry };
}

async function documentOf(folder: string, text: string, large?: number) {
  await writeFile(join(folder, 'a.json'), text);
  const found: (Document | LargeDocument)[] = [];
  for await (const each of documentsOrLarge(io(folder), ['a.json'], large)) found.push(each);
  return found[0];
}

describe('what is too large to be held', () => {
  test.each([
    ['a resource a line', '{"resourceType":"Patient"}\n{"resourceType":"Patient"}\n'],
    ['XML', '<Patient xmlns="http://hl7.org/fhir"><active value="true"/></Patient>'],
  ])('is not %s', async (_, text) => {
    await inFolder(async (folder) => {
      expect(await documentOf(folder, text, 30)).not.toHaveProperty('chunks');
    });
  });

  test('is one JSON value over many lines, whose text can be asked for twice', async () => {
    const text = JSON.stringify(
      bundle(3, () => false),
      null,
      2,
    );
    await inFolder(async (folder) => {
      expect(await documentOf(folder, text)).not.toHaveProperty('chunks');
      const document = await documentOf(folder, text, 30);
      if (document === undefined || !('chunks' in document)) throw new Error('held');
      expect(await joined(document.chunks())).toBe(text);
      expect(await joined(document.chunks())).toBe(text);
    });
  });
});

async function joined(chunks: AsyncIterable<string>): Promise<string> {
  let text = '';
  for await (const chunk of chunks) text += chunk;
  return text;
}

describe('the gathered verdict', () => {
  const of = (value: object, most?: number) =>
    gathered(
      validateEntries(() => [JSON.stringify(value)]),
      most,
    );

  test('is that on the whole', async () => {
    const value = bundle(5, (at) => at === 3);
    const { conformance, issues, counts } = await of(value);
    const whole = validateBundle(value);
    expect(conformance).toBe(whole.conformance);
    expect(issues.map(({ code, path }) => [code, path])).toEqual(
      whole.issues.map(({ code, path }) => [code, path]),
    );
    expect(counts.error).toBe(1);
  });

  test('holds the worst issues, and counts all', async () => {
    // Warnings on spaces stand before the errors.
    const value = bundle(20, (at) => at >= 15);
    const spaced = JSON.parse(JSON.stringify(value).replaceAll('"text":"x"', '"text":" x"'));
    const { issues, counts } = await of(spaced, 7);
    expect([counts.error, counts.warning]).toEqual([5, 20]);
    expect(issues.filter(({ severity }) => severity === 'error')).toHaveLength(5);
    expect(issues).toHaveLength(8);
    expect(issues.at(-1)).toMatchObject({
      code: 'issues-cut',
      severity: 'warning',
      facts: { count: 18 },
    });
  });
});
