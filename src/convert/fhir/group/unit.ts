import type { RawUnit } from '../../record/record.ts';
import type { Group } from './groups.ts';
import type { Piece } from './piece.ts';

/** Properties of a bundle before its entries, as text that ends with a comma. */
export const plainHead = '"resourceType":"Bundle","type":"collection",';

/** A group as the text of a Bundle, an entry a line, with the line of the input for each of its lines. */
export function unitOf(group: Group, head: string): RawUnit {
  const [first] = group;
  const line = first?.line ?? 1;
  const lines = [line, ...group.flatMap(linesOf), line];
  const entries = group.map(({ text }) => text).join(',\n');
  return { raw: `{${head}"entry":[\n${entries}\n]}`, at: { line }, lines };
}

function linesOf({ text, line }: Piece): number[] {
  const lines = [line];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) {
    lines.push(line + lines.length);
  }
  return lines;
}
