import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hl7v2Reader } from '../../../src/convert/hl7v2/reader.ts';
import { messageSplitter } from '../../../src/convert/hl7v2/split.ts';
import type { LegacyRecord, RawUnit, RecordGroup } from '../../../src/convert/record/record.ts';

function split(text: string, piece = 7, limit?: number): RawUnit[] {
  const splitter = messageSplitter(limit);
  const units: RawUnit[] = [];
  for (let at = 0; at < text.length; at += piece)
    units.push(...splitter.push(text.slice(at, at + piece)));
  return [...units, ...splitter.end()];
}

function read(text: string): readonly RecordGroup[] {
  return hl7v2Reader.read(split(text));
}

function told(records: readonly LegacyRecord[], kind: string): string[][] {
  return records
    .filter((record) => record.kind === kind)
    .map(({ fields }) =>
      fields.map(({ name, text, explicitNull }) => `${name}=${explicitNull ?? text}`),
    );
}

const head = 'MSH|^~\\&|EXAM|CLINIC|EHR|HUB|20240301101500||ORU^R01^ORU_R01|T1|P|2.5.1';
const pid = 'PID|1||T-1^^^CLINIC^MR||GRAPE^ADA||19620320|F';
const codes = (group: RecordGroup | undefined): string[] =>
  group?.issues.map(({ code }) => code) ?? [];

function observation(rest: string): { fields: string[]; malformed: string[]; issues: string[] } {
  const [group] = read([head, pid, `OBX|1|${rest}`].join('\r'));
  const record = group?.records.find(({ kind }) => kind === 'OBX');
  return {
    fields: told(group?.records ?? [], 'OBX')[0] ?? [],
    malformed: record?.malformed?.map(({ code }) => code) ?? [],
    issues: codes(group),
  };
}

describe('messages', () => {
  const two = ['MSH|^~\\&|A', 'PID|1', 'MSH|^~\\&|B', 'PID|2'];

  it.each([
    ['CR as published', '\r'],
    ['LF', '\n'],
    ['CRLF', '\r\n'],
  ])('end in %s', (_, end) => {
    const text = two.map((line) => line + end).join('');
    for (const piece of [1, 2, 7, 1000]) {
      const units = split(text, piece);
      expect(units.map(({ raw }) => raw)).toEqual([
        text.slice(0, text.length / 2),
        text.slice(text.length / 2),
      ]);
      expect(units.map(({ at }) => at)).toEqual([{ line: 1 }, { line: 3 }]);
    }
  });

  it('stand in MLLP frames (MLLP release 1: VT before, FS and CR after)', () => {
    const text = '\x0bMSH|^~\\&|A\rPID|1\r\x1c\r\x0bMSH|^~\\&|B\r\x1c\r';
    const units = split(text);
    expect(units.map(({ issues }) => issues)).toEqual([undefined, undefined]);
    expect(units.map(({ raw }) => raw).join('')).toBe(text);
  });

  it('stand in a batch (HL7 v2 chapter 2, batch protocol)', () => {
    const batch = ['FHS|^~\\&|F', 'BHS|^~\\&|B', ...two, 'BTS|2', 'FTS|1'].join('\r');
    const units = split(batch);
    expect(units.map(({ raw }) => raw).join('')).toBe(batch);
    expect(units.flatMap(({ issues }) => issues ?? [])).toEqual([]);
    const short = split(batch.replace('BTS|2', 'BTS|3'));
    expect(short.flatMap(({ issues }) => issues?.map(({ code }) => code) ?? [])).toEqual([
      'batch-count',
    ]);
  });

  it('keeps text before the first message as a unit of its own', () => {
    const units = split('hello\rthere\rMSH|^~\\&|A\r');
    expect(units.map(({ raw, issues }) => [raw, issues?.map(({ code }) => code)])).toEqual([
      ['hello\rthere\r', ['stray-text']],
      ['MSH|^~\\&|A\r', undefined],
    ]);
  });

  it('goes on after a message that is too long', () => {
    const text = `MSH|^~\\&|A\r${'OBX|x\r'.repeat(20)}MSH|^~\\&|B\r`;
    const units = split(text, 7, 60);
    expect(units.map(({ raw }) => raw).join('')).toBe(text);
    expect(units[0]?.issues?.map(({ code }) => code)).toEqual(['too-large']);
    expect(units.at(-1)).toEqual({ raw: 'MSH|^~\\&|B\r', at: { line: 22 } });
  });

  it('tells the character set of MSH-18', () => {
    const declared = (code: string): string | undefined =>
      split(`${head}||||||${code}`)[0]?.declaredEncoding;
    expect(declared('UNICODE UTF-8')).toBe('utf-8');
    expect(declared('8859/1~ISO IR87')).toBe('iso-8859-1');
    expect(declared('WINDOWS-1252')).toBe('windows-1252');
    expect(declared('')).toBeUndefined();
  });
});

describe('segments and fields', () => {
  it('reads the message of the HL7 V3 guide (HL7 normative edition, GHH LAB)', () => {
    const [group] = read(
      [
        'MSH|^~\\&|GHH LAB|ELAB-3|GHH OE|BLDG4|200202150930||ORU^R01|CNTRL-3456|P|2.4',
        'PID|||555-44-4444||EVERYWOMAN^EVE^E^^^^L|JONES|196203520|F|||153 FERNWOOD DR.^^STATESVILLE^OH^35292',
        'OBR|1|845439^GHH OE|1045813^GHH LAB|1554-5^GLUCOSE|||200202150730',
        'OBX|1|SN|1554-5^GLUCOSE^POST 12H CFST:MCNC:PT:SER/PLAS:QN||^182|mg/dl|70_105|H|||F',
      ].join('\r'),
    );
    const records = group?.records ?? [];
    expect(codes(group)).toEqual([]);
    expect(told(records, 'PID')[0]?.slice(0, 6)).toEqual([
      'PID-3=555-44-4444',
      'PID-5=EVERYWOMAN',
      'PID-5.2=EVE',
      'PID-5.3=E',
      'PID-5.7=L',
      'PID-6=JONES',
    ]);
    expect(told(records, 'OBX')[0]).toEqual([
      'OBX-1=1',
      'OBX-2=SN',
      'OBX-3=1554-5',
      'OBX-3.2=GLUCOSE',
      'OBX-3.3=POST 12H CFST:MCNC:PT:SER/PLAS:QN',
      'OBX-5=182',
      'OBX-6=mg/dl',
      'OBX-7=70_105',
      'OBX-8=H',
      'OBX-11=F',
    ]);
  });

  it('names repetitions, components and subcomponents and their places', () => {
    const [group] = read([head, 'PID|1||A^^^B&1.2.3&ISO~C||X'].join('\r'));
    const fields = group?.records.find(({ kind }) => kind === 'PID')?.fields ?? [];
    expect(fields.map(({ name, text, at }) => [name, text, at])).toEqual([
      ['PID-1', '1', { segment: 'PID', segmentIndex: 2, field: 1, component: 1 }],
      ['PID-3', 'A', { segment: 'PID', segmentIndex: 2, field: 3, repetition: 1, component: 1 }],
      ['PID-3.4', 'B', { segment: 'PID', segmentIndex: 2, field: 3, repetition: 1, component: 4 }],
      [
        'PID-3.4.2',
        '1.2.3',
        { segment: 'PID', segmentIndex: 2, field: 3, repetition: 1, component: 4 },
      ],
      [
        'PID-3.4.3',
        'ISO',
        { segment: 'PID', segmentIndex: 2, field: 3, repetition: 1, component: 4 },
      ],
      ['PID-3', 'C', { segment: 'PID', segmentIndex: 2, field: 3, repetition: 2, component: 1 }],
      ['PID-5', 'X', { segment: 'PID', segmentIndex: 2, field: 5, component: 1 }],
    ]);
  });

  it('gives every piece between delimiters that holds anything, and no other', () => {
    const marks = fc.string({ unit: fc.constantFrom(...'|^~&ab'), maxLength: 60 });
    fc.assert(
      fc.property(marks, (rest) => {
        const [group] = read([head, pid, `ZZZ|${rest}`].join('\r'));
        const record = group?.records.find(({ kind }) => kind === 'ZZZ');
        const pieces = rest.split(/[|^~&]/).filter((piece) => piece !== '');
        expect(record?.fields.map(({ text }) => text)).toEqual(pieces);
      }),
    );
  });

  it('takes "" as explicitly nothing, and an empty field as nothing said (HL7 v2 chapter 2)', () => {
    expect(observation('NM|MRD1||""|mm^""|||||F').fields).toEqual([
      'OBX-1=1',
      'OBX-2=NM',
      'OBX-3=MRD1',
      'OBX-5=""',
      'OBX-6=mm',
      'OBX-6.2=""',
      'OBX-11=F',
    ]);
  });

  it('puts a comment with the segment above it, one line for each NTE (HL7 v2 chapter 7)', () => {
    const [group] = read(
      [
        head,
        pid,
        'NTE|1||about the patient',
        'OBX|1|ST|A||x||||||F',
        'NTE|1||one~two',
        'NTE|2||three',
      ].join('\r'),
    );
    expect(group?.records.map(({ kind }) => kind)).toEqual(['MSH', 'PID', 'OBX']);
    expect(told(group?.records ?? [], 'PID')[0]).toContain('NTE-3=about the patient');
    expect(told(group?.records ?? [], 'OBX')[0]).toContain('NTE-3=one\ntwo\nthree');
  });

  it('joins a line that a line break cut off, and tells it', () => {
    const [group] = read([head, pid, 'OBX|1|TX|A||first', 'second line||||||F'].join('\n'));
    expect(told(group?.records ?? [], 'OBX')[0]).toContain('OBX-5=first\nsecond line');
    expect(codes(group)).toEqual(['broken-line']);
  });

  it('keeps a line with no segment name apart, unread', () => {
    const [group] = read([head, pid, 'obx|1|ST|A||x||||||F'].join('\r'));
    const line = group?.records.find(({ kind }) => kind === 'line');
    expect(line?.malformed?.map(({ code }) => code)).toEqual(['malformed-record']);
    expect(line?.fields.map(({ text }) => text)).toEqual(['obx|1|ST|A||x||||||F']);
  });

  it('goes by the delimiters of each message', () => {
    const [group] = read(
      ['MSH$%*@+$A$$$$$$ORU%R01$1$P$2.3', 'PID$1$$7%%%8+9', 'OBX$1$ST$A$$x@F@y%z$$$$$$F'].join(
        '\r',
      ),
    );
    expect(told(group?.records ?? [], 'PID')[0]).toEqual([
      'PID-1=1',
      'PID-3=7',
      'PID-3.4=8',
      'PID-3.4.2=9',
    ]);
    expect(told(group?.records ?? [], 'OBX')[0]).toContain('OBX-5=x$y%z');
  });

  it('bounds the segments of a message and the fields of a segment', () => {
    const [many] = read(`${head}\r${'Z\r'.repeat(100_001)}`);
    expect(codes(many)).toEqual(['too-large']);
    const [wide] = read(`${head}\r${pid}\rZZZ${'|x'.repeat(1001)}`);
    const record = wide?.records.find(({ kind }) => kind === 'ZZZ');
    expect(record?.malformed).toHaveLength(1);
    expect(record?.fields[0]?.text).toHaveLength(3 + 2 * 1001);
  });
});

describe('OBX-5 by its value type (OBX-2, table 0125)', () => {
  it.each([
    ['NM|A||4.50|mm^millimetre^UCUM|||||F', 'OBX-5=4.50'],
    ['SN|A||^182||||||F', 'OBX-5=182'],
    ['SN|A||=^3||||||F', 'OBX-5=3'],
    ['SN|A||>=^5||||||F', 'OBX-5=>=5'],
    ['SN|A||<>^5||||||F', 'OBX-5=<>5'],
    ['SN|A||^1^-^2||||||F', 'OBX-5=1-2'],
    ['SN|A||^1^:^128||||||F', 'OBX-5=1:128'],
    ['SN|A||^2^+||||||F', 'OBX-5=2+'],
    ['CWE|A||P^present^99EXAM||||||F', 'OBX-5=P'],
    ['ST|A||cheek & chin, ~5 mm ^||||||F', 'OBX-5=cheek & chin, ~5 mm ^'],
    ['TX|A||line one~line two||||||F', 'OBX-5=line one\nline two'],
    ['FT|A||one\\.br\\two||||||F', 'OBX-5=one\ntwo'],
    ['DT|A||20240301||||||F', 'OBX-5=20240301'],
  ])('%s gives %s', (rest, field) => {
    const { fields, malformed } = observation(rest);
    expect(fields).toContain(field);
    expect(malformed).toEqual([]);
  });

  it('gives each repetition as a value of its own', () => {
    const values = observation('NM|A||4~5~4.5|mm|||||F').fields.filter((text) =>
      text.startsWith('OBX-5='),
    );
    expect(values).toEqual(['OBX-5=4', 'OBX-5=5', 'OBX-5=4.5']);
  });

  it.each([
    ['an unknown type', 'QQ|A||4||||||F', 'unknown-value-type'],
    ['a value without a type', '|A||4||||||F', 'unknown-value-type'],
    ['a file in the message', 'ED|A||^application^pdf^Base64^JVBE||||||F', 'unsupported-value'],
    ['a pointer to a file', 'RP|A||x.pdf^Q^application^pdf||||||F', 'unsupported-value'],
    ['an empty repetition', 'NM|A||~5||||||F', 'malformed-record'],
    ['a segment that ends too early', 'NM|A', 'malformed-record'],
    ['no result status', 'NM|A||4|mm', 'missing-field'],
  ])('does not read %s', (_, rest, code) => {
    expect(observation(rest).malformed).toEqual([code]);
  });

  it('tells a value that the sender cut off', () => {
    const [group] = read(
      [head.replace('^~\\&', '^~\\&#'), pid, 'OBX|1|ST|A||no nod#||||||F'].join('\r'),
    );
    expect(codes(group)).toEqual(['truncated-value']);
  });
});

describe('headers', () => {
  const header = (from: string, to: string): string[] =>
    codes(read([head.replace(from, to), pid].join('\r'))[0]);

  it.each([
    ['ORU^R01^ORU_R01', 'ORU^R01', []],
    ['ORU^R01^ORU_R01', 'MDM^T02^MDM_T02', []],
    ['ORU^R01^ORU_R01', 'ADT^A04', ['unsupported-message']],
    ['ORU^R01^ORU_R01', '', ['unsupported-message']],
    ['|P|', '|T|', ['test-message']],
    ['|P|', '|D|', ['test-message']],
    ['2.5.1', '2.3', []],
    ['2.5.1', '2.8.2', []],
    ['2.5.1', '2.1', ['unsupported-message']],
    ['2.5.1', '3.0', ['unsupported-message']],
    ['^~\\&', '^^\\&', ['wrong-delimiters']],
  ])('with %s as %s', (from, to, found) => {
    expect(header(from, to)).toEqual(found);
  });

  it('speak of one patient', () => {
    expect(codes(read(head)[0])).toEqual(['several-patients']);
    expect(codes(read([head, pid, pid].join('\r'))[0])).toEqual(['several-patients']);
  });
});
