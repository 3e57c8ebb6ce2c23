import { expect, it } from 'vitest';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import { fromXmlExport } from '../../../src/convert/xml/from-xml-export.ts';

const HARBOUR = 'urn:harbour:exam';

const mapping: Mapping = {
  format: 'face-neck-mapping/1',
  source: {
    syntax: 'xml',
    exam: 'h:export/h:exam',
    namespaces: { h: HARBOUR, l: 'urn:harbour:labels' },
  },
  exam: {
    id: { prefix: 'h', from: ['@no'] },
    status: { value: 'final' },
    subject: { identifiers: [{ from: 'h:worker', system: 'https://harbour.example/w' }] },
    performed: { start: 'h:when' },
    recorded: { value: '2024-03-01T10:00:00Z' },
    examiner: { fixed: { name: 'Harbour clinic' } },
    protocol: { id: 'full', version: '1.0.0' },
  },
  sides: { R: 'right', L: 'left' },
  fields: {
    'h:mrd': { kind: 'measurement', measure: 'mrd1', unit: 'mm', sideFrom: 'h:mrd/@l:side' },
  },
};

const body = (p: string, l: string): string =>
  `<${p}exam no="7"><${p}worker>H-0042</${p}worker><${p}when>2024-03-01</${p}when><${p}mrd ${l}:side="L">4</${p}mrd></${p}exam>`;

it.each([
  [
    'a prefix',
    `<x:export xmlns:x="${HARBOUR}" xmlns:y="urn:harbour:labels">${body('x:', 'y')}</x:export>`,
  ],
  [
    'another',
    `<a:export xmlns:a="${HARBOUR}" xmlns:h="urn:harbour:labels">${body('a:', 'h')}</a:export>`,
  ],
  ['none', `<export xmlns="${HARBOUR}" xmlns:y="urn:harbour:labels">${body('', 'y')}</export>`],
])('names of a mapping mean namespaces, whatever prefix the export has: %s', (_, text) => {
  const { exams, quarantine, issues } = fromXmlExport(text, mapping);
  expect([...issues, ...quarantine]).toEqual([]);
  expect(exams[0]?.exam.statements).toMatchObject([
    { kind: 'measurement', measure: 'mrd1', side: 'left', value: '4' },
  ]);
});

it('takes nothing of another namespace for its own', () => {
  const other = `<export xmlns="urn:other">${body('', 'y')}</export>`.replace(
    '<export',
    '<export xmlns:y="urn:harbour:labels"',
  );
  const { exams, quarantine } = fromXmlExport(other, mapping);
  expect(exams).toEqual([]);
  expect(quarantine[0]?.issues).toMatchObject([{ facts: { reason: 'element' } }]);
  const inner = body('h:', 'l').replace('<h:mrd', '<h:mrd xmlns:l="urn:other"');
  const text = `<h:export xmlns:h="${HARBOUR}" xmlns:l="urn:harbour:labels">${inner}</h:export>`;
  const found = fromXmlExport(text, mapping).exams[0]?.exam.statements;
  expect(found?.map(({ kind }) => kind)).toEqual(['note', 'note']);
});
