import { basename } from 'node:path';
import { append } from '../../../data/append.ts';
import type { Issue } from '../../../issues/issue.ts';
import type { AnyMapping } from '../../mapping/mapping.ts';
import type { AnySource } from '../../mapping/source.ts';
import { type TextPieces, textPieces } from '../input/byte-text.ts';
import { decodeBytes } from '../input/decode-unit.ts';
import { findInputs, unreadableInput } from '../input/inputs.ts';
import { encodingOf, sourcePieces } from '../input/source-pieces.ts';
import { isContainer, workbookPieces } from '../input/workbook-text.ts';

/** Characters of an export that are looked at. */
const SAMPLE = 4 * 1024 * 1024;

export interface FileSample {
  /** Decoded, without a line that was cut in two; empty where the file cannot be read. */
  readonly text: string;
  readonly issues: readonly Issue[];
}

/** How a mapping reads its text. Whatever a preset says of it, the encoding is the user's to state. */
export function sourceOf({ source }: AnyMapping): AnySource | undefined {
  return source as AnySource | undefined; // of a mapping with a preset a part of it
}

/** The beginning of a file, or of the first in an archive. */
export async function sampleOfFile(
  path: string,
  source: AnySource | undefined,
): Promise<FileSample> {
  const { inputs, issues } = await findInputs([path]);
  const [first] = inputs;
  const found: Issue[] = [...issues];
  let text = '';
  try {
    const encoding = source && encodingOf(source);
    const open = (): AsyncIterable<Buffer> => first?.open(() => {}) ?? nothing();
    const { pieces, decoded, issues: faults, closing } = await piecesOf(open, source);
    append(found, faults);
    for await (const piece of pieces) {
      text += piece;
      if (text.length >= SAMPLE) break;
    }
    // The last line may be cut in two.
    if (text.length >= SAMPLE) text = text.slice(0, text.lastIndexOf('\n') + 1);
    if (!decoded) text = decodeBytes(text, encoding).text;
    append(found, closing?.() ?? []);
  } catch (error) {
    found.push(unreadableInput(basename(path), error));
  }
  return { text, issues: found };
}

/** Text by the source that is stated; of a workbook without one the first sheet that holds anything. */
async function piecesOf(
  open: () => AsyncIterable<Buffer>,
  source: AnySource | undefined,
): Promise<TextPieces> {
  if (source !== undefined && source.syntax !== 'xlsx') return sourcePieces(open(), source);
  if (source === undefined && !isContainer(await headOf(open())))
    return textPieces(open(), undefined);
  return workbookPieces(open(), { ...source, orFirst: true });
}

async function headOf(bytes: AsyncIterable<Buffer>): Promise<Buffer> {
  for await (const piece of bytes) return piece;
  return Buffer.alloc(0);
}

async function* nothing(): AsyncGenerator<Buffer> {}
