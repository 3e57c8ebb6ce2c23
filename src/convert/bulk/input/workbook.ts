import { TextDecoder } from 'node:util';
import { MarkupFault } from '../../xlsx/markup.ts';
import { SheetReader } from '../../xlsx/sheet-reader.ts';
import {
  type CellContext,
  type ListedSheet,
  numberFormsIn,
  type PartText,
  type Relation,
  relationsIn,
  sharedStringsIn,
  workbookIn,
} from '../../xlsx/workbook-parts.ts';
import { memorySource } from './byte-source.ts';
import { WorkbookFault } from './workbook-fault.ts';
import { entryBytes, entryFault } from './zip.ts';
import { type DirectoryEntry, readDirectory, ZipFault } from './zip-directory.ts';

/** A sheet with its place among the sheets of its workbook, from 1. */
export interface WorkbookSheet extends ListedSheet {
  readonly place: number;
  readonly part: string;
}

/** The parts of an open workbook. */
export interface Workbook {
  readonly sheets: readonly WorkbookSheet[];
  readonly text: (sheet: WorkbookSheet) => PartText;
  /** Whether any cell of the sheet holds anything. */
  readonly isFilled: (sheet: WorkbookSheet) => Promise<boolean>;
  /** Shared strings, styles and date system, read once. */
  readonly context: () => Promise<CellContext>;
}

/**
 * Opens a workbook by its relationships, wherever its parts lie.
 * @see ECMA-376 part 2, 6.5.3, and part 1, 12.3
 */
export async function openWorkbook(bytes: Buffer): Promise<Workbook> {
  const parts = await partsOf(bytes);
  const main = (await relationsOf('', parts)).find(({ type }) => type === 'officeDocument');
  if (main === undefined) throw new WorkbookFault('not-workbook');
  const path = resolved('', main.target);
  if (path.toLowerCase().endsWith('.bin')) throw new WorkbookFault('binary-workbook');
  const { sheets, is1904 } = await workbookIn(partText(path, parts));
  if (sheets.length === 0) throw new WorkbookFault('not-workbook');
  const relations = await relationsOf(path, parts);
  const partOf = (found: Relation | undefined): string | undefined =>
    found && resolved(path, found.target);
  const listed = sheets.flatMap((sheet, at): WorkbookSheet[] => {
    const relation = relations.find(({ id }) => id === sheet.relation);
    const part = partOf(relation);
    // A sheet of charts has no cells.
    return part === undefined || relation?.type !== 'worksheet'
      ? []
      : [{ ...sheet, place: at + 1, part }];
  });
  const named = (type: string): string | undefined =>
    partOf(relations.find((one) => one.type === type));
  let context: Promise<CellContext> | undefined;
  return {
    sheets: listed,
    text: ({ part }) => partText(part, parts),
    isFilled: (sheet) => isFilled(partText(sheet.part, parts)),
    context: () => {
      context ??= contextOf(named('sharedStrings'), named('styles'), is1904, parts);
      return context;
    },
  };
}

async function contextOf(
  strings: string | undefined,
  styles: string | undefined,
  is1904: boolean,
  parts: Parts,
): Promise<CellContext> {
  return {
    strings: strings === undefined ? [] : await sharedStringsIn(partText(strings, parts)),
    forms: styles === undefined ? [] : await numberFormsIn(partText(styles, parts)),
    is1904,
  };
}

async function isFilled(part: PartText): Promise<boolean> {
  // Of a shared string its number is enough to see that there is one.
  const reader = new SheetReader('', { strings: [], forms: [], is1904: false });
  try {
    for await (const piece of part) {
      reader.push(piece);
      if (reader.findings().rows > 0) return true;
    }
    return false;
  } catch (error) {
    // A sheet that is damaged is not empty: what is wrong with it is told when it is read.
    if (error instanceof MarkupFault) return true;
    throw error;
  }
}

interface Parts {
  readonly bytes: Buffer;
  readonly entries: ReadonlyMap<string, DirectoryEntry>;
}

async function partsOf(bytes: Buffer): Promise<Parts> {
  const directory = await readDirectory(memorySource(bytes));
  for (const entry of directory) {
    const fault = entryFault(entry);
    if (fault !== undefined) throw new ZipFault(fault);
  }
  // Names of parts are the same whatever their case (ECMA-376 part 2, 6.2.2.3).
  return { bytes, entries: new Map(directory.map((one) => [one.name.toLowerCase(), one])) };
}

async function relationsOf(path: string, parts: Parts): Promise<readonly Relation[]> {
  const cut = path.lastIndexOf('/') + 1;
  const name = `${path.slice(0, cut)}_rels/${path.slice(cut)}.rels`;
  return parts.entries.has(name.toLowerCase()) ? relationsIn(partText(name, parts)) : [];
}

/** A target as the name of a part: from the root, or from the folder of the part that names it. */
function resolved(from: string, target: string): string {
  if (target.startsWith('/')) return target.slice(1);
  const steps = from.split('/').slice(0, -1);
  for (const step of target.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.') steps.push(step);
  }
  return steps.join('/');
}

async function* partText(name: string, { bytes, entries }: Parts): AsyncGenerator<string> {
  const entry = entries.get(name.toLowerCase());
  if (entry === undefined) throw new MarkupFault('a part is not there');
  let decoder: TextDecoder | undefined;
  for await (const piece of entryBytes(
    async () => memorySource(bytes),
    entry,
    () => {},
  )) {
    decoder ??= new TextDecoder(encodingOf(piece), { fatal: true });
    yield decoded(decoder, piece);
  }
  if (decoder !== undefined) yield decoded(decoder);
}

/** Parts are UTF-8 or UTF-16 with its mark (ECMA-376 part 2, 6.2.5). */
function encodingOf(head: Buffer): 'utf-8' | 'utf-16le' | 'utf-16be' {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  return head[0] === 0xfe && head[1] === 0xff ? 'utf-16be' : 'utf-8';
}

function decoded(decoder: TextDecoder, piece?: Buffer): string {
  try {
    return piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true });
  } catch {
    throw new MarkupFault('bytes are not in the character set');
  }
}
