import { type ArchiveEntry, zipOf } from '../bulk/archive.ts';

export interface SheetParts {
  readonly name: string;
  readonly hidden?: boolean;
  /** Markup of rows, and what stands before and behind them. */
  readonly rows: string;
  readonly before?: string;
  readonly after?: string;
}

export interface WorkbookParts {
  readonly sheets: readonly SheetParts[];
  readonly is1904?: boolean;
  /** Format codes of the styles from 1 on; style 0 is a plain number. */
  readonly formats?: readonly string[];
  /** Markup of the items of the shared strings. */
  readonly strings?: readonly string[];
  /** Entries that stand instead of those that are made, or besides. */
  readonly entries?: Readonly<Record<string, string>>;
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATION = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

/** A small workbook (ECMA-376 parts 1 and 2), with what a reader needs and no more. */
export function workbookOf(parts: WorkbookParts): Buffer {
  const { sheets, formats = [], strings = [], is1904 = false } = parts;
  const files = new Map<string, string>();
  files.set('_rels/.rels', relations([['r1', 'officeDocument', 'xl/workbook.xml']]));
  files.set(
    'xl/workbook.xml',
    `<workbook xmlns="${MAIN}" xmlns:r="${RELATION}"><workbookPr date1904="${is1904 ? 1 : 0}"/><sheets>${sheets
      .map(
        ({ name, hidden }, at) =>
          `<sheet name="${name}" sheetId="${at + 1}"${hidden ? ' state="hidden"' : ''} r:id="s${at + 1}"/>`,
      )
      .join('')}</sheets></workbook>`,
  );
  files.set(
    'xl/_rels/workbook.xml.rels',
    relations([
      ...sheets.map(
        (_, at) => [`s${at + 1}`, 'worksheet', `worksheets/sheet${at + 1}.xml`] as const,
      ),
      ['strings', 'sharedStrings', '/xl/sharedStrings.xml'],
      ['styles', 'styles', 'styles.xml'],
    ]),
  );
  files.set(
    'xl/sharedStrings.xml',
    `<sst xmlns="${MAIN}">${strings.map((one) => `<si>${one}</si>`).join('')}</sst>`,
  );
  const codes = formats.map((code, at) => `<numFmt numFmtId="${200 + at}" formatCode="${code}"/>`);
  const styles = formats.map((_, at) => `<xf numFmtId="${200 + at}"/>`);
  files.set(
    'xl/styles.xml',
    `<styleSheet xmlns="${MAIN}"><numFmts>${codes.join('')}</numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/>${styles.join('')}</cellXfs></styleSheet>`,
  );
  sheets.forEach(({ rows, before = '', after = '' }, at) => {
    files.set(
      `xl/worksheets/sheet${at + 1}.xml`,
      `<?xml version="1.0"?><worksheet xmlns="${MAIN}">${before}<sheetData>${rows}</sheetData>${after}</worksheet>`,
    );
  });
  for (const [name, content] of Object.entries(parts.entries ?? {})) files.set(name, content);
  return zipOf(
    [...files].map(([name, text]): ArchiveEntry => ({ name, content: Buffer.from(text) })),
  );
}

function relations(list: readonly (readonly [id: string, type: string, target: string])[]): string {
  const all = list.map(
    ([id, type, target]) =>
      `<Relationship Id="${id}" Type="${RELATION}/${type}" Target="${target}"/>`,
  );
  return `<Relationships xmlns="${PACKAGE}">${all.join('')}</Relationships>`;
}

/** Rows of texts, each an inline string; numbers stay numbers, and markup of a cell begins with `<`. */
export function rowsOf(table: readonly (readonly (string | number)[])[]): string {
  return table
    .map((cells) => {
      const written = cells.map((cell) =>
        typeof cell === 'number'
          ? `<c><v>${cell}</v></c>`
          : cell.startsWith('<')
            ? cell
            : `<c t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`,
      );
      return `<row>${written.join('')}</row>`;
    })
    .join('');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}

/** A workbook with one sheet of this table. */
export function tableWorkbook(
  table: readonly (readonly (string | number)[])[],
  more: Omit<WorkbookParts, 'sheets'> = {},
): Buffer {
  return workbookOf({ sheets: [{ name: 'Exams', rows: rowsOf(table) }], ...more });
}
