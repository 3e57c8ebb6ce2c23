import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { answerLines } from '../../src/cli/lines/answer-lines.ts';
import { toBundleOrThrow, toJson } from '../../src/index.ts';
import { seeded } from '../convert/random.ts';
import { inFolder, type Ran, run } from './in-process.ts';

// The contract of examples/guides/scale.md, held for each command that has --lines.

const example = join(import.meta.dirname, '../../examples/convert');
const mapping = join(example, 'vineyard.mapping.json');
const [header = '', ...rows] = readFileSync(join(example, 'vineyard.csv'), 'utf8')
  .trimEnd()
  .split('\n');

const small = ['broken-off', 'neck-lump'].map((name) => {
  const exam = examples.get(name);
  if (exam === undefined) throw new Error(`no example ${name}`);
  return exam;
});
const exams = small.map((exam, at) => toJson({ id: `e${at}`, result: exam }));
const bundles = small.map((exam) => toJson(toBundleOrThrow(exam)));
const poison = ['no JSON', '{"id":7}', '{"id":8,"raw":9}', '[]', '{"id":9,"raw":"{\\"a\\":"}'];

interface Worker {
  readonly argv: readonly string[];
  readonly records: readonly string[];
  /** How many of the records have a result. */
  readonly good: number;
}

const workers: Readonly<Record<string, Worker>> = {
  convert: {
    argv: ['convert', '--lines', '--mapping', mapping, '--to', 'exams'],
    records: rows.map((raw, id) => JSON.stringify({ id, raw, header: header.split(';') })),
    good: 4,
  },
  validate: { argv: ['validate', '--lines'], records: bundles, good: 2 },
  check: { argv: ['check', '--lines', '--rule-set', 'horner-signs'], records: exams, good: 2 },
  audit: { argv: ['audit', '--lines'], records: exams, good: 2 },
  export: { argv: ['export', '--lines', '--apart'], records: exams, good: 2 },
  flat: { argv: ['flat', '--lines'], records: exams, good: 2 },
};

const linesOf = (text: string): string[] => text.split('\n').filter((line) => line !== '');
// biome-ignore lint/suspicious/noExplicitAny: lines of JSON, looked at by the tests
const json = (text: string): any[] => linesOf(text).map((line) => JSON.parse(line));
const lines = (records: readonly string[]): string => records.map((one) => `${one}\n`).join('');
const work = ({ argv }: Worker, stdin: string | readonly Uint8Array[]): Promise<Ran> =>
  run(argv, { stdin });

describe.each(Object.entries(workers))('%s --lines', (_, worker) => {
  const mixed = [...worker.records, ...poison, ...worker.records];

  it('gives a line for each record, with a result or kept back whole, and exit code 4', async () => {
    const { code, out, err } = await work(worker, lines(mixed));
    expect({ code, err }).toEqual({ code: 4, err: '' });
    const answers = json(out);
    expect(answers.length).toBe(mixed.length);
    expect(answers.filter(({ result }) => result !== undefined).length).toBe(2 * worker.good);
    for (const { result, quarantine, issues } of answers) {
      expect(result === undefined).toBe(quarantine !== undefined);
      expect(quarantine?.issues.length ?? 1).toBeGreaterThan(0);
      expect(issues !== undefined || quarantine !== undefined).toBe(true);
    }
    const kept = answers.slice(worker.records.length, -worker.records.length);
    expect(kept[0].quarantine.raw).toBe('no JSON');
    expect(kept[4]).toMatchObject({ id: 9, quarantine: { raw: '{"a":' } });
  });

  it('ends with 0 where every record has a result', async () => {
    const good = json((await work(worker, lines(worker.records))).out)
      .map(({ result }, at) => (result === undefined ? undefined : worker.records[at]))
      .filter((record) => record !== undefined);
    const { code, out } = await work(worker, lines(good));
    expect({ code, count: linesOf(out).length }).toEqual({ code: 0, count: worker.good });
  });

  it('gives the same bytes whatever the cut', async () => {
    const { out: whole } = await work(worker, lines(mixed));
    const random = seeded(3);
    for (let round = 0; round < 2; round++) {
      const parts: string[] = [];
      for (let at = 0; at < mixed.length; ) {
        const end = at + 1 + random.below(mixed.length);
        // Blank lines are no records, and the last line may lack its end.
        parts.push((await work(worker, `\n${mixed.slice(at, end).join('\n\n')}`)).out);
        at = end;
      }
      expect(parts.join('')).toBe(whole);
    }
  });

  it('keeps back what is not UTF-8', async () => {
    const { code, out } = await work(worker, [Buffer.from('{"id":1,"raw":"caf\xe9"}\n', 'latin1')]);
    expect(code).toBe(4);
    expect(json(out)[0].quarantine.issues.length).toBeGreaterThan(0);
  });

  it('answers nothing to no record', async () => {
    expect(await work(worker, '')).toEqual({ code: 0, out: '', err: '' });
  });

  it.each([
    [['--out', 'x'], '--lines does not go with --out'],
    [['file.ndjson'], 'with --lines, only standard input is read'],
  ])('%j is a wrong call', async (more, text) => {
    const { code, out, err } = await run([...worker.argv, ...more], { stdin: '' });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(text);
  });
});

interface Apart {
  readonly type: string;
  readonly text: string;
}

describe('workers in a row', () => {
  const { convert, validate, check } = workers as Required<typeof workers>;

  it('take the answers of one another, and hand on what was kept back before', async () => {
    const records = lines(convert?.records ?? []);
    const argv = (convert?.argv ?? []).slice(0, -2);
    const answers = (await run(argv, { stdin: records })).out;
    const verdicts = await work(validate as Worker, answers);
    expect(verdicts.code).toBe(4);
    const before = linesOf(answers);
    for (const [at, line] of linesOf(verdicts.out).entries()) {
      const { id, result, quarantine } = JSON.parse(line);
      expect(id).toBe(at);
      if (quarantine !== undefined) expect(line).toBe(before[at]);
      else expect(result.conformance).toBe('conforms');
    }
    const asExams = (await work(convert as Worker, records)).out;
    const checked = json((await work(check as Worker, asExams)).out);
    expect(checked.map(({ id }) => id)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(checked.filter(({ result }) => result?.coverage !== undefined).length).toBe(4);
  });

  it('give what the commands give of a file', async () => {
    const stdin = lines(small.map((exam) => toJson(exam)));
    const rows = json((await run(['flat', '--lines'], { stdin })).out).flatMap(
      ({ result }) => result,
    );
    const flat = (await run(['flat', '--to', 'ndjson'], { stdin })).out;
    expect(rows).toEqual(json(flat));
    const apart = json((await run(['export', '--lines', '--apart'], { stdin })).out);
    const types = apart.flatMap(({ result }) => result.map(({ text }: Apart) => JSON.parse(text)));
    expect(types.map(({ resourceType }) => resourceType)).toEqual(
      apart.flatMap(({ result }) => result.map(({ type }: Apart) => type)),
    );
    const inBundle = (await run(['export', '--lines'], { stdin })).out;
    for (const [at, text] of bundles.entries()) {
      expect(linesOf(inBundle)[at]).toContain(`"result":${text}}`);
    }
  });

  it('check reads no clock, and holds dates to a moment that is given', async () => {
    const argv = ['check', '--lines'];
    const rulesOf = async (...more: string[]): Promise<string> =>
      (await run([...argv, ...more], { stdin: exams[1] ?? '' })).out;
    expect(await rulesOf()).not.toContain('reversed-dates');
    expect(await rulesOf('--now', '2001-01-01T00:00:00Z')).toContain('reversed-dates');
    const wrong = await run([...argv, '--now', '2001'], { stdin: '' });
    expect(wrong.code).toBe(2);
  });

  it('keep back a resource that does not conform, with its text', async () => {
    const bad = '{"resourceType":"Patient","gender":"x"}';
    const xml = '<Patient xmlns="http://hl7.org/fhir"><active value="true"/></Patient>';
    const stdin = lines([JSON.stringify({ id: 1, raw: bad }), JSON.stringify({ id: 2, raw: xml })]);
    const { code, out } = await run(['validate', '--lines'], { stdin });
    expect(code).toBe(4);
    expect(json(out)).toMatchObject([
      { id: 1, quarantine: { raw: bad, reason: 'unknown-code' } },
      { id: 2, result: { valid: true } },
    ]);
  });

  it('say that a header has to be a list', async () => {
    const stdin = lines([JSON.stringify({ id: 1, raw: rows[0], header })]);
    const { code, out } = await work(convert as Worker, stdin);
    expect(code).toBe(4);
    expect(json(out)[0].quarantine).toMatchObject({
      reason: 'malformed-record',
      issues: [{ path: ['header'], message: 'the header is not a list of texts' }],
    });
  });

  it('keep back a record that a fault of ours ends, without its text in the issue', async () => {
    const out: string[] = [];
    const io = {
      stdin: (async function* () {
        yield Buffer.from('{"id":1,"raw":"one"}\n{"id":2,"raw":"two"}\n');
      })(),
      out: async (text: string) => void out.push(text),
    };
    const call = { io } as unknown as Parameters<typeof answerLines>[0]; // all that is used of it
    const code = await answerLines(call, (text) => {
      if (text === 'one') throw new TypeError('cannot read one');
      return { issues: [], result: text };
    });
    expect(code).toBe(4);
    expect(json(out.join(''))).toMatchObject([
      { id: 1, quarantine: { raw: 'one', issues: [{ code: 'internal-fault' }] } },
      { id: 2, result: 'two' },
    ]);
    expect(out[0]).not.toContain('cannot read');
  });
});

describe('sums of an audit', () => {
  it('added up are the audit of all, by line and by part', async () => {
    await inFolder(async (cwd) => {
      const all = small.map((exam) => toJson(exam));
      writeFileSync(join(cwd, 'all.ndjson'), lines(all));
      const whole = await run(['audit', 'all.ndjson', '--to', 'csv'], { cwd });
      const byLine = await run(['audit', '--lines'], { stdin: lines(all) });
      const merged = await run(['audit', '--merge', '--to', 'csv'], { stdin: byLine.out });
      expect(merged).toEqual({ ...whole, err: '' });
      for (const [at, one] of all.entries()) {
        writeFileSync(join(cwd, `${at}.ndjson`), `${one}\n`);
        const { out } = await run(['audit', `${at}.ndjson`, '--to', 'sums'], { cwd });
        writeFileSync(join(cwd, `${at}.sums`), out);
      }
      const parts = ['0.sums', '1.sums'];
      expect((await run(['audit', '--merge', ...parts, '--to', 'csv'], { cwd })).out).toBe(
        whole.out,
      );
    });
  });

  it('say what is missing: exit code 4 where a record was kept back, 1 where sums are none', async () => {
    const { out } = await run(['audit', '--lines'], { stdin: lines([exams[0] ?? '', 'no JSON']) });
    const merged = await run(['audit', '--merge', '--to', 'csv'], { stdin: out });
    expect(merged.code).toBe(4);
    expect(merged.out).toContain('exams,,,1');
    const wrong = await run(['audit', '--merge'], { stdin: '{"exams":1}\n' });
    expect(wrong.code).toBe(1);
    expect(wrong.err).toContain('wrong-type');
  });

  it('compare two examiners within one line', async () => {
    const exam = {
      ...small[1],
      subject: { identifiers: [{ system: 'https://quay.example/p', value: '7' }] },
    };
    const other = {
      ...exam,
      id: 'other',
      examiners: [{ ...exam.examiners?.[0], key: 'physician' }],
    };
    const { out } = await run(['audit', '--lines'], { stdin: lines([toJson([exam, other])]) });
    expect(json(out)[0]).toMatchObject({ result: { exams: 2 } });
  });
});
