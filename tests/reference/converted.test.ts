import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cdaReader } from '../../src/convert/cda/reader.ts';
import { convertText } from '../../src/convert/exams/convert-text.ts';
import { hl7v2Reader } from '../../src/convert/hl7v2/reader.ts';
import type { XmlSource } from '../../src/convert/mapping/source.ts';
import { xmlReader } from '../../src/convert/xml/reader.ts';
import { hasErrors, issueText, toBundleOrThrow, toJson } from '../../src/index.ts';
import { clinic } from '../clinic.ts';
import { messyDocuments } from '../convert/cda/messy-documents.ts';
import { cdaSuite } from '../convert/cda/suite.ts';
import { messyRows } from '../convert/csv/messy-rows.ts';
import { csvSyntax } from '../convert/csv/suite.ts';
import { messyMessages } from '../convert/hl7v2/messy-messages.ts';
import { hl7v2Suite } from '../convert/hl7v2/suite.ts';
import { type Messy, type Syntax, syntaxOf } from '../convert/messy.ts';
import { messyDocument } from '../convert/xml/messy-documents.ts';
import { xmlSuite } from '../convert/xml/suite.ts';
import { startValidator, type Validator } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';
import { ourIssues } from './ours.ts';

const xmlSource: XmlSource = {
  syntax: 'xml',
  exam: 'export/exam',
  items: ['findings/finding', 'measures/measure', 'regions/region/sign'],
};

interface Format {
  readonly name: string;
  readonly syntax: Syntax;
  readonly make: (seed: number, count: number) => Messy;
  /** Exams of the export. */
  readonly count: number;
}

const formats: readonly Format[] = [
  { name: 'CSV', syntax: csvSyntax, make: messyRows, count: 500 },
  {
    name: 'HL7 v2',
    syntax: syntaxOf(hl7v2Suite.mapping, hl7v2Reader, true),
    make: messyMessages,
    count: 200,
  },
  {
    name: 'XML',
    syntax: syntaxOf(xmlSuite.mapping, xmlReader(xmlSource), false),
    make: messyDocument,
    count: 200,
  },
  {
    name: 'CDA',
    syntax: syntaxOf(cdaSuite.mapping, cdaReader, false),
    make: messyDocuments,
    count: 200,
  },
];

let validator: Validator;
beforeAll(async () => {
  validator = await startValidator({ load: await extensionsPack() });
});
afterAll(() => validator.stop());

describe('at least 200 messy exams of each format', () => {
  it.each(formats)(
    '$name: what is converted makes bundles without an error, in three versions',
    async ({ name, syntax: { reader, plan }, make, count }) => {
      const { text, units } = make(7, count);
      const { exams, quarantine } = convertText(text, reader, plan);
      expect(exams.length + quarantine.length).toBe(units);
      expect(exams.length).toBeGreaterThan(50);
      const bundles = exams.flatMap(({ exam }, at) =>
        releases.map((version) => {
          const bundleType = at % 2 === 0 ? 'collection' : 'transaction';
          const bundle = toBundleOrThrow(exam, { ...clinic, fhirVersion: version, bundleType });
          return { id: `${version} ${exam.id} ${bundleType}`, version, text: toJson(bundle) };
        }),
      );
      const results = await Promise.all(bundles.map((bundle) => validator.validate(bundle)));
      const faults = bundles.flatMap(({ id, version, text: json }, at) => [
        ...(results[at]?.issues ?? [])
          .filter(({ severity }) => severity === 'error' || severity === 'fatal')
          .map(({ location, message }) => `${id}: ${location}: ${message}`),
        ...ourIssues(json, version)
          .filter((found) => hasErrors([found]))
          .map((found) => `${id}: ours: ${issueText(found)}`),
      ]);
      expect(faults).toEqual([]);
      console.log(
        `${name}: ${units} exams, ${exams.length} converted, ${quarantine.length} in quarantine, ` +
          `${bundles.length} bundles without an error`,
      );
    },
    1_800_000,
  );
});
