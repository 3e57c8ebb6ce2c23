import { parseMappingText } from '../../../src/convert/bulk/index.ts';
import { fromCda } from '../../../src/convert/cda/index.ts';
import { codesFromCsv } from '../../../src/convert/code-map/from-csv.ts';
import { fromCsv } from '../../../src/convert/csv/index.ts';
import { fromHl7v2 } from '../../../src/convert/hl7v2/index.ts';
import { fromXmlExport } from '../../../src/convert/xml/index.ts';
import { fromJson } from '../../../src/fhir/json/from-json.ts';
import { fromXml } from '../../../src/fhir/xml/index.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { characters, many, type Shape, text } from './shape.ts';

type Made = Readonly<Record<string, (bytes: number) => string>>;

const plain: Made = Object.fromEntries(
  characters.map(([name, letters]) => [name, (bytes) => letters.repeat(bytes / letters.length)]),
);

const json: Made = {
  ...plain,
  'string of backslashes': (bytes) => `"${'\\\\'.repeat(bytes / 2)}`,
  'string never closed': (bytes) => `{"a":"${'\\"'.repeat(bytes / 2)}`,
  'opening brackets': (bytes) => '['.repeat(bytes),
  'one name again and again': (bytes) => `{${many(bytes, () => '"a":1').join()}}`,
  'many names': (bytes) => `{${many(bytes, (at) => `"a${at}":1`).join()}}`,
  decimals: (bytes) => `[${many(bytes, () => '1.0').join()}]`,
  'one long number': (bytes) => '1'.repeat(bytes),
  'one long fraction': (bytes) => `0.${'1'.repeat(bytes)}`,
  'list of empty objects': (bytes) => `[${many(bytes, () => '{}').join()}]`,
};

const xml: Made = {
  ...plain,
  'namespace in each nested element': (bytes) =>
    text(bytes, (at) => `<a xmlns:n${at}="urn:${at}">`),
  'nested elements': (bytes) => '<a>'.repeat(bytes / 3),
  'nested and closed': (bytes) => `${'<a>'.repeat(bytes / 7)}${'</a>'.repeat(bytes / 7)}`,
  'flat elements': (bytes) => `<a>${'<b/>'.repeat(bytes / 4)}</a>`,
  'attributes of one element': (bytes) => `<a ${text(bytes, (at) => `b${at}="c" `)}/>`,
  'one attribute again': (bytes) => `<a ${'b="c" '.repeat(bytes / 6)}/>`,
  'long attribute': (bytes) => `<a b="${'&amp;'.repeat(bytes / 5)}"/>`,
  'character references': (bytes) => `<a>${'&#x41;'.repeat(bytes / 6)}</a>`,
  comments: (bytes) => `<a>${'<!-- -->'.repeat(bytes / 8)}</a>`,
  'comment never closed': (bytes) => `<a><!--${'-'.repeat(bytes)}`,
  'CDATA never closed': (bytes) => `<a>${'<![CDATA['.repeat(bytes / 9)}`,
  'open marks': (bytes) => `<a>${'<'.repeat(bytes)}`,
  'end tags alone': (bytes) => '</a>'.repeat(bytes / 4),
  'FHIR entries': (bytes) =>
    `<Bundle xmlns="http://hl7.org/fhir"><type value="collection"/>${'<entry><resource><Observation><status value="final"/></Observation></resource></entry>'.repeat(bytes / 85)}</Bundle>`,
  'FHIR elements that there are not': (bytes) =>
    `<Observation xmlns="http://hl7.org/fhir">${text(bytes, (at) => `<statuss${at}/>`)}</Observation>`,
  'sections in sections': (bytes) =>
    `<ClinicalDocument xmlns="urn:hl7-org:v3">${'<component><section>'.repeat(bytes / 20)}`,
};

const small = Array.from({ length: 3 }, (_, at) => sampleExam(at + 1, { size: 'small' }));
const original = {
  csv: writeExams(small, 'csv'),
  hl7v2: writeExams(small, 'hl7v2'),
  xml: writeExams(small, 'xml'),
  cda: writeExams(small, 'cda'),
};
const [heading = '', ...rows] = original.csv.split('\n');

const csv: Made = {
  ...plain,
  'rows as written': (bytes) =>
    `${heading}\n${many(bytes, (at) => rows[at % (rows.length - 1)]).join('\n')}`,
  'one row of many cells': (bytes) => `${heading}\n${'a,'.repeat(bytes / 2)}`,
  'headings without end': (bytes) => text(bytes, (at) => `h${at},`),
  'short rows': (bytes) => `${heading}\n${'a\n'.repeat(bytes / 2)}`,
  'quote in each row': (bytes) => `${heading}\n${'"a\n'.repeat(bytes / 3)}`,
  'quotes doubled': (bytes) => `${heading}\n"${'""'.repeat(bytes / 2)}`,
};

const hl7: Made = {
  ...plain,
  'messages as written': (bytes) => original.hl7v2.repeat(bytes / original.hl7v2.length + 1),
  'short segments': (bytes) => `${original.hl7v2}${'OBX|1\r'.repeat(bytes / 6)}`,
  'one long segment': (bytes) => `${original.hl7v2}OBX|${'a|'.repeat(bytes / 2)}`,
  repetitions: (bytes) => `${original.hl7v2}OBX|1|ST|a||${'a~'.repeat(bytes / 2)}`,
  components: (bytes) => `${original.hl7v2}OBX|1|ST|a||${'a^&'.repeat(bytes / 3)}`,
  escapes: (bytes) => `${original.hl7v2}OBX|1|ST|a||${'\\F\\\\H'.repeat(bytes / 5)}`,
  'headers alone': (bytes) => 'MSH|^~\\&|\r'.repeat(bytes / 10),
  orders: (bytes) => `${original.hl7v2}${'OBR|1\rOBX|1|ST|a||b\r'.repeat(bytes / 21)}`,
};

const legacy = (name: 'xml' | 'cda'): Made => ({
  ...xml,
  'documents as written': (bytes) => {
    const written = original[name];
    return written.repeat(bytes / written.length + 1);
  },
});

const mapping: Made = {
  ...json,
  'open comments': (bytes) => '/*'.repeat(bytes / 2),
  'closed comments': (bytes) => '/* */'.repeat(bytes / 5),
  'line comments': (bytes) => '//\n'.repeat(bytes / 3),
  slashes: (bytes) => '/'.repeat(bytes),
};

const head = 'source,code,system,target,relation\n';
const map: Made = {
  ...plain,
  'many targets of one code': (bytes) =>
    head + text(bytes, (at) => `findings,naevus,https://quay.example/codes,t${at},wider\n`),
  'chain over another system': (bytes) =>
    `${head}findings,naevus,https://quay.example/a,c0,wider\n${text(
      bytes,
      (at) => `https://quay.example/a,c${at},https://quay.example/a,c${at + 1},wider\n`,
    )}`,
  'many codes to the head of a chain': (bytes) =>
    `${head}${['naevus', 'scar', 'ulcer'].map((code) => `findings,${code},https://quay.example/a,c0,wider\n`).join('')}${text(
      bytes,
      (at) => `https://quay.example/a,c${at},https://quay.example/a,c${at + 1},wider\n`,
    )}`,
  'unknown tables and rows': (bytes) =>
    head + text(bytes, (at) => `findngs${at},naevvus,https://quay.example/codes,t,wider\n`),
  'one line again': (bytes) =>
    head + 'findings,naevus,https://quay.example/codes,t,wider\n'.repeat(bytes / 51),
};

const entries: Readonly<Record<string, readonly [(text: string) => unknown, Made]>> = {
  fromJson: [fromJson, json],
  'xml fromXml': [(given) => fromXml(given), xml],
  fromCsv: [(given) => fromCsv(given, sampleMapping('csv')), csv],
  fromHl7v2: [(given) => fromHl7v2(given, sampleMapping('hl7v2')), hl7],
  'convert fromXmlExport': [(given) => fromXmlExport(given, sampleMapping('xml')), legacy('xml')],
  fromCda: [(given) => fromCda(given, sampleMapping('cda')), legacy('cda')],
  parseMappingText: [parseMappingText, mapping],
  codesFromCsv: [(given) => codesFromCsv(given), map],
};

export const textShapes: readonly Shape[] = Object.entries(entries).flatMap(
  ([entry, [call, made]]) =>
    Object.entries(made).map(
      ([name, make]): Shape => ({
        entry,
        name,
        prepare: (bytes) => {
          const given = make(bytes);
          return () => call(given);
        },
      }),
    ),
);
