import { type CellText, cellText } from './cell-text.ts';
import { Markup } from './markup.ts';
import { builtInFormats, type NumberForm, numberForm, plainNumber } from './number-format.ts';

/** The text of a part of a workbook, in pieces. */
export type PartText = AsyncIterable<string>;

/** A sheet as the workbook lists it. */
export interface ListedSheet {
  readonly name: string;
  /** Id of the relationship that leads to its part. */
  readonly relation: string;
  readonly hidden: boolean;
}

export interface Relation {
  readonly id: string;
  /** Last step of its type: `worksheet`, `sharedStrings`. */
  readonly type: string;
  readonly target: string;
}

/** @see ECMA-376 part 2, 6.5.3 */
export async function relationsIn(part: PartText): Promise<Relation[]> {
  const relations: Relation[] = [];
  await readPart(part, (name, attribute) => {
    if (name !== 'Relationship') return;
    const type = attribute('Type') ?? '';
    relations.push({
      id: attribute('Id') ?? '',
      type: type.slice(type.lastIndexOf('/') + 1),
      target: attribute('Target') ?? '',
    });
  });
  return relations;
}

/** The sheets of a workbook in order, and its date system (ECMA-376 part 1, 18.2). */
export async function workbookIn(
  part: PartText,
): Promise<{ readonly sheets: readonly ListedSheet[]; readonly is1904: boolean }> {
  const sheets: ListedSheet[] = [];
  let is1904 = false;
  await readPart(part, (name, attribute) => {
    if (name === 'workbookPr') is1904 = isOn(attribute('date1904'));
    if (name !== 'sheet') return;
    sheets.push({
      name: attribute('name') ?? '',
      relation: attribute('id') ?? '',
      hidden: (attribute('state') ?? 'visible') !== 'visible',
    });
  });
  return { sheets, is1904 };
}

/** What the style of a cell, by its number, says of the number in it (ECMA-376 part 1, 18.8). */
export async function numberFormsIn(part: PartText): Promise<readonly NumberForm[]> {
  const codes = new Map(builtInFormats);
  const ids: number[] = [];
  let inCells = false;
  await readPart(
    part,
    (name, attribute) => {
      if (name === 'numFmt' && attribute('formatCode') !== undefined) {
        codes.set(Number(attribute('numFmtId')), attribute('formatCode') ?? '');
      }
      if (name === 'cellXfs') inCells = true;
      if (name === 'xf' && inCells) ids.push(Number(attribute('numFmtId') ?? 0));
    },
    (name) => {
      if (name === 'cellXfs') inCells = false;
    },
  );
  const forms = new Map<number, NumberForm>();
  return ids.map((id) => {
    const form = forms.get(id) ?? numberForm(codes.get(id) ?? '');
    forms.set(id, form);
    return form;
  });
}

/** Characters of all shared strings together. */
const MOST_SHARED = 64 * 1024 * 1024;

/** The shared strings hold more text than is kept in memory. */
export class TooManyStrings extends Error {
  readonly maximum = MOST_SHARED;
}

/** Texts that cells share, without the way they are pronounced (ECMA-376 part 1, 18.4). */
export async function sharedStringsIn(part: PartText): Promise<readonly string[]> {
  const strings: string[] = [];
  const rich = richText();
  let length = 0;
  await readPart(
    part,
    rich.start,
    (name) => {
      if (name === 'si') {
        const text = rich.take();
        length += text.length;
        if (length > MOST_SHARED) throw new TooManyStrings('too many strings');
        strings.push(text);
      } else rich.end(name);
    },
    rich.text,
  );
  return strings;
}

/** Gathers the text of runs, leaving out how they are pronounced. */
export function richText(): {
  readonly start: (name: string) => void;
  readonly end: (name: string) => void;
  readonly text: (text: string) => void;
  readonly take: () => string;
} {
  let gathered = '';
  let inText = false;
  let inPhonetic = false;
  return {
    start: (name) => {
      if (name === 't') inText = true;
      if (name === 'rPh') inPhonetic = true;
    },
    end: (name) => {
      if (name === 't') inText = false;
      if (name === 'rPh') inPhonetic = false;
    },
    text: (text) => {
      if (inText && !inPhonetic) gathered += text;
    },
    take: () => {
      const text = withoutEscapes(gathered);
      gathered = '';
      return text;
    },
  };
}

/** Characters that XML cannot hold stand as `_x000D_` (ECMA-376 part 1, 22.4.2.4). */
export function withoutEscapes(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

export function isOn(flag: string | undefined): boolean {
  return flag === '1' || flag === 'true' || flag === 'on';
}

type Start = (name: string, attribute: (name: string) => string | undefined) => void;

async function readPart(
  part: PartText,
  start: Start,
  end: (name: string) => void = () => {},
  text: (text: string) => void = () => {},
): Promise<void> {
  const markup = new Markup({ start, end, text });
  for await (const piece of part) markup.push(piece);
  markup.end();
}

/** What the cells of a sheet need besides the sheet. */
export interface CellContext {
  readonly strings: readonly string[];
  readonly forms: readonly NumberForm[];
  readonly is1904: boolean;
}

/** Text of a cell, by what its attributes and elements say. */
export function textOfCell(
  { strings, forms, is1904 }: CellContext,
  cell: { readonly type: string; readonly style: number; value?: string; formula?: string },
): CellText {
  const { type, style, value, formula } = cell;
  const isNumber = type === 'n' || type === 'e' || type === 'b' || type === 'd';
  const stored = isNumber && value?.trim() === '' ? undefined : value;
  if (type === 's' && stored !== undefined) {
    const text = /^\d{1,9}$/.test(stored.trim()) ? strings[Number(stored)] : undefined;
    // What the number leads to is not there: the number is not what was entered.
    if (text === undefined) return { text: `[shared string ${stored}]`, note: 'error-cell' };
    return cellText({ type, value: text, form: plainNumber, formula }, is1904);
  }
  const plain = stored === undefined || isNumber ? stored : withoutEscapes(stored);
  const form = forms[style] ?? plainNumber;
  return cellText({ type, value: plain, form, formula }, is1904);
}
