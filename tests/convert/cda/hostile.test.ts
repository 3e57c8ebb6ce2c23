import { expect, it } from 'vitest';
import { cdaReader } from '../../../src/convert/cda/reader.ts';
import { convertText } from '../../../src/convert/exams/convert-text.ts';
import { sampled } from '../../sampled.ts';
import { syntaxOf } from '../messy.ts';
import { messyDocuments } from './messy-documents.ts';
import { cdaSuite } from './suite.ts';

/** More than is read of any one exam. */
const MANY = sampled(250_000, 1_000_000);

const { plan } = syntaxOf(cdaSuite.mapping, cdaReader, false);
const good = cdaSuite.wrap([]).join('\n');

it.each([
  ['very many attributes', `<ClinicalDocument ${'a="1" '.repeat(MANY)}/>`, 'too-large'],
  [
    'ten thousand levels',
    `<ClinicalDocument>${'<d>'.repeat(10_000)}</ClinicalDocument>`,
    'too-deep',
  ],
  [
    'very many elements',
    `<ClinicalDocument>${'<d/>'.repeat(MANY)}</ClinicalDocument>`,
    'too-large',
  ],
])('a document with %s costs no other', (_, bad, code) => {
  const { exams, quarantine } = convertText(`${bad}\n${good}`, cdaReader, plan);
  expect(quarantine.map(({ reason }) => reason)).toEqual([code]);
  expect(exams.length).toBe(1);
  // The limits are far from any real document.
  expect(convertText(messyDocuments(1, 1).text, cdaReader, plan).exams.length).toBe(1);
});
