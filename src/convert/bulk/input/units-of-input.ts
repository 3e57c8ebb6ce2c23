import type { Issue } from '../../../issues/issue.ts';
import type { Conversion } from '../../conversion.ts';
import type { RawUnit } from '../../record/record.ts';
import { textPieces } from './byte-text.ts';
import { decodeBytes, decodeUnit } from './decode-unit.ts';
import { entryUnit } from './entry-unit.ts';
import { type Input, type JoinedInput, unreadableInput } from './inputs.ts';
import { lineSplitter } from './line-splitter.ts';
import { encodingOf, sourcePieces } from './source-pieces.ts';

/** A unit, or what is wrong with the input as a whole. */
export type UnitOrIssue = { readonly unit: RawUnit } | { readonly problem: Issue };

/**
 * The units of an input, decoded, one after the other. A fault of the input ends it with an issue;
 * what came before it stands.
 */
export function unitsOfInput(
  input: Input | JoinedInput,
  conversion: Pick<Conversion, 'source' | 'splitter'>,
  read: (bytes: number) => void,
): AsyncGenerator<UnitOrIssue> {
  return 'parts' in input
    ? unitsOfJoined(input, conversion, read)
    : unitsOfOne(input, conversion, read);
}

async function* unitsOfOne(
  input: Input,
  { source, splitter: splitterOf }: Pick<Conversion, 'source' | 'splitter'>,
  read: (bytes: number) => void,
): AsyncGenerator<UnitOrIssue> {
  const encoding = encodingOf(source);
  const problemOf = (found: Issue): UnitOrIssue => ({
    problem: { ...found, path: [input.name, ...found.path] },
  });
  try {
    const { pieces, decoded, issues, closing } = await sourcePieces(input.open(read), source);
    for (const found of issues) yield problemOf(found);
    const splitter = decoded
      ? splitterOf()
      : splitterOf((bytes, declared) => {
          const stated = encoding === 'auto' ? undefined : encoding;
          return decodeBytes(bytes, stated ?? declared ?? encoding).text;
        });
    const finished = (unit: RawUnit): UnitOrIssue => ({
      unit: decoded ? unit : decodeUnit(unit, encoding),
    });
    for await (const piece of pieces) {
      for (const unit of splitter.push(piece)) yield finished(unit);
    }
    for (const unit of splitter.end()) yield finished(unit);
    for (const found of closing?.() ?? []) yield problemOf(found);
  } catch (error) {
    yield { problem: unreadableInput(input.name, error) };
  }
}

/**
 * The units of several inputs as of one text; lines are counted through all of them. One that cannot be
 * read is told, and the others are read.
 */
async function* unitsOfJoined(
  { parts }: JoinedInput,
  { source, splitter: splitterOf }: Pick<Conversion, 'source' | 'splitter'>,
  read: (bytes: number) => void,
): AsyncGenerator<UnitOrIssue> {
  const encoding = encodingOf(source);
  const splitter = splitterOf();
  for (const part of parts) {
    for await (const found of byteTextOf(part, source, read)) {
      if (typeof found !== 'string') yield found;
      else for (const unit of splitter.push(found)) yield { unit: decodeUnit(unit, encoding) };
    }
  }
  for (const unit of splitter.end()) yield { unit: decodeUnit(unit, encoding) };
}

/** The text of an input, a character for each byte, with an end to its last line; or what is wrong with it. */
async function* byteTextOf(
  { name, open }: Input,
  source: Conversion['source'],
  read: (bytes: number) => void,
): AsyncGenerator<string | { readonly problem: Issue }> {
  let last = '\n';
  try {
    const { pieces, decoded, issues } = await sourcePieces(open(read), source);
    for (const found of issues) yield { problem: { ...found, path: [name, ...found.path] } };
    for await (const piece of pieces) {
      // What was decoded at once becomes bytes again, so that all inputs are alike.
      yield decoded ? Buffer.from(piece, 'utf8').toString('latin1') : piece;
      last = piece.slice(-1);
    }
  } catch (error) {
    yield { problem: unreadableInput(name, error) };
  }
  if (last !== '\n') yield '\n';
}

/** The units of a mended quarantine file: one JSON object a line, of which `raw` was mended. */
export async function* unitsOfQuarantine(
  input: Input,
  read: (bytes: number) => void,
): AsyncGenerator<UnitOrIssue> {
  try {
    const lines = lineSplitter();
    const { pieces } = await textPieces(input.open(read), 'utf-8');
    for await (const piece of pieces) {
      for (const line of lines.push(piece)) yield { unit: entryUnit(line) };
    }
    for (const line of lines.end()) yield { unit: entryUnit(line) };
  } catch (error) {
    yield { problem: unreadableInput(input.name, error) };
  }
}
