import type { SentenceTable } from '../facts.ts';

/** Sentences about the files that older exports come in. By code and reason. */
export const convertedFiles = {
  'undeclared-encoding': {
    'zero-bytes': [
      'the input holds zero bytes: is it UTF-16 without its mark?',
      'the character set stated in the mapping',
    ],
    'read-as': [
      'the bytes are not in the declared or assumed character set; read as {encoding}',
      'UTF-8, or the character set stated in the mapping',
    ],
    'cannot-decode': [
      'the declared character set cannot be decoded',
      'a character set that this program knows, stated in the mapping',
    ],
  },
  'lost-character': {
    replaced: 'the text has a character that was lost before it came here',
  },
  'unreadable-input': {
    'encrypted-workbook': [
      'the workbook is protected by a password',
      'a workbook that opens without a password',
    ],
    'binary-workbook': [
      'the workbook is in an older or binary format (.xls, .xlsb)',
      'a workbook saved as .xlsx',
    ],
    'not-workbook': ['the file is not a workbook', 'a workbook saved as .xlsx'],
    'damaged-workbook': [
      'a part of the workbook is damaged, or holds what no workbook can hold',
      'a workbook that was saved again',
    ],
    'empty-workbook':
      'no cell of the workbook, or of the sheet that the mapping names, holds anything',
    'no-sheet': [
      'the workbook has no sheet with this name or at this place',
      'the name of a sheet, or its place from 1',
    ],
    'several-sheets': [
      '{count} sheets of the workbook hold cells, and the mapping does not say which is meant',
      'sheet in the source of the mapping: the name of a sheet, or its place from 1',
    ],
    input: [
      'the input cannot be read ({error})',
      'a text file, a gzip file, a zip archive, or a folder of these',
    ],
    'not-zip': [
      'the file is not a zip archive',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'zip64-end': [
      'the zip64 end is missing',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'directory-bounds': [
      'the directory is out of bounds',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'directory-damaged': [
      'the directory is damaged',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'zip64-size': [
      'a zip64 size is missing',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'archive-short': [
      'the archive is shorter than it says',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'size-bounds': [
      'a size is out of bounds',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    archive: [
      'the archive cannot be read',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    encrypted: [
      'the entry is encrypted',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    method: [
      'the entry is packed with a method other than store or deflate',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'leads-out': [
      'the name of the entry leads out of the archive',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'entry-long': [
      'the entry is longer than the archive says',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'entry-short': [
      'the entry is shorter than the archive says',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    checksum: [
      'the checksum of the entry is not that of the archive',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'no-header': [
      'the entry has no local header',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
    'ends-within': [
      'the archive ends within an entry',
      'entries that are stored or deflated, not encrypted, with plain relative names',
    ],
  },
  'workbook-feature': {
    'sheet-read': 'this sheet, number {count} of the workbook, is read',
    'hidden-sheet': 'this sheet, number {count} of the workbook, is read, although it is hidden',
    'further-sheet': 'this sheet, number {count} of the workbook, holds cells and is not read',
    formulas:
      'cells that hold formulas: {count}; the values that the file holds for them are taken, and none is evaluated',
    'merged-cells': [
      'merged areas: {count}; the first cell of each holds its value, and the others are blank',
      'a value in each cell, or fillDown in the source of the mapping',
    ],
    'hidden-rows': 'hidden rows that hold cells: {count}; they are read like the others',
    'hidden-columns': 'hidden columns that hold cells: {count}; they are read like the others',
  },
  'damaged-value': {
    'error-cell': [
      'the cell holds an error, such as #N/A, in place of a value; it is kept as text',
      'the value as it was entered',
    ],
    'no-result': [
      'the cell holds a formula without its value, and none is evaluated; the formula is kept as text',
      'a workbook that was calculated before it was saved',
    ],
    'lost-digits': [
      'the number has more digits than a spreadsheet keeps; it is kept as text',
      'the number as text',
    ],
    'no-date': [
      'a workbook cannot hold this day or time, or a part of it was made up; it is kept as text',
      'the day or time in full',
    ],
    'exam-id': 'the id of the exam looks as if a spreadsheet had changed it',
    'patient-number': [
      'the number does not have the form that the mapping states; a spreadsheet may have changed it',
      '{code?}',
    ],
    value: [
      'this looks like a value that a spreadsheet has changed',
      'the value as it was entered',
    ],
  },
} as const satisfies SentenceTable;
