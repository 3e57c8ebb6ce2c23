import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { actStatusWords } from '../../src/convert/cda/complete.ts';
import { characterSets } from '../../src/convert/hl7v2/charset.ts';
import {
  documentStatusWords,
  reportStatusWords,
  resultStatusWords,
  siteSideWords,
  unverifiedResult,
} from '../../src/convert/hl7v2/tables.ts';
import { formOfType } from '../../src/convert/hl7v2/value-types.ts';
import { published } from '../../src/generate/published.ts';

interface Concept {
  readonly code: string;
  readonly display: string;
  readonly concept?: readonly Concept[];
}

/** A table of HL7 v2 as HL7 terminology publishes it (CC0), by code. */
async function table(number: string): Promise<ReadonlyMap<string, string>> {
  const folder = await published('hl7.terminology.r4', '7.0.1');
  const text = await readFile(join(folder, `CodeSystem-v2-${number}.json`), 'utf8');
  const { concept }: { concept: readonly Concept[] } = JSON.parse(text);
  return new Map(concept.map(({ code, display }) => [code, display]));
}

describe('tables of HL7 v2', () => {
  it('0085: every result status has a meaning, and no other', async () => {
    expect(Object.keys(resultStatusWords).sort()).toEqual([...(await table('0085')).keys()].sort());
    const unknown = [...unverifiedResult].filter((code) => !Object.hasOwn(resultStatusWords, code));
    expect(unknown).toEqual([]);
  });

  it('0123 and 0271: statuses of reports and documents', async () => {
    const reports = await table('0123');
    for (const code of Object.keys(reportStatusWords)) expect(reports.has(code)).toBe(true);
    expect(Object.keys(documentStatusWords).sort()).toEqual(
      [...(await table('0271')).keys()].sort(),
    );
  });

  it('0163: sides say what the table displays', async () => {
    const sites = await table('0163');
    const sides = new Map([
      ['Left', 'left'],
      ['Right', 'right'],
      ['Bilateral', 'both'],
    ]);
    const parts = new Map([
      ['Ear', 'ears'],
      ['Ears', 'ears'],
      ['Eye', 'eyes'],
      ['Eyes', 'eyes'],
      ['Naris', 'nose'],
      ['Nares', 'nose'],
    ]);
    const expected = [...sites].flatMap(([code, display]) => {
      const [side = '', part = '', ...more] = display.split(' ');
      const within = parts.get(part);
      return within === undefined || more.length > 0
        ? []
        : [[code, { side: sides.get(side), within }]];
    });
    expect(siteSideWords).toEqual(Object.fromEntries(expected));
    expect([sites.get('LT'), sites.get('RT')]).toEqual(['Left Thigh', 'Right Thigh']);
  });

  it('0211: only published codes, all but three of them', async () => {
    const published = [...(await table('0211')).keys()];
    const missing = published.filter((code) => !characterSets.has(code));
    expect([...characterSets.keys()].filter((code) => !published.includes(code))).toEqual([]);
    expect(missing.sort()).toEqual(['CNS 11643-1992', 'ISO IR159', 'UNICODE UTF-32']);
  });

  it('0125: value types are data types of code system v2-0440', async () => {
    const types = await table('0440');
    expect([...formOfType.keys()].filter((type) => !types.has(type))).toEqual([]);
  });
});

describe('tables of CDA', () => {
  it('v3-ActStatus: every status of an entry has a meaning, and no other', async () => {
    const folder = await published('hl7.terminology.r4', '7.0.1');
    const text = await readFile(join(folder, 'CodeSystem-v3-ActStatus.json'), 'utf8');
    const { concept }: { concept: readonly Concept[] } = JSON.parse(text);
    const all = concept.flatMap((one) => [
      one.code,
      ...(one.concept ?? []).map(({ code }) => code),
    ]);
    expect(Object.keys(actStatusWords).sort()).toEqual(all.sort());
  });
});
