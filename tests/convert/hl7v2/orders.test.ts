import { describe, expect, it } from 'vitest';
import { convertText } from '../../../src/convert/exams/convert-text.ts';
import { quarantineEntry, unitOfEntry } from '../../../src/convert/exams/quarantine.ts';
import { fromHl7v2 } from '../../../src/convert/hl7v2/from-hl7v2.ts';
import { hl7v2ReaderOf } from '../../../src/convert/hl7v2/reader.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import { sampled } from '../../sampled.ts';
import { checkMutated, mutated, syntaxOf } from '../messy.ts';
import { seeded } from '../random.ts';
import { checkLedger } from '../syntax-cases.ts';
import { hl7v2Suite } from './suite.ts';

// HL7 v2.5.1 chapter 7, ORU^R01: MSH { [PID [PD1] [{NTE}] [PV1 [PV2]]] { [ORC] OBR [{NTE}] { [OBX
// [{NTE}]] } } }: the group of a patient repeats, and in it the group of an order. By HL7's mapping of
// messages to FHIR each OBR is a DiagnosticReport of its own, by its filler order number.
const msh =
  'MSH|^~\\&|EXAM|HARBOUR|EHR|HUB|20240301101500+0000||ORU^R01^ORU_R01|T1|P|2.5.1||||||UNICODE UTF-8';
const pid = (id: string, name: string): string => `PID|1||${id}^^^HARBOUR^MR||${name}||19620320|F`;
const obr = (set: number, id: string): string =>
  `OBR|${set}||${id}|FNEX^Face and neck exam^99EXAM|||202403010945||||||||||||||||||F`;
const obx = (value: string): string => `OBX|1|NM|MRD1|R|${value}|mm|||||F`;

const source = { syntax: 'hl7v2', orders: 'exams' } as const;
const mapping: Mapping = { ...hl7v2Suite.mapping, source };
const reader = hl7v2ReaderOf(source);

const message = [
  msh,
  pid('H-0042', 'ROPE^ADA'),
  'PV1|1|O|QUAY',
  'ORC|RE||E-1',
  obr(1, 'E-1'),
  obx('4'),
  'NTE|1||left alone',
  obr(2, ''),
  'OBX|1|CWE|TM|L|N||||||F',
  'ORC|RE||E-2',
  obr(3, 'E-2'),
  obx('3'),
  pid('H-0043', 'KEEL^NOA'),
  obr(1, 'E-3'),
  obx('5'),
  '',
].join('\r');

describe('a message with several orders', () => {
  it('gives an exam for each filler order number and patient', () => {
    const result = fromHl7v2(message, mapping);
    checkLedger(result);
    expect(result.quarantine).toEqual([]);
    const about = result.exams.map(({ exam }) => [
      exam.id.split('.').at(-1),
      JSON.stringify(exam.subject).match(/H-\d+/)?.[0],
      exam.statements.flatMap((one) => {
        if (one.kind === 'measurement') return one.value;
        return one.kind === 'note' ? [] : one.kind;
      }),
    ]);
    expect(about).toEqual([
      ['E-1', 'H-0042', ['4', 'region-state']],
      ['E-2', 'H-0042', ['3']],
      ['E-3', 'H-0043', ['5']],
    ]);
  });

  it('is cut without a seam, each exam with the lines that it needs', () => {
    const splitter = reader.splitter();
    const units = [...splitter.push(message), ...splitter.end()];
    expect(units.map(({ raw }) => raw).join('')).toBe(message);
    expect(units.map(({ at, header }) => [at, header?.map((line) => line.slice(0, 3))])).toEqual([
      [{ line: 1 }, undefined],
      [{ line: 10 }, ['MSH', 'PID', 'PV1']],
      [{ line: 13 }, ['MSH']],
    ]);
  });

  it('stays one exam where the mapping does not say otherwise, and is never mixed', () => {
    const result = fromHl7v2(message, hl7v2Suite.mapping);
    expect(result.exams).toEqual([]);
    expect(result.quarantine.map(({ reason }) => reason)).toEqual(['several-patients']);
    const [onePatient = ''] = message.split('PID|1||H-0043');
    const conflict = fromHl7v2(onePatient, hl7v2Suite.mapping);
    expect(conflict.quarantine.map(({ reason }) => reason)).toEqual(['conflicting-fields']);
  });

  it('can be mended by order and fed back', () => {
    const broken = message.replace(obr(3, 'E-2'), obr(3, 'E-2').replace('202403010945', '2024-13'));
    const splitter = reader.splitter();
    const units = [...splitter.push(broken), ...splitter.end()];
    const { quarantine, exams } = convertText(broken, reader, syntaxOf(mapping, reader, true).plan);
    expect(exams.length).toBe(2);
    const [entry = quarantineEntry(units[1] ?? expect.fail(), [], 0)] = quarantine;
    const mended = unitOfEntry({ ...entry, raw: entry.raw.replace('2024-13', '202403010945') });
    const [group] = reader.read([mended]);
    expect(group?.records.map(({ kind }) => kind)).toEqual([
      'MSH',
      'PID',
      'PV1',
      'ORC',
      'OBR',
      'OBX',
    ]);
  });

  it('is read in its own character set', () => {
    const text = message.replaceAll('KEEL', 'K\u00e9el').replaceAll('ROPE', 'R\u00f6pe');
    const bytes = Buffer.from(text, 'utf8').toString('latin1');
    const declared: (string | undefined)[] = [];
    const splitter = reader.splitter((raw, set) => {
      declared.push(set);
      return Buffer.from(raw, 'latin1').toString('utf8');
    });
    const units = [...splitter.push(bytes), ...splitter.end()];
    expect(units[1]?.header?.[1]).toContain('R\u00f6pe');
    expect(new Set(declared)).toEqual(new Set(['utf-8']));
  });

  it.each([
    ['exams', 1001, ''],
    ['in common', 2, 'x'.repeat(65_536)],
  ])('is kept whole in quarantine where it has too much: %s', (_, orders, note) => {
    const groups = Array.from({ length: orders }, (_, at) => `${obr(at, `E-${at}`)}\r${obx('4')}`);
    const text = [msh, pid('H-0042', 'ROPE^ADA'), `NTE|1||${note}`, ...groups].join('\r');
    const result = fromHl7v2(text, mapping);
    expect(result.exams).toEqual([]);
    expect(result.quarantine.map(({ reason, raw }) => [reason, raw])).toEqual([
      ['too-large', text],
    ]);
  });

  it('survives damage anywhere', () => {
    const random = seeded(5);
    const syntax = syntaxOf(mapping, reader, true);
    for (let round = 0; round < sampled(60, 300); round++) {
      checkMutated(mutated(message, '|^~\\&\r\n"MSHPIDOBRORC', random), syntax);
    }
  });
});
