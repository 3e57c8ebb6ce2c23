/// <reference types="node" />
import { parseArgs } from 'node:util';
import { nearest } from '../issues/nearest.ts';
import { UsageError } from './failure.ts';

/** One option as the command line and its help know it. */
export interface Option {
  readonly type: 'text' | 'flag';
  /** Words that it can have; none named means any text. */
  readonly values?: readonly string[];
  /** Name of its value in help: PATH. */
  readonly value?: string;
  readonly fallback?: string;
  /** It may be given more than once. */
  readonly repeated?: true;
  readonly help: string;
}

export type OptionTable = Readonly<Record<string, Option>>;

/** Options as given, by name; every list has at least one entry. */
export type OptionValues = ReadonlyMap<string, readonly string[]>;

export interface ParsedArguments {
  readonly files: readonly string[];
  readonly options: OptionValues;
}

/** Arguments after the name of the command. Throws UsageError for what the table does not allow. */
export function parseOptions(args: readonly string[], table: OptionTable): ParsedArguments {
  const known = new Map(Object.entries(table));
  const { tokens } = parseArgs({
    args: [...args],
    // With `strict` the messages of Node would stand in place of ours.
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(
      [...known].map(([name, { type }]) => [
        name,
        { type: type === 'flag' ? ('boolean' as const) : ('string' as const) },
      ]),
    ),
  });
  const files: string[] = [];
  const options = new Map<string, string[]>();
  for (const token of tokens) {
    if (token.kind === 'positional') files.push(token.value);
    if (token.kind !== 'option') continue;
    const option = known.get(token.name);
    if (option === undefined) throw unknownOption(token.rawName, token.name, known.keys());
    const value = checkedValue(token.rawName, option, token.value);
    const before = options.get(token.name);
    if (before !== undefined && option.repeated !== true) {
      throw new UsageError(`the option ${token.rawName} is given twice`);
    }
    options.set(token.name, [...(before ?? []), value]);
  }
  return { files, options };
}

function unknownOption(raw: string, name: string, known: Iterable<string>): UsageError {
  const near = nearest(name, known);
  const hint = near === undefined ? '' : `; perhaps --${near}`;
  return new UsageError(`unknown option ${raw}${hint}`);
}

function checkedValue(raw: string, option: Option, value: string | undefined): string {
  if (option.type === 'flag') {
    if (value !== undefined) throw new UsageError(`the option ${raw} takes no value`);
    return 'true';
  }
  const words = option.values;
  if (value === undefined || value === '') {
    throw new UsageError(
      `the option ${raw} needs a value: ${words?.join(', ') ?? option.value ?? 'a text'}`,
    );
  }
  if (words === undefined) return value;
  const word = words.find((each) => each.toLowerCase() === value.toLowerCase());
  if (word === undefined) {
    throw new UsageError(`the option ${raw} cannot be "${value}": it takes ${words.join(', ')}`);
  }
  return word;
}

/** The value of an option, or what stands for it when it is not given. */
export function textOption(options: OptionValues, name: string): string | undefined {
  return options.get(name)?.at(-1);
}

export function flagOption(options: OptionValues, name: string): boolean {
  return options.has(name);
}

/** A whole number from `least` up; undefined when it is not given. */
export function countOption(
  options: OptionValues,
  name: string,
  least: number,
): number | undefined {
  const text = textOption(options, name);
  if (text === undefined) return undefined;
  const count = Number(text);
  if (!/^\d{1,15}$/.test(text) || count < least) {
    throw new UsageError(`the option --${name} takes a whole number from ${least}`);
  }
  return count;
}
