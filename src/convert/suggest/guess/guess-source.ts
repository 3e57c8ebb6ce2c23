import { isFault, parseJson } from '../../json/parse.ts';
import type { Source } from '../../mapping/source.ts';
import { placeIn } from '../../xlsx/sheet-text.ts';
import { guessCsvSource, guessSheetSource } from './guess-csv.ts';

/** First segment of a message, a batch or a file of batches; \s has the start of a block too. */
const hl7v2 = /^\s*(?:MSH|BHS|FHS)[^\w\s]/;
const cda = /<(?:[\w.-]+:)?ClinicalDocument[\s>]/;
const xml = /^\s*</;
const json = /^\uFEFF?\s*(?:\{\s*["}]|\[\s*[[{\]])/;

/** The first line that is not blank is JSON by itself, and another follows. */
function isLines(text: string): boolean {
  const [first = '', second] = text.slice(0, MOST_LINE).trim().split(/\n\s*/, 2);
  return second !== undefined && first.startsWith('{') && !isFault(parseJson(first));
}

/** Characters in which the first two lines are looked for. */
const MOST_LINE = 1 << 20;

/**
 * How a sample is read, as its beginning shows. Which element of an XML export holds an exam cannot
 * be seen in general: `exam` is empty then.
 */
export function guessSource(text: string): Source {
  const sheet = placeIn(text.slice(0, text.indexOf('\n')));
  if (sheet !== undefined) return guessSheetSource(text, sheet.sheet);
  if (hl7v2.test(text)) return { syntax: 'hl7v2' };
  if (json.test(text)) return { syntax: 'json', ...(isLines(text) && { lines: true }) };
  if (!xml.test(text)) return guessCsvSource(text);
  return cda.test(text) ? { syntax: 'cda' } : { syntax: 'xml', exam: '' };
}
