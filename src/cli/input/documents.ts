/// <reference types="node" />
import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';
import { TextDecoder } from 'node:util';
import { type Issue, issue } from '../../issues/issue.ts';
import { fileFailure, UsageError } from '../failure.ts';
import type { CliIo } from '../io.ts';

/** One JSON document of an input, or why there is none. */
export interface Document {
  /** Name of the input, for people: a path as given, or `(stdin)`. */
  readonly input: string;
  /** Where the input holds one document a line: its number, from 1. */
  readonly record?: number;
  /** Line of the input on which the document begins. */
  readonly line: number;
  readonly text: string;
  /** The input cannot be read as text; `text` is empty then. */
  readonly issue?: Issue;
}

/** Characters of one document. V8 holds half a billion in one string; the values need room too. */
const MOST_CHARACTERS = 200_000_000;

/**
 * The documents of the named files, or of standard input when none is named or one is `-`. An input
 * holds one document, or one a line (NDJSON); the latter are read as they come.
 */
export async function* documents(
  io: CliIo,
  files: readonly string[],
  most: number = MOST_CHARACTERS,
): AsyncGenerator<Document, void, undefined> {
  if (files.length === 0 && io.interactive) {
    throw new UsageError('no file is named and nothing comes from standard input');
  }
  for (const file of files.length === 0 ? ['-'] : files) {
    const input = file === '-' ? '(stdin)' : file;
    const bytes = file === '-' ? io.stdin : createReadStream(resolve(io.cwd, file));
    try {
      yield* documentsIn(input, bytes, most);
    } catch (thrown) {
      if (thrown instanceof Unreadable) {
        yield { input, line: 1, text: '', issue: thrown.issue };
      } else {
        throw fileFailure('read', input, thrown);
      }
    }
  }
}

/** Why an input is no text. */
export class Unreadable extends Error {
  readonly issue: Issue;

  constructor(found: Issue) {
    super(found.message);
    this.issue = found;
  }
}

interface Line {
  readonly text: string;
  readonly line: number;
}

type Lines = AsyncGenerator<Line, void, undefined>;

async function* documentsIn(
  input: string,
  bytes: AsyncIterable<Uint8Array>,
  most: number,
): AsyncGenerator<Document, void, undefined> {
  const lines = linesOf(bytes, most);
  try {
    const first = await nextFilled(lines);
    if (first === undefined) yield { input, line: 1, text: '' };
    else if (isComplete(first.text)) yield* records(input, first, lines);
    else yield { input, line: first.line, text: await wholeText(first.text, lines, most) };
  } finally {
    await lines.return();
  }
}

/** A line is told as a record only once another follows it. */
async function* records(
  input: string,
  first: Line,
  lines: Lines,
): AsyncGenerator<Document, void, undefined> {
  let held = first;
  let record = 0;
  for (let next = await nextFilled(lines); next; next = await nextFilled(lines)) {
    record += 1;
    yield { input, record, ...held };
    held = next;
  }
  yield { input, ...(record > 0 && { record: record + 1 }), ...held };
}

async function wholeText(first: string, lines: Lines, most: number): Promise<string> {
  const texts = [first];
  let length = first.length;
  for await (const { text } of lines) {
    texts.push(text);
    length += text.length + 1;
    if (length > most) throw tooLarge(most);
  }
  return texts.join('\n');
}

/** The next line that is not blank. */
async function nextFilled(lines: Lines): Promise<Line | undefined> {
  for (;;) {
    const { value, done } = await lines.next();
    if (done === true) return undefined;
    if (value.text.trim() !== '') return value;
  }
}

/** Whether a first line is a document by itself, so that each line is one. */
export function isComplete(line: string): boolean {
  if (!/[}\]]\s*$/.test(line)) return false;
  try {
    JSON.parse(line);
    return true;
  } catch {
    return false;
  }
}

async function* linesOf(bytes: AsyncIterable<Uint8Array>, most: number): Lines {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let pieces: string[] = [];
  let length = 0;
  let line = 0;
  const take = (text: string): Line => {
    const joined = pieces.length === 0 ? text : pieces.join('') + text;
    pieces = [];
    length = 0;
    line += 1;
    return { text: joined, line };
  };
  for await (const chunk of bytes) {
    const text = decoded(decoder, chunk);
    let from = 0;
    for (let feed = text.indexOf('\n'); feed !== -1; feed = text.indexOf('\n', from)) {
      yield take(text.slice(from, feed));
      from = feed + 1;
    }
    pieces.push(text.slice(from));
    length += text.length - from;
    if (length > most) throw tooLarge(most);
  }
  const last = take(decoded(decoder));
  if (last.text !== '') yield last;
}

/** @throws Unreadable */
export function decoded(decoder: TextDecoder, chunk?: Uint8Array): string {
  try {
    return chunk === undefined ? decoder.decode() : decoder.decode(chunk, { stream: true });
  } catch {
    throw new Unreadable(issue('undeclared-encoding', [], { reason: 'not-utf-8' }));
  }
}

function tooLarge(most: number): Unreadable {
  return new Unreadable(issue('too-large', [], { reason: 'document', maximum: most }));
}
