import { describe, expect, it } from 'vitest';
import { fromCda } from '../../../src/convert/cda/from-cda.ts';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import { fromHl7v2 } from '../../../src/convert/hl7v2/from-hl7v2.ts';
import { fromJsonExport } from '../../../src/convert/json/from-json-export.ts';
import type { Mapping, PresetMapping } from '../../../src/convert/mapping/mapping.ts';
import { cutAtHeadings } from '../../../src/convert/narrative/cut.ts';
import { headingLookUp } from '../../../src/convert/narrative/headings.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';

const lookUp = headingLookUp(builtInCatalogue);

/** The parts of a text as "region side: text". */
const cut = (text: string): string[] => {
  const parts = cutAtHeadings(text, lookUp, builtInCatalogue);
  expect(parts.map(({ start, end }) => text.slice(start, end)).join('')).toBe(text);
  return parts.map(({ start, end, heading }) => {
    const { region = '-', side } = heading ?? {};
    const place = side === undefined ? region : `${region} ${side}`;
    return `${place}| ${text.slice(start, end).trim()}`;
  });
};

describe('a text is cut at its headings, and nothing of it is lost', () => {
  it.each<readonly [string, readonly string[]]>([
    [
      'Well.\nEyes: ptosis.\nNeck: supple.',
      ['-| Well.', 'eyes| Eyes: ptosis.', 'neck| Neck: supple.'],
    ],
    ['HEENT: normal. Neck: supple.', ['-| HEENT: normal.', 'neck| Neck: supple.']],
    [
      'Right eye: red. Left eye: white.',
      ['eyes right| Right eye: red.', 'eyes left| Left eye: white.'],
    ],
    ['Hals: weich. Nase: frei.', ['neck| Hals: weich.', 'nose| Nase: frei.']],
    ['re. Auge: rot. li. Auge: o.B.', ['eyes right| re. Auge: rot.', 'eyes left| li. Auge: o.B.']],
    ['Neck: supple. Heart: regular.', ['neck| Neck: supple.', '-| Heart: regular.']],
    ['Neck: supple. Unlisted organ: soft.', ['neck| Neck: supple.', '-| Unlisted organ: soft.']],
    ['EYES\nPtosis.\n\nNECK\nSupple.', ['eyes| EYES\nPtosis.', 'neck| NECK\nSupple.']],
    ['Eyes: Right: ptosis. Left: normal.', ['eyes| Eyes: Right: ptosis. Left: normal.']],
    ['Eyes:\nPtosis: none', ['eyes| Eyes:\nPtosis: none']],
    ['Neck exam: supple', ['neck| Neck exam: supple']],
    ['OD: red. OS: white.', ['eyes right| OD: red.', 'eyes left| OS: white.']],
    // A line that is broken by its width is no heading.
    [
      'A scar runs behind the\nRight ear\nand ends there.',
      ['-| A scar runs behind the\nRight ear\nand ends there.'],
    ],
    [
      'Eye: red on the right. Heart: regular.',
      ['eyes| Eye: red on the right.', '-| Heart: regular.'],
    ],
    ['Seen at 10:30 and well', ['-| Seen at 10:30 and well']],
  ])('%j', (text, expected) => {
    expect(cut(text)).toEqual(expected);
  });

  it('in time that goes with its length', () => {
    for (const piece of ['\n', '. A', 'Neck: ', 'A:\n', ' - ', 'a']) {
      const text = piece.repeat(20_000 / piece.length);
      const begin = process.cpuUsage().user;
      cut(text);
      expect(process.cpuUsage().user - begin).toBeLessThan(2_000_000);
    }
  });
});

const exam: Mapping['exam'] = {
  id: { prefix: 'quay', from: ['id'] },
  status: { value: 'final' },
  subject: { name: 'name' },
  performed: { start: 'date' },
  recorded: { value: '2024-03-01T10:00:00Z' },
  examiner: { fixed: { name: 'Nell Berth' } },
  protocol: { id: 'full', version: '1.0.0' },
};
const letter: Mapping['fields'] = { letter: { kind: 'note', cut: 'headings' } };
const notes = [
  { kind: 'note', text: 'Eyes: ptosis right.', region: 'eyes' },
  { kind: 'note', text: 'Heart: regular.' },
  { kind: 'note', text: 'Lidbefund re: rot', region: 'lid-upper', side: 'right' },
];
const text = 'Eyes: ptosis right. Heart: regular. Lidbefund re: rot';
const headings: Mapping['headings'] = { 'Lidbefund re': { region: 'lid-upper', side: 'right' } };
const mapping: Mapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'csv' },
  exam,
  fields: letter,
  headings,
};

describe('a conversion makes a note of each part, and never a code', () => {
  it('from a column of a table', () => {
    const { exams } = fromCsv(`id,name,date,letter\n1,Ada Rope,2024-03-01,${text}\n`, mapping);
    expect(exams[0]?.exam.statements).toMatchObject(notes);
  });

  it('from a field of JSON', () => {
    const data = JSON.stringify({ id: 1, name: 'Ada Rope', date: '2024-03-01', letter: text });
    const { exams } = fromJsonExport(data, { ...mapping, source: { syntax: 'json' } });
    expect(exams[0]?.exam.statements).toMatchObject(notes);
  });

  it('from an OBX of type FT', () => {
    const oru: PresetMapping = { format: 'face-neck-mapping/1', use: 'hl7v2-oru', headings };
    const message = [
      'MSH|^~\\&|A|B|C|D|20240301101500+0000||ORU^R01|M-1|P|2.5.1',
      'PID|1||H-1^^^QUAY&1.2.3&ISO||Rope^Ada',
      'OBR|1||F-1|EXAM|||20240301|||||||||||||||||F',
      `OBX|1|FT|LETTER||${text.replaceAll('. ', '.\\.br\\')}||||||F`,
    ].join('\r');
    const { exams, quarantine } = fromHl7v2(message, oru);
    expect(quarantine).toEqual([]);
    expect(exams[0]?.exam.statements).toMatchObject(notes);
  });

  it('from the narrative of a section of a C-CDA document', () => {
    const cda: PresetMapping = { format: 'face-neck-mapping/1', use: 'c-cda', headings };
    const lines = text.split(/(?<=\.) /).map((line) => `<paragraph>${line}</paragraph>`);
    const document = `<ClinicalDocument xmlns="urn:hl7-org:v3"><id root="1.2.3" extension="7"/>
      <effectiveTime value="20240301100000+0000"/>
      <recordTarget><patientRole><id root="1.2.3" extension="H-1"/>
        <patient><name><given>Ada</given><family>Rope</family></name></patient></patientRole></recordTarget>
      <component><structuredBody><component><section>
        <code code="29545-1" codeSystem="2.16.840.1.113883.6.1"/><text>${lines.join('')}</text>
      </section></component></structuredBody></component></ClinicalDocument>`;
    const { exams, quarantine } = fromCda(document, cda);
    expect(quarantine).toEqual([]);
    expect(exams[0]?.exam.statements).toMatchObject(notes);
  });
});

describe('headings of a mapping', () => {
  it.each<readonly [string, NonNullable<Mapping['headings']>[string], string]>([
    ['name a region that there is', { region: 'eyez' }, 'unknown-region'],
    ['have a side only with a region', { side: 'left' }, 'missing-property'],
    ['have a side that the region can have', { region: 'septum', side: 'both' }, 'impossible-side'],
  ])('%s', (_, place, code) => {
    const { issues } = prepareMapping({ ...mapping, headings: { Befund: place } });
    expect(issues.map((one) => one.code)).toContain(code);
  });
});
