import { fromJson } from '../../../fhir/json/from-json.ts';
import { hasErrors, type Issue } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import type { Encoding } from '../../mapping/source.ts';
import type { RawUnit, Reader } from '../../record/record.ts';
import { textPieces } from './byte-text.ts';
import { decodeBytes, decodeUnit } from './decode-unit.ts';
import { type Input, unreadableInput } from './inputs.ts';
import { type Line, lineSplitter } from './line-splitter.ts';

/** A unit, or what is wrong with the input as a whole. */
export type UnitOrIssue = { readonly unit: RawUnit } | { readonly problem: Issue };

/**
 * The units of an input, decoded, one after the other. A fault of the input ends it with an issue;
 * what came before it stands.
 */
export async function* unitsOfInput(
  input: Input,
  reader: Reader,
  encoding: Encoding | undefined,
  read: (bytes: number) => void,
): AsyncGenerator<UnitOrIssue> {
  try {
    const { pieces, decoded, issues } = await textPieces(input.open(read), encoding);
    for (const problem of issues)
      yield { problem: { ...problem, path: [input.name, ...problem.path] } };
    const splitter = decoded
      ? reader.splitter()
      : reader.splitter((bytes, declared) => {
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
  } catch (error) {
    yield { problem: unreadableInput(input.name, error) };
  }
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

/** The unit that a line holds; `raw` is all that must be there. A line that is none is quarantined. */
export function entryUnit({ text: bytes, number, cut }: Line): RawUnit {
  const { text } = decodeBytes(bytes, 'utf-8');
  const at = { line: number };
  if (cut) {
    const found = issue('too-large', [], { reason: 'line' }, { source: at });
    return { raw: text, at, issues: [found] };
  }
  const { value, issues } = fromJson(text, { budget: { depth: 20 } });
  const unit = hasErrors(issues) ? undefined : asUnit(value, number);
  if (unit !== undefined) return unit;
  const found = issue(
    'malformed-record',
    [],
    { reason: 'quarantine' },
    {
      source: at,
    },
  );
  return { raw: text, at, issues: [found] };
}

function asUnit(value: unknown, number: number): RawUnit | undefined {
  if (typeof value !== 'object' || value === null || !('raw' in value)) return undefined;
  const { raw } = value;
  if (typeof raw !== 'string') return undefined;
  const header = 'header' in value && isTexts(value.header) ? value.header : undefined;
  const lines = 'lines' in value && isNumbers(value.lines) ? value.lines : undefined;
  const at = 'at' in value ? lineOf(value.at) : undefined;
  return {
    raw,
    at: { line: at ?? number },
    ...(header !== undefined && { header }),
    ...(lines !== undefined && { lines }),
  };
}

function lineOf(at: unknown): number | undefined {
  if (typeof at !== 'object' || at === null || !('line' in at)) return undefined;
  return typeof at.line === 'number' && Number.isInteger(at.line) && at.line > 0
    ? at.line
    : undefined;
}

function isTexts(value: unknown): value is string[] {
  return Array.isArray(value) && value.every((item) => typeof item === 'string');
}

function isNumbers(value: unknown): value is number[] {
  return Array.isArray(value) && value.every((item) => Number.isInteger(item));
}
