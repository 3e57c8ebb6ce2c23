import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { harbourPath, harbourText, maskCheck } from '../clinic/harbour.ts';
import { inFolder, run } from './in-process.ts';

const clinic = ['--clinic', harbourPath];
const exam = maskCheck('quay-2', '2025-05-06T09:00:00+02:00');
const stdin = JSON.stringify(exam);

describe('every command takes what a clinic has decided', () => {
  it('export, and read again; an option goes before the file', async () => {
    const { code, out, err } = await run(['export', ...clinic], { stdin });
    expect({ code, err: err.includes('error') }).toEqual({ code: 0, err: false });
    expect(JSON.parse(out).type).toBe('transaction');
    expect(out).toContain('https://harbour.example/old-codes');
    const back = await run(['read', ...clinic], { stdin: out });
    expect(JSON.parse(back.out)).toEqual(exam);
    const other = await run(['export', ...clinic, '--bundle', 'document', '--fhir', 'r5'], {
      stdin,
    });
    expect(JSON.parse(other.out).type).toBe('document');
    const without = await run(['export'], { stdin });
    expect(without.code).toBe(1);
  });

  it.each<readonly [string, readonly string[], string]>([
    ['form', ['form', 'mask-check'], 'Pressure mark of a mask'],
    ['report', ['report'], 'Pressure mark of a mask'],
    ['check', ['check'], 'Coverage of Check of the skin below a mask'],
    ['letter', ['letter', '--to', 'specialist'], 'Pressure mark of a mask'],
    ['flat', ['flat'], 'Line of the mask seal'],
    ['audit', ['audit'], 'Line of the mask seal'],
    ['recall', ['recall'], 'exam,item,patient'],
    ['find', ['find', 'rubber', 'edge'], 'seal-line'],
    [
      'sample',
      ['sample', '--to', 'bundle', '--patient', 'match'],
      'https://harbour.example/records',
    ],
  ])('%s', async (_, args, told) => {
    const { code, out, err } = await run([...args, ...clinic], { stdin });
    expect({ code, err }).toEqual({ code: 0, err: expect.not.stringContaining('error') });
    expect(out).toContain(told);
  });

  it('tells what is wrong with the file at its line, and does nothing', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'own.json'), harbourText.replace('"skin",', '"skim",'));
      const { code, out, err } = await run(['export', '--clinic', 'own.json'], { cwd, stdin });
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err).toContain('own.json: error  catalogue.regions[0].parent');
      expect(err).toContain('perhaps skin, of the table regions');
      const line = harbourText.split('\n').findIndex((text) => text.includes('"parent"')) + 1;
      expect(err).toContain(`at line ${line}, column`);
      writeFileSync(join(cwd, 'own.json'), '{"format": }');
      const cut = await run(['export', '--clinic', 'own.json'], { cwd, stdin });
      expect(cut).toMatchObject({ code: 1, out: '' });
      expect(cut.err).toContain('[not-json] at line 1, column 12');
    });
  });
});

describe('clinic', () => {
  it('writes a first file, and says what is to be decided', async () => {
    await inFolder(async (cwd) => {
      const { code, err } = await run(['clinic', '--out', 'clinic.json'], { cwd });
      expect(code).toBe(0);
      expect(err.match(/nobody has decided/g)).toHaveLength(6);
      expect(err).toContain('clinic.json: information  identity');
      const held = await run(['clinic', 'clinic.json'], { cwd });
      expect(held).toMatchObject({ code: 0, err });
      expect(held.out).toContain('identity    undecided');

      // What cannot do without it is refused; an option decides it for the call.
      const open = ['export', '--clinic', 'clinic.json', '--bundle', 'transaction'];
      const plain = JSON.stringify({
        ...exam,
        protocol: { id: 'full', version: '1.0.0' },
        statements: [],
      });
      const refused = await run(open, { cwd, stdin: plain });
      expect(refused).toMatchObject({ code: 1, out: '' });
      const line = readFileSync(join(cwd, 'clinic.json'), 'utf8')
        .split('\n')
        .findIndex((text) => text.includes('"identity"'));
      expect(refused.err).toContain(`clinic.json: error  identity  nobody has decided`);
      expect(refused.err).toContain(`at line ${line + 1}, column`);
      const uri = ['--identity', 'https://quay.example/records'];
      const taken = await run([...open, ...uri], { cwd, stdin: plain });
      expect(taken.code).toBe(0);
    });
  });

  it('says what a file holds, and writes its own codes as a CodeSystem', async () => {
    const { out } = await run(['clinic', harbourPath]);
    expect(out).toContain('own rows    regions 1, findings 5, negatives 1, protocols 1\n');
    const codes = await run(['clinic', harbourPath, '--to', 'code-system']);
    expect(JSON.parse(codes.out)).toMatchObject({ resourceType: 'CodeSystem', count: 11 });
    const { entry } = JSON.parse((await run(['clinic', harbourPath, '--to', 'definitions'])).out);
    expect(entry.map((one: { request: object }) => one.request)).toEqual(
      ['CodeSystem/clinic-codes', 'ValueSet/regions', 'ValueSet/findings']
        .concat(['ValueSet/negatives', 'ValueSet/protocols', 'ConceptMap/clinic-code-map'])
        .map((url) => ({ method: 'PUT', url })),
    );
  });
});
