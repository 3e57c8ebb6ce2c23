import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fromJsonExport } from '../../../src/convert/json/index.ts';
import { isFault, parseJson } from '../../../src/convert/json/parse.ts';
import { jsonReader } from '../../../src/convert/json/reader.ts';
import { jsonSplitter } from '../../../src/convert/json/split.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { JsonSource } from '../../../src/convert/mapping/source.ts';
import { scanExport } from '../../../src/convert/suggest/index.ts';
import { inFolder, run } from '../../cli/in-process.ts';
import { runContext } from '../context.ts';
import { checkMutated, mutated, syntaxOf } from '../messy.ts';
import { seeded } from '../random.ts';
import { writeJson } from './context-writer.ts';

function mappingFor(source: JsonSource): Mapping {
  return {
    format: 'face-neck-mapping/1',
    source,
    exam: {
      id: { prefix: 'harbour', from: ['no'] },
      status: { value: 'final' },
      subject: { identifiers: [{ from: 'worker', system: 'https://harbour.example/w' }] },
      performed: { start: 'day' },
      recorded: { value: '2024-03-01T10:00:00Z' },
      examiner: { fixed: { name: 'Harbour surgery' } },
      protocol: { id: 'full', version: '1.0.0' },
    },
    items: [
      {
        code: ['signs/code'],
        value: 'signs/value',
        side: 'signs/side',
        map: { MRD1: { kind: 'measurement', measure: 'mrd1', unit: 'mm' } },
      },
    ],
    sides: { R: 'right', L: 'left' },
  };
}

const exam = (no: string, value = 4.5): object => ({
  ...{ no, worker: 'W1', day: '2024-02-05' },
  signs: [
    { code: 'MRD1', side: 'R', value },
    { code: 'MRD1', side: 'L', value: 4 },
  ],
});
const inClinic: JsonSource = { syntax: 'json', exam: 'clinic/exams', items: ['signs'] };
const bare: JsonSource = { syntax: 'json', items: ['signs'] };
const byLine: JsonSource = { syntax: 'json', lines: true, items: ['signs'] };

const ids = (text: string, source: JsonSource): readonly string[] =>
  fromJsonExport(text, mappingFor(source)).exams.map((one) => one.exam.id);
const aside = (text: string, source: JsonSource): readonly string[] =>
  fromJsonExport(text, mappingFor(source)).quarantine.map(({ reason }) => reason);

describe('JSON to exams', () => {
  it('reads items with their sides', () => {
    const text = JSON.stringify({ clinic: { exams: [exam('1')] } }, undefined, 2);
    const [first] = fromJsonExport(text, mappingFor(inClinic)).exams;
    expect(first?.issues).toEqual([]);
    expect(first?.exam.statements).toMatchObject([
      { measure: 'mrd1', side: 'right', value: '4.5', unit: 'mm' },
      { measure: 'mrd1', side: 'left', value: '4', unit: 'mm' },
    ]);
  });

  it.each<[string, string, JsonSource]>([
    ['a list at a path', JSON.stringify({ clinic: { exams: [exam('1'), exam('2')] } }), inClinic],
    [
      'lists on the way',
      JSON.stringify([{ clinic: { exams: [exam('1')] } }, { clinic: { exams: exam('2') } }]),
      inClinic,
    ],
    ['a list at the root', JSON.stringify([exam('1'), exam('2')]), bare],
    ['one text after the other', `${JSON.stringify(exam('1'))}${JSON.stringify(exam('2'))}`, bare],
    [
      'a line for each',
      `\uFEFF${JSON.stringify(exam('1'))}\r\n\r\n${JSON.stringify(exam('2'))}`,
      byLine,
    ],
  ])('finds exams in %s', (_, text, source) => {
    expect(ids(text, source)).toEqual(['harbour.1', 'harbour.2']);
    expect(aside(text, source)).toEqual([]);
  });

  it('reads numbers as they are written', () => {
    const text = JSON.stringify([exam('1', 0)]).replace('"value":0', '"value":4.50');
    const [first] = fromJsonExport(text, mappingFor(bare)).exams;
    expect(first?.exam.statements[0]).toMatchObject({ value: '4.50' });
    const large = text.replace('4.50', '12345678901234567890.5');
    expect(fromJsonExport(large, mappingFor(bare)).exams[0]?.issues.length).toBeGreaterThan(0);
  });

  it('sets aside, whole and told, what stands outside the exams', () => {
    const text = JSON.stringify({
      made: 'today',
      clinic: { name: [1, { x: '}' }], exams: [exam('1')] },
    });
    const { quarantine, exams } = fromJsonExport(text, mappingFor(inClinic));
    expect(exams).toHaveLength(1);
    expect(quarantine.map(({ raw, reason }) => [raw, reason])).toEqual([
      ['"made": "today"', 'stray-text'],
      ['"name": [1,{"x":"}"}]', 'stray-text'],
    ]);
  });

  it('lets a broken exam cost one exam', () => {
    const good = JSON.stringify(exam('2'));
    expect(ids(`{"no": "1\n${good}`, byLine)).toEqual(['harbour.2']);
    expect(ids(`[{"no": "1\n,${good}]`, bare)).toEqual(['harbour.2']);
    expect(ids(`[{"no": 01},${good}]`, bare)).toEqual(['harbour.2']);
    expect(aside(`[{"no": 01},${good}]`, bare)).toEqual(['malformed-record']);
    expect(aside(`[{"no":"1","no":"2"}]`, bare)).toEqual(['malformed-record']);
    expect(aside(`[{"no":"1"`, bare)).toEqual(['malformed-record']);
    expect(aside(`${'['.repeat(10)}{"a":${'['.repeat(500)}${']'.repeat(500)}}`, bare)).toContain(
      'too-deep',
    );
  });

  it('cuts alike wherever a piece ends', () => {
    const text = `{"a":"x\\"}","clinic":{"exams":[${JSON.stringify(exam('ä{"'))}, 12, {"b":[]}]}} {"c`;
    const cut = (size: number): unknown => {
      const splitter = jsonSplitter(['clinic', 'exams']);
      const pieces = Array.from({ length: Math.ceil(text.length / size) }, (_, at) =>
        text.slice(at * size, (at + 1) * size),
      );
      return [...pieces.flatMap((piece) => splitter.push(piece)), ...splitter.end()];
    };
    for (const size of [1, 2, 3, 7, 50]) expect(cut(size)).toEqual(cut(1000));
  });

  it('survives damage anywhere, and loses nothing', () => {
    const random = seeded(5);
    const text = JSON.stringify({ clinic: { exams: [exam('1'), exam('2'), exam('3')] } });
    const syntax = syntaxOf(mappingFor(inClinic), jsonReader(inClinic), false);
    for (let round = 0; round < 60; round++) {
      checkMutated(mutated(text, '{}[]",:\\ \n-0ntf\u0000', random), syntax);
    }
  });

  it('takes a value with its own side, unit and person alone', () => {
    const RUNS = 120;
    expect(runContext(writeJson, RUNS).statements).toBeGreaterThan(RUNS / 2);
  });
});

describe('reader of JSON', () => {
  // https://www.rfc-editor.org/rfc/rfc8259: what the engine's own parser takes and refuses.
  it.each([
    ...['{}', '[]', ' [1 , 2.5e3]', '"\\u00e4\\n"', 'null', '-0', '[true,false]', '{"a":{"b":[]}}'],
    ...[
      '',
      '{',
      '[1,]',
      '{"a":1,}',
      '01',
      '1.',
      "'a'",
      '"\t"',
      '"\\x"',
      'nul',
      '[1 2]',
      '{a:1}',
      '1 2',
    ],
    ...['{"a"}', '{,}', '[,1]', '"a', 'NaN', '+1', '[1]]', '\u00a01', '{"a":1 "b":2}', '"\\"'],
  ])('agrees with the engine on %j', (text) => {
    let isJson = true;
    try {
      JSON.parse(text);
    } catch {
      isJson = false;
    }
    expect(!isFault(parseJson(text))).toBe(isJson);
  });
});

describe('JSON elsewhere', () => {
  it('is seen by its beginning', () => {
    expect(scanExport(JSON.stringify([exam('1')])).source).toEqual({ syntax: 'json' });
    const lines = `${JSON.stringify(exam('1'))}\n${JSON.stringify(exam('2'))}\n`;
    const scan = scanExport(lines);
    expect(scan.source).toEqual({ syntax: 'json', lines: true });
    expect(scan.exams).toBe(2);
    expect(scan.fields.map(({ name }) => name)).toContain('signs/side');
  });

  it('is converted from the command line', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'm.json'), JSON.stringify(mappingFor(byLine)));
      writeFileSync(join(cwd, 'a.ndjson'), `${JSON.stringify(exam('ü'))}\n`);
      const call = ['convert', 'a.ndjson', '--mapping', 'm.json', '--to', 'exams'];
      const { code, out, err } = await run(call, { cwd });
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(JSON.parse(out).statements).toHaveLength(2);
    });
  });
});
