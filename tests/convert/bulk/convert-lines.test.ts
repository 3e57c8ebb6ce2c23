import { expect, it } from 'vitest';
import { convertLines } from '../../../src/convert/bulk/convert-lines.ts';
import type { ConvertSettings } from '../../../src/convert/bulk/options.ts';
import { hl7v2Reader } from '../../../src/convert/hl7v2/reader.ts';
import { referencesIn } from '../../../src/fhir/references.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { csvMapping } from '../csv/suite.ts';
import { messyMessages } from '../hl7v2/messy-messages.ts';
import { hl7v2Suite } from '../hl7v2/suite.ts';

const header = 'exam_no,worker_no,exam_date,MRD1_R,cheek_L,node_R,remark'.split(',');

async function* pieces(text: string, size: number): AsyncGenerator<Buffer> {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

// biome-ignore lint/suspicious/noExplicitAny: lines of JSON, looked at by the tests
async function run(input: readonly string[], settings: ConvertSettings, size = 7): Promise<any[]> {
  const lines: string[] = [];
  await convertLines(pieces(input.join('\n'), size), settings, async (line) => {
    lines.push(line);
  });
  return lines.map((line) => JSON.parse(line));
}

const row = (raw: string, id: unknown): string => JSON.stringify({ raw, header, id });

it('gives one line for each line, in order, under the name that it came with', async () => {
  const lines = await run(
    [
      row('X1,V0417,05/02/2024,4.50,WNL,+,café 🍇', 'job-1'),
      row('X2,V0417,5th of May,4.5,,,', { job: 2 }),
      'no JSON',
      '',
      JSON.stringify({ id: 3 }),
      row('X4,V0417,05/02/2024,"4,5",,,', 4),
    ],
    { mapping: csvMapping, to: 'exams' },
  );
  expect(lines.map(({ id, exam, quarantine }) => [id, exam, quarantine?.reason])).toEqual([
    ['job-1', 'vineyard.X1', undefined],
    [{ job: 2 }, undefined, 'unreadable-date'],
    [undefined, undefined, 'malformed-record'],
    [3, undefined, 'malformed-record'],
    [4, 'vineyard.X4', undefined],
  ]);
  expect(lines[0].result.statements.at(-1).text).toBe('café 🍇');
  expect(lines[4].issues).toMatchObject([{ code: 'decimal-mark' }]);
});

it('keeps decimals as they were stated', async () => {
  const texts: string[] = [];
  const input = pieces(row('X1,V0417,05/02/2024,4.50,,,', 1), 1000);
  const result = await convertLines(input, { mapping: csvMapping }, async (line) => {
    texts.push(line);
  });
  expect(result).toEqual({ read: 1, converted: 1, issues: [] });
  expect(texts[0]).toContain('"value":4.50');
  expect(validateBundle(JSON.parse(texts[0] ?? '').result).valid).toBe(true);
});

it('gives resources as a list', async () => {
  const [line] = await run([row('X1,V0417,05/02/2024,4.5,,,', 1)], {
    mapping: csvMapping,
    to: 'resources',
  });
  const types = line.result.map((resource: { resourceType: string }) => resource.resourceType);
  expect(types).toContain('DiagnosticReport');
  expect(line.result.map(({ resourceType, id }: Fhir) => `${resourceType}/${id}`)).toEqual(
    expect.arrayContaining([...referencesIn(line.result)]),
  );
});

interface Fhir {
  readonly resourceType: string;
  readonly id: string;
}

it('takes messages', async () => {
  const splitter = hl7v2Reader.splitter();
  const units = [...splitter.push(messyMessages(1, 20).text), ...splitter.end()];
  const lines = await run(
    units.map(({ raw }, id) => JSON.stringify({ raw, id })),
    { mapping: hl7v2Suite.mapping, to: 'exams' },
    1000,
  );
  expect(lines.map(({ id }) => id)).toEqual(units.map((_, id) => id));
});

it('reads nothing where the mapping is wrong', async () => {
  const result = await convertLines(pieces('{}', 1), { mapping: {} }, async () => {});
  expect(result.read).toBe(0);
  expect(result.issues.length).toBeGreaterThan(0);
});
