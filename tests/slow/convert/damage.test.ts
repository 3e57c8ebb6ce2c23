import { describe, expect, it } from 'vitest';
import { cdaReader } from '../../../src/convert/cda/reader.ts';
import { hl7v2Reader, hl7v2ReaderOf } from '../../../src/convert/hl7v2/reader.ts';
import { xmlReader } from '../../../src/convert/xml/reader.ts';
import { messyDocuments } from '../../convert/cda/messy-documents.ts';
import { cdaSuite } from '../../convert/cda/suite.ts';
import { messyRows } from '../../convert/csv/messy-rows.ts';
import { csvSyntax } from '../../convert/csv/suite.ts';
import { messyMessages } from '../../convert/hl7v2/messy-messages.ts';
import { hl7v2Suite } from '../../convert/hl7v2/suite.ts';
import { checkMutated, type Messy, mutated, type Syntax, syntaxOf } from '../../convert/messy.ts';
import { seeded } from '../../convert/random.ts';
import { messyDocument } from '../../convert/xml/messy-documents.ts';
import { xmlSuite } from '../../convert/xml/suite.ts';

const ROUNDS = 100_000;
/** Texts that the damage is done to. */
const TEXTS = 500;
/** Longest that one damaged input may take. */
const HANG_MS = 2000;
/** For all rounds of one format, on a machine that does other things too. */
const TIMEOUT_MS = 3_600_000;

const source = xmlSuite.mapping.source;
if (source.syntax !== 'xml') throw new Error('the mapping of the XML suite is for XML');

const byOrder = { syntax: 'hl7v2', orders: 'exams' } as const;

/** The patients and orders of several messages, below the header of the first. */
function inOneMessage(messy: Messy): Messy {
  const lines = messy.text.match(/[^\r\n]*(?:\r\n|\r|\n)/g) ?? [];
  let headers = 0;
  const kept = lines.filter((line) => !line.includes('MSH') || headers++ === 0);
  return { ...messy, text: kept.join('') };
}

interface Format {
  readonly name: string;
  readonly syntax: Syntax;
  readonly make: (seed: number, count: number) => Messy;
  /** Characters that mean something in the format. */
  readonly marks: string;
}

const formats: readonly Format[] = [
  { name: 'CSV', syntax: csvSyntax, make: messyRows, marks: ',;"\r\n\t\u0000/' },
  {
    name: 'HL7 v2',
    syntax: syntaxOf(hl7v2Suite.mapping, hl7v2Reader, true),
    make: messyMessages,
    marks: '|^~\\&\r\n\x0b\x1c"MSHOBX',
  },
  {
    name: 'HL7 v2, an exam in each order',
    syntax: syntaxOf({ ...hl7v2Suite.mapping, source: byOrder }, hl7v2ReaderOf(byOrder), true),
    make: (seed, count) => inOneMessage(messyMessages(seed, count + 2)),
    marks: '|^~\\&\r\n"MSHPIDORCOBRE',
  },
  {
    name: 'XML',
    syntax: syntaxOf(xmlSuite.mapping, xmlReader(source), false),
    make: messyDocument,
    marks: '<>/"\'=&;![]-? exam\u0000',
  },
  {
    name: 'CDA',
    syntax: syntaxOf(cdaSuite.mapping, cdaReader, false),
    make: messyDocuments,
    marks: '<>/"\'=&;![]-? cda\u0000',
  },
];

describe.each(formats)('$name', ({ name, syntax, make, marks }) => {
  it(
    `survives ${ROUNDS} damaged inputs, none of them slowly`,
    () => {
      const texts = Array.from({ length: TEXTS }, (_, seed) => make(seed, 1).text);
      const random = seeded(2024);
      let longest = 0;
      for (let round = 0; round < ROUNDS; round++) {
        const text = mutated(texts[round % TEXTS] ?? '', marks, random);
        const start = performance.now();
        checkMutated(text, syntax);
        longest = Math.max(longest, performance.now() - start);
      }
      expect(longest).toBeLessThan(HANG_MS);
      console.log(`${name}: ${ROUNDS} damaged inputs, the longest ${Math.round(longest)} ms`);
    },
    TIMEOUT_MS,
  );
});
