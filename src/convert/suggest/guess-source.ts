import type { Source } from '../mapping/source.ts';
import { guessCsvSource } from './guess-csv.ts';

/** First segment of a message, a batch or a file of batches; \s has the start of a block too. */
const hl7v2 = /^\s*(?:MSH|BHS|FHS)[^\w\s]/;
const cda = /<(?:[\w.-]+:)?ClinicalDocument[\s>]/;
const xml = /^\s*</;

/**
 * How a sample is read, as its beginning shows. Which element of an XML export holds an exam cannot
 * be seen in general: `exam` is empty then.
 */
export function guessSource(text: string): Source {
  if (hl7v2.test(text)) return { syntax: 'hl7v2' };
  if (!xml.test(text)) return guessCsvSource(text);
  return cda.test(text) ? { syntax: 'cda' } : { syntax: 'xml', exam: '' };
}
