import type { AnySource, Encoding } from '../../mapping/source.ts';
import { type TextPieces, textPieces } from './byte-text.ts';
import { workbookPieces } from './workbook-text.ts';

/** Bytes of an input as text for the splitter of its syntax. */
export function sourcePieces(bytes: AsyncIterable<Buffer>, source: AnySource): Promise<TextPieces> {
  return source.syntax === 'xlsx'
    ? workbookPieces(bytes, source)
    : textPieces(bytes, encodingOf(source));
}

/** The character set that a source states. */
export function encodingOf(source: AnySource): Encoding | undefined {
  return 'encoding' in source ? source.encoding : undefined;
}
