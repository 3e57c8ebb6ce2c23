import { append } from '../../../data/append.ts';
import type { Issue } from '../../../issues/issue.ts';
import type { AnyMapping } from '../../mapping/mapping.ts';
import type { AnySource } from '../../mapping/source.ts';
import { type TextPieces, textPieces } from '../input/byte-text.ts';
import { decodeBytes } from '../input/decode-unit.ts';
import { findInputs, type Input, unreadableInput } from '../input/inputs.ts';
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

/**
 * The beginning of a file, or of the first in a folder or archive; of lines of resources, which only
 * together are exams, that of all files as one.
 */
export async function sampleOfFile(
  path: string,
  source: AnySource | undefined,
): Promise<FileSample> {
  const { inputs, issues } = await findInputs([path]);
  const found: Issue[] = [...issues];
  const isOne = source?.syntax !== 'fhir' || source.form !== 'resources';
  let text = '';
  for (const input of isOne ? inputs.slice(0, 1) : inputs) {
    const begun = text === '' || text.endsWith('\n') ? text : `${text}\n`;
    if (begun.length >= SAMPLE) break;
    const part = await beginningOf(input, source, SAMPLE - begun.length);
    text = begun + part.text;
    append(found, part.issues);
  }
  return { text, issues: found };
}

async function beginningOf(
  { name, open }: Input,
  source: AnySource | undefined,
  most: number,
): Promise<FileSample> {
  const found: Issue[] = [];
  let text = '';
  try {
    const encoding = source && encodingOf(source);
    const { pieces, decoded, issues, closing } = await piecesOf(() => open(() => {}), source);
    append(found, issues);
    for await (const piece of pieces) {
      text += piece;
      if (text.length >= most) break;
    }
    // The last line may be cut in two.
    if (text.length >= most) text = text.slice(0, text.lastIndexOf('\n') + 1);
    if (!decoded) text = decodeBytes(text, encoding).text;
    append(found, closing?.() ?? []);
  } catch (error) {
    found.push(unreadableInput(name, error));
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
