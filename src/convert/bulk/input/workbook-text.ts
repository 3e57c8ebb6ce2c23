import { append } from '../../../data/append.ts';
import type { Issue } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import type { XlsxSource } from '../../mapping/source.ts';
import { MarkupFault } from '../../xlsx/markup.ts';
import { type SheetFindings, SheetReader, TooManyRows } from '../../xlsx/sheet-reader.ts';
import { TooManyStrings } from '../../xlsx/workbook-parts.ts';
import type { TextPieces } from './byte-text.ts';
import { TooMuchGrowth } from './inflate-limit.ts';
import { openWorkbook, type Workbook, type WorkbookSheet } from './workbook.ts';
import { type PlainReason, WorkbookFault } from './workbook-fault.ts';
import { ZipFault } from './zip-directory.ts';

/** Largest workbook as it is stored, in bytes. */
const LARGEST = 256 * 1024 * 1024;

/** What of a workbook is read. */
export interface SheetChoice extends Pick<XlsxSource, 'sheet'> {
  /** Take the first sheet that holds anything where several do, and say so. For a first look alone. */
  readonly orFirst?: boolean;
}

/**
 * One sheet of a workbook as text for a splitter, and what is to be said of it. What is found in the
 * sheet itself is known at its end: `closing` has it then.
 */
export async function workbookPieces(
  bytes: AsyncIterable<Buffer>,
  choice: SheetChoice,
): Promise<TextPieces> {
  try {
    const whole = await gathered(bytes);
    if (whole === undefined) {
      return nothing([issue('too-large', [], { reason: 'workbook', maximum: LARGEST })]);
    }
    const refused = containerFault(whole);
    if (refused !== undefined) return nothing([unreadable(refused)]);
    const workbook = await openWorkbook(whole);
    const { sheet, issues } = await chosenSheet(workbook, choice);
    if (sheet === undefined) return nothing(issues);
    return sheetPieces(workbook, sheet, issues);
  } catch (error) {
    return nothing([faultIssue(error)]);
  }
}

function sheetPieces(
  workbook: Workbook,
  sheet: WorkbookSheet,
  issues: readonly Issue[],
): TextPieces {
  const closing: Issue[] = [];
  const pieces = async function* (): AsyncGenerator<string> {
    let reader: SheetReader | undefined;
    try {
      reader = new SheetReader(sheet.name, await workbook.context());
      for await (const piece of workbook.text(sheet)) {
        const text = reader.push(piece);
        if (text !== '') yield text;
      }
      yield reader.end();
    } catch (error) {
      yield reader?.taken() ?? '';
      closing.push(faultIssue(error, sheet.name));
    }
    if (reader !== undefined) append(closing, findingIssues(reader.findings(), sheet.name));
  };
  return { decoded: true, pieces: pieces(), issues, closing: () => closing };
}

interface Choice {
  readonly sheet?: WorkbookSheet;
  readonly issues: readonly Issue[];
}

/** The sheet that is read; the others are told. */
async function chosenSheet(
  workbook: Workbook,
  { sheet: stated, orFirst = false }: SheetChoice,
): Promise<Choice> {
  const filled: WorkbookSheet[] = [];
  for (const sheet of workbook.sheets) if (await workbook.isFilled(sheet)) filled.push(sheet);
  if (stated === undefined) return onlySheet(filled, orFirst);
  const named = workbook.sheets.find(({ name, place }) => name === stated || place === stated);
  if (named === undefined) {
    return { issues: [issue('unreadable-input', ['source', 'sheet'], { reason: 'no-sheet' })] };
  }
  return filled.includes(named) ? read(named, filled) : { issues: [unreadable('empty-workbook')] };
}

/** The one sheet that holds anything; of several none, or where a look is enough the first. */
function onlySheet(filled: readonly WorkbookSheet[], orFirst: boolean): Choice {
  const [first, ...more] = filled;
  if (first === undefined) return { issues: [unreadable('empty-workbook')] };
  if (more.length === 0) return read(first, filled);
  const facts = { reason: 'several-sheets', count: filled.length } as const;
  const severity = orFirst ? 'warning' : 'error';
  const several = issue('unreadable-input', ['source', 'sheet'], facts, { severity });
  if (!orFirst) {
    return { issues: [several, ...filled.map((sheet) => sheetIssue(sheet, 'further-sheet'))] };
  }
  const { sheet, issues } = read(first, filled);
  return { ...(sheet && { sheet }), issues: [several, ...issues] };
}

function read(sheet: WorkbookSheet, filled: readonly WorkbookSheet[]): Choice {
  return {
    sheet,
    issues: [
      sheetIssue(sheet, sheet.hidden ? 'hidden-sheet' : 'sheet-read'),
      ...filled.filter((one) => one !== sheet).map((one) => sheetIssue(one, 'further-sheet')),
    ],
  };
}

function sheetIssue(
  { name, place }: WorkbookSheet,
  reason: 'sheet-read' | 'hidden-sheet' | 'further-sheet',
): Issue {
  const severity = reason === 'sheet-read' ? 'information' : 'warning';
  const source = { sheet: name, line: 1 };
  return issue('workbook-feature', [], { reason, count: place }, { severity, source });
}

const features = [
  ['formulas', 'formulas', 'information'],
  ['mergedCells', 'merged-cells', 'warning'],
  ['hiddenRows', 'hidden-rows', 'warning'],
  ['hiddenColumns', 'hidden-columns', 'warning'],
] as const;

function findingIssues(findings: SheetFindings, sheet: string): Issue[] {
  return features.flatMap(([name, reason, severity]) => {
    const { count, first = '' } = findings[name];
    if (count === 0) return [];
    const line = Number(/\d+$/.exec(first)?.[0] ?? 1);
    const source = { sheet, line, cell: first };
    return [issue('workbook-feature', [], { reason, count }, { severity, source })];
  });
}

/** The whole file; undefined where it is larger than is read. */
async function gathered(bytes: AsyncIterable<Buffer>): Promise<Buffer | undefined> {
  const pieces: Buffer[] = [];
  let length = 0;
  for await (const piece of bytes) {
    length += piece.length;
    if (length > LARGEST) return undefined;
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}

/** Signature of a compound file, which holds a workbook of an older form or one with a password. */
const COMPOUND = Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);

/** Whether bytes begin as a zip archive or a compound file: a workbook, and no text. */
export function isContainer(head: Buffer): boolean {
  return isZip(head) || head.subarray(0, 8).equals(COMPOUND);
}

function isZip(head: Buffer): boolean {
  return head.subarray(0, 4).equals(Buffer.from([0x50, 0x4b, 0x03, 0x04]));
}

/**
 * What a file is that is no zip archive. Streams of a compound file have their names in UTF-16.
 * @see https://learn.microsoft.com/openspecs/windows_protocols/ms-cfb/ 2.2
 * @see https://learn.microsoft.com/openspecs/office_file_formats/ms-offcrypto/ 2.3.4.4, the stream \EncryptedPackage
 * @see https://learn.microsoft.com/openspecs/office_file_formats/ms-xls/ 2.1.2, the stream Workbook
 */
function containerFault(bytes: Buffer): PlainReason | undefined {
  if (isZip(bytes)) return undefined;
  if (!bytes.subarray(0, 8).equals(COMPOUND)) return 'not-workbook';
  if (bytes.includes(Buffer.from('EncryptedPackage', 'utf16le'))) return 'encrypted-workbook';
  const isOlder = ['Workbook', 'Book'].some((name) => bytes.includes(Buffer.from(name, 'utf16le')));
  return isOlder ? 'binary-workbook' : 'not-workbook';
}

function faultIssue(error: unknown, sheet?: string): Issue {
  const details = sheet === undefined ? {} : { source: { sheet, line: 1 } };
  if (error instanceof WorkbookFault) return unreadable(error.reason);
  if (error instanceof ZipFault) {
    return issue('unreadable-input', [], { reason: error.reason }, details);
  }
  if (error instanceof MarkupFault) return unreadable('damaged-workbook', details);
  if (error instanceof TooManyRows) {
    return issue('too-large', [], { reason: 'sheet-rows', maximum: error.maximum }, details);
  }
  if (error instanceof TooManyStrings) {
    return issue('too-large', [], { reason: 'shared-strings', maximum: error.maximum }, details);
  }
  const code = error instanceof TooMuchGrowth ? error.code : codeOf(error);
  return issue('unreadable-input', [], { reason: 'input', error: code }, details);
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
}

function unreadable(
  reason: PlainReason,
  details: { readonly source?: Issue['source'] } = {},
): Issue {
  return issue('unreadable-input', [], { reason }, details);
}

function nothing(issues: readonly Issue[]): TextPieces {
  return { decoded: true, pieces: none(), issues };
}

async function* none(): AsyncGenerator<string> {}
