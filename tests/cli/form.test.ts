import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { toExtractableQuestionnaire } from '../../src/forms/extract/index.ts';
import { startingResponse, toFormDescription, toQuestionnaire } from '../../src/forms/index.ts';
import { orThrow } from '../../src/index.ts';
import { createRandom } from '../../src/testing/random.ts';
import { fillAtRandom, head } from '../forms/fill.ts';
import { differencesOf } from '../forms/stands.ts';
import { inFolder, run } from './in-process.ts';

const form = orThrow('make', toQuestionnaire('jaw-pain'));

describe('form', () => {
  it('writes a Questionnaire of the version and in the language that is asked for', async () => {
    const { code, out, err } = await run(['form', 'jaw-pain', '--fhir', 'r5', '--language', 'de']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const wanted = toQuestionnaire('jaw-pain', { fhirVersion: 'R5', language: 'de' });
    expect(JSON.parse(out)).toEqual(wanted.value);
  });

  it('contains the templates of extraction where they are asked for', async () => {
    const { out } = await run(['form', 'jaw-pain', '--extract']);
    expect(JSON.parse(out)).toEqual(toExtractableQuestionnaire('jaw-pain').value);
  });

  it('writes the plain description, and what a form begins with', async () => {
    const { out } = await run(['form', 'jaw-pain', '--to', 'description']);
    expect(JSON.parse(out)).toEqual(toFormDescription('jaw-pain').value);
    const start = await run(['form', 'jaw-pain', '--to', 'start']);
    expect(JSON.parse(start.out)).toEqual(startingResponse('jaw-pain').value);
  });

  it('reads what was filled in to an exam, and takes protocols of a clinic', async () => {
    await inFolder(async (cwd) => {
      const { response, given } = fillAtRandom(form, createRandom(4));
      writeFileSync(join(cwd, 'head.json'), JSON.stringify(head));
      const args = ['form', 'jaw-pain', '--read', '-', '--head', 'head.json', '--out', 'exam.json'];
      const stdin = JSON.stringify(response);
      const { code } = await run([...args, '--status', 'preliminary'], { stdin, cwd });
      expect(code).toBe(0);
      const exam = JSON.parse(readFileSync(join(cwd, 'exam.json'), 'utf8'));
      expect(exam.status).toBe('preliminary');
      expect(differencesOf(exam, given)).toEqual([]);

      const regions = [{ region: 'temple', methods: ['inspection'] }];
      const own = { code: 'quay', display: 'Quay', version: '1', regions };
      const rows = { system: 'https://harbour.example/codes', protocols: [own] };
      writeFileSync(join(cwd, 'rows.json'), JSON.stringify(rows));
      const made = await run(['form', 'quay', '--catalogue', 'rows.json'], { cwd });
      expect(JSON.parse(made.out)).toMatchObject({ title: 'Quay', version: '1' });
    });
  });

  it('tells what cannot be taken at its item, without the value', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'head.json'), JSON.stringify(head));
      const item = [{ linkId: 'conclusion', item: [{ linkId: 'secret' }] }];
      const stdin = JSON.stringify({ ...fillAtRandom(form, createRandom(4)).response, item });
      const args = ['form', 'jaw-pain', '--read', '-', '--head', 'head.json', '--complete'];
      const { code, out, err } = await run(args, { stdin, cwd });
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err).toContain('error  conclusion:concern  there is no answer');
      expect(err).toContain('[unknown-property]');
      expect(err).not.toContain('secret');
    });
  });

  it('a protocol that there is not is an error, with the nearest', async () => {
    const { code, err } = await run(['form', 'droopy-lids']);
    expect(code).toBe(1);
    expect(err).toContain('perhaps droopy-lid');
  });
});
