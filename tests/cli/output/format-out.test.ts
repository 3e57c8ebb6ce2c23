import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import { fromXml } from '../../../src/fhir/xml/from-xml.ts';
import { fromJson, toBundle, toJson } from '../../../src/index.ts';
import { sampled } from '../../sampled.ts';
import { examplePath, run } from '../in-process.ts';

/**
 * What each line says. In a narrative `&#10;` is a line break, and so is a carriage return.
 * https://www.w3.org/TR/xml/#sec-line-ends
 */
const linesOf = (text: string, read: (line: string) => unknown): unknown[] =>
  text
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(toJson(read(line)).replaceAll(/&#10;|\\r(?:\\n)?/g, '\\n')));
const xmlLines = (text: string) => linesOf(text, (line) => fromXml(line).value);
const jsonLines = (text: string) => linesOf(text, (line) => fromJson(line).value);
const mapping = join(import.meta.dirname, '../../cases/csv/mappings/long.json');
const csv =
  'exam,badge,day,item,side,value,unit,method,note\n' +
  'E1,B7,2024-02-05,MRD1,R,4.50,mm,,\nE2,B8,2024-02-06,MRD1,L,4.0,mm,,"tired,\nand said so"\n';

describe('--format-out xml', () => {
  it.each([
    ['r4', 'R4'],
    ['r4b', 'R4B'],
    ['r5', 'R5'],
  ] as const)('export of %s is the same bundle as its JSON', async (word, fhirVersion) => {
    const options = ['--fhir', word, '--bundle', 'document', '--format-out', 'xml'];
    for (const [name, exam] of [...examples].slice(0, sampled(2, 6))) {
      const { code, out, err } = await run(['export', examplePath(name), ...options]);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(out).toMatch(/^<\?xml version="1.0" encoding="UTF-8"\?>\n<Bundle xmlns=/);
      const { value } = toBundle(exam, { fhirVersion, bundleType: 'document' });
      expect(fromXml(out, { fhirVersion }).value).toEqual(value);
    }
  });

  it('several exams stand on a line each', async () => {
    const argv = ['export', examplePath('neck-lump'), examplePath('drooping-lid')];
    const xml = await run([...argv, '--format-out', 'xml']);
    const json = await run(argv);
    expect(xmlLines(xml.out)).toEqual(jsonLines(json.out));
    expect(xmlLines(xml.out)).toHaveLength(2);
  });

  it.each(['bundle', 'resources'])('sample --to %s', async (to) => {
    const argv = ['sample', '--count', '2', '--size', 'edge', '--to', to];
    const xml = await run([...argv, '--format-out', 'xml']);
    expect({ code: xml.code, err: xml.err }).toEqual({ code: 0, err: '' });
    expect(xmlLines(xml.out)).toEqual(jsonLines((await run(argv)).out));
  });

  it('convert to standard output, with decimals as stated and line breaks in notes', async () => {
    const argv = ['convert', '--mapping', mapping];
    const xml = await run([...argv, '--format-out', 'xml'], { stdin: csv });
    const json = await run(argv, { stdin: csv });
    expect({ code: xml.code, err: xml.err }).toEqual({ code: json.code, err: json.err });
    expect(xmlLines(xml.out)).toEqual(jsonLines(json.out));
    expect(xmlLines(xml.out)).toHaveLength(2);
    expect(xml.out).toMatch(/<value value="4\.50"[ >]/);
  });

  it.each([
    ['sample', ['--to', 'exam']],
    ['sample', []],
    ['convert', ['--mapping', mapping, '--to', 'exams']],
    ['convert', ['a.csv', '--mapping', mapping, '--out', 'folder']],
  ])('%s %j is a wrong call', async (command, args) => {
    const { code, out, err } = await run([command, ...args, '--format-out', 'xml'], { stdin: csv });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('--format-out xml');
  });

  it('other words are refused', async () => {
    const { code, err } = await run(['export', '--format-out', 'turtle'], { stdin: '{}' });
    expect(code).toBe(2);
    expect(err).toContain('it takes json, xml');
  });
});
