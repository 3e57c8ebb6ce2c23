import { basename } from 'node:path';
import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { Source } from '../mapping/source.ts';
import { textPieces } from './input/byte-text.ts';
import { decodeBytes } from './input/decode-unit.ts';
import { findInputs, unreadableInput } from './input/inputs.ts';

/** Characters of an export that are looked at. */
const SAMPLE = 4 * 1024 * 1024;

export interface FileSample {
  /** Decoded, without a line that was cut in two; empty where the file cannot be read. */
  readonly text: string;
  readonly issues: readonly Issue[];
}

/** How a mapping reads its text. Whatever a preset says of it, the encoding is the user's to state. */
export function sourceOf({ source }: WrittenMapping): Source | undefined {
  return source as Source | undefined; // of a mapping with a preset a part of it
}

/** The beginning of a file, or of the first in an archive. */
export async function sampleOfFile(path: string, source: Source | undefined): Promise<FileSample> {
  const { inputs, issues } = await findInputs([path]);
  const [first] = inputs;
  const found: Issue[] = [...issues];
  let text = '';
  try {
    const encoding = source !== undefined && 'encoding' in source ? source.encoding : undefined;
    const {
      pieces,
      decoded,
      issues: faults,
    } = await textPieces(first?.open(() => {}) ?? nothing(), encoding);
    append(found, faults);
    for await (const piece of pieces) {
      text += piece;
      if (text.length >= SAMPLE) break;
    }
    // The last line may be cut in two.
    if (text.length >= SAMPLE) text = text.slice(0, text.lastIndexOf('\n') + 1);
    if (!decoded) text = decodeBytes(text, encoding).text;
  } catch (error) {
    found.push(unreadableInput(basename(path), error));
  }
  return { text, issues: found };
}

async function* nothing(): AsyncGenerator<Buffer> {}
