import { beforeAll, describe, expect, it } from 'vitest';
import { valueText } from '../../src/testing/formats/csv.ts';
import { writeExams } from '../../src/testing/formats/formats.ts';
import type { Item } from '../../src/testing/formats/item.ts';
import { itemsOfExam } from '../../src/testing/formats/items-of-exam.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { exampleExams, seededCount } from '../reference/exams.ts';
import { ask, legacyReader, type Program } from './programs.ts';

// Samples of legacy exports as readers see them that others wrote: Python's own csv, python-hl7 and
// lxml. Our converters are held to the same samples elsewhere; both could be wrong in the same way.

const exams = [
  ...exampleExams().map(({ exam }) => exam),
  ...sampleExams(1, seededCount, { size: 'usual' }),
  ...sampleExams(1, seededCount, { size: 'edge' }),
];

interface Read {
  readonly code: string;
  readonly value: string;
  readonly unit: string;
  readonly region: string;
  readonly side: string;
  readonly note: string;
}

interface Answer {
  readonly id: string;
  readonly items?: readonly Read[];
  readonly error?: string;
}

/** python-hl7 leaves blanks at the end of a message out. */
const withoutBlanks = (one: Read): Read => ({ ...one, note: one.note.trimEnd() });

/** Line ends are written in one way or another, and read as a line end. */
const lines = (text = ''): string => text.replace(/\r\n?/g, '\n');

function stated({ code, value, region = '', side, note }: Item): Read {
  const unit = 'number' in value ? value.unit : '';
  const place = { region, side: side ?? '' };
  return { code, value: lines(valueText(value)), unit, ...place, note: lines(note) };
}

let reader: Program;
beforeAll(async () => {
  reader = await legacyReader();
});

const formats = ['csv', 'hl7v2', 'xml', 'cda'] as const;

describe.each(formats)('%s', (format) => {
  it('holds for a reader of others each item with its value, unit, place, side and remark', async () => {
    const requests = exams.map((exam) => ({
      id: exam.id,
      format,
      text: writeExams([exam], format),
    }));
    const answers = await ask<Answer>(reader, requests);
    expect(answers.filter(({ error }) => error !== undefined)).toEqual([]);
    let items = 0;
    for (const [at, exam] of exams.entries()) {
      const read = answers[at]?.items
        ?.map((one) => ({ ...one, value: lines(one.value), note: lines(one.note) }))
        .map(format === 'hl7v2' ? withoutBlanks : (one) => one);
      const written = itemsOfExam(exam)
        .map(stated)
        .map((one) => asRead[format]?.(one) ?? one);
      expect(read, exam.id).toEqual(written);
      items += written.length;
    }
    expect(items).toBeGreaterThan(exams.length * 10);
  });
});

const asRead: { readonly [format: string]: (item: Read) => Read } = {
  hl7v2: withoutBlanks,
  cda: asInCda,
};

/** An amount with a comparator is a text there, with its unit behind it where that is a word. */
function asInCda(item: Read): Read {
  if (item.unit === '' || !/^[<>]/.test(item.value)) return item;
  const value = /^\p{L}/u.test(item.unit) ? `${item.value} ${item.unit}` : item.value;
  return { ...item, value, unit: '' };
}
