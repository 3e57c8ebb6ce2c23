import { cdaReaderOf } from './cda/reader.ts';
import { csvReader } from './csv/reader.ts';
import { fixedReader } from './fixed/reader.ts';
import { hl7v2ReaderOf } from './hl7v2/reader.ts';
import { jsonReader } from './json/reader.ts';
import type { Source } from './mapping/source.ts';
import type { Reader } from './record/record.ts';
import { xlsxReader } from './xlsx/reader.ts';
import { xmlReader } from './xml/reader.ts';

/** The reader of a source's syntax. */
export function readerFor(source: Source): Reader {
  switch (source.syntax) {
    case 'csv':
      return csvReader(source);
    case 'xlsx':
      return xlsxReader(source);
    case 'fixed':
      return fixedReader(source);
    case 'hl7v2':
      return hl7v2ReaderOf(source);
    case 'xml':
      return xmlReader(source);
    case 'json':
      return jsonReader(source);
    case 'cda':
      return cdaReaderOf(source);
  }
}
