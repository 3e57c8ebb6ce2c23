import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { run } from './in-process.ts';

const commands = [
  'demo',
  'export',
  'validate',
  'read',
  'check',
  'compare',
  'report',
  'convert',
  'form',
  'find',
  'sample',
  'probe',
];

describe('help', () => {
  it('lists every command and the exit codes', async () => {
    const { code, out, err } = await run(['--help']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const command of commands) expect(out).toMatch(new RegExp(`^ {2}${command} `, 'm'));
    expect(out).toMatch(/^ {2}2 {2}wrong usage/m);
  });

  it.each(['help', '-h'])('%s is the same', async (word) => {
    expect((await run([word])).out).toBe((await run(['--help'])).out);
  });

  it('without a command help is shown, and the call was wrong', async () => {
    const { code, out } = await run([]);
    expect(code).toBe(2);
    expect(out).toContain('COMMAND');
  });

  it.each(commands)('%s --help names its options and gives examples', async (command) => {
    const { code, out, err } = await run([command, '--help']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.startsWith(`face-neck-fhir ${command}`)).toBe(true);
    expect(out).toMatch(/Examples\n {2}face-neck-fhir /);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  it('--version is the version of the package', async () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
    expect(await run(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });
});

describe('wrong calls give one line and the code 2', () => {
  const calls: readonly (readonly [argv: string[], line: string])[] = [
    [['exprot'], 'unknown command "exprot"; perhaps export'],
    [['x'], 'unknown command "x"; it knows'],
    [['__proto__'], 'unknown command "__proto__"; it knows'],
    [['constructor'], 'unknown command "constructor"; it knows'],
    [['export', '--fhri', 'r5'], 'unknown option --fhri; perhaps --fhir'],
    [['export', '--toString'], 'unknown option --toString'],
    [['export', '-z'], 'unknown option -z'],
    [['export', '--fhir', 'r3'], '--fhir cannot be "r3": it takes r4, r4b, r5'],
    [['export', '--fhir'], '--fhir needs a value: r4, r4b, r5'],
    [['export', '--out', ''], '--out needs a value: PATH'],
    [['export', '--fhir', 'r4', '--fhir', 'r5'], '--fhir is given twice'],
    [['export', '--include-values=yes'], '--include-values takes no value'],
    [['export', '--snomed', 'licensed'], 'needs --snomed-holder and --snomed-edition'],
    [['export', '--snomed-holder', 'Us'], 'belong to --snomed licensed'],
    [['export', 'nothing-here.json'], 'cannot read nothing-here.json: there is no such file'],
    [['export', '.'], 'cannot read .: it is a folder'],
    [['export'], 'no file is named and nothing comes from standard input'],
    [['demo', 'exam.json'], 'wrong number of files: demo'],
    [['compare', 'exam.json'], 'wrong number of files: compare EARLIER LATER'],
    [['report', 'a.json', 'b.json'], 'wrong number of files: report [FILE]'],
    [['report'], 'no file is named and nothing comes from standard input'],
    [['read', 'nothing-here.json'], 'cannot read nothing-here.json'],
    [['check', '--prior', 'nothing-here.json', '-'], 'cannot read nothing-here.json'],
    [['check', '--rule-set', 'ours'], '--rule-set cannot be "ours": it takes '],
    [['form'], 'wrong number of files: form PROTOCOL'],
    [['form', 'goitre', '--to', 'exam'], '--to exam and --read FILE need each other'],
    [['form', 'goitre', '--read', '-'], '--read needs --head FILE'],
    [['convert', 'a.csv'], 'convert needs --mapping FILE'],
    [['convert', 'a.csv', '--mapping', 'nothing-here.json'], 'cannot read nothing-here.json'],
    [['sample', '--count', 'many'], '--count takes a whole number from 0'],
    [['sample', '--count=-1'], '--count takes a whole number from 0'],
    [['sample', '--seed', '1.5'], '--seed takes a whole number from 0'],
  ];

  it.each(calls)('%j', async (argv, line) => {
    const { code, out, err } = await run(argv);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err.split('\n')).toHaveLength(2);
    expect(err.startsWith('face-neck-fhir: ')).toBe(true);
    expect(err).toContain(line);
  });
});
