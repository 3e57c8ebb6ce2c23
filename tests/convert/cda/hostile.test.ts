import { expect, it } from 'vitest';
import { cdaReader } from '../../../src/convert/cda/reader.ts';
import { convertText } from '../../../src/convert/exams/convert-text.ts';
import { syntaxOf } from '../messy.ts';
import { messyDocuments } from './messy-documents.ts';
import { cdaSuite } from './suite.ts';

const { plan } = syntaxOf(cdaSuite.mapping, cdaReader, false);
const good = cdaSuite.wrap([]).join('\n');

it.each([
  ['a million attributes', `<ClinicalDocument ${'a="1" '.repeat(1_000_000)}/>`, 'too-large'],
  [
    'ten thousand levels',
    `<ClinicalDocument>${'<d>'.repeat(10_000)}</ClinicalDocument>`,
    'too-deep',
  ],
  [
    'a million elements',
    `<ClinicalDocument>${'<d/>'.repeat(1_000_000)}</ClinicalDocument>`,
    'too-large',
  ],
])('a document with %s costs no other', (_, bad, code) => {
  const { exams, quarantine } = convertText(`${bad}\n${good}`, cdaReader, plan);
  expect(quarantine.map(({ reason }) => reason)).toEqual([code]);
  expect(exams.length).toBe(1);
  // The limits are far from any real document.
  expect(convertText(messyDocuments(1, 1).text, cdaReader, plan).exams.length).toBe(1);
});
