import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromJson } from '../../../src/fhir/json/from-json.ts';
import { writeResourceXml } from '../../../src/fhir/xml/to-xml.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import { xmlTypes } from '../../../src/validate/text/xml-types.ts';
import { allDefinitions, resourceTypes } from '../../validate/all-types.ts';
import type { FhirRelease } from '../corpus.ts';
import { publishedExamples } from '../definitions.ts';

/** A published example in XML with one fault, or without; the same on every machine. */
export interface XmlCase {
  readonly id: string;
  readonly version: FhirRelease;
  readonly text: string;
  /** The first eight digits of the SHA-256 of the text. */
  readonly digest: string;
}

type XmlFault = (text: string) => string;

/** Kinds of faults that only XML can have. What has no place in a text leaves it as it is. */
export const xmlFaults: Readonly<Record<string, XmlFault>> = {
  'no-namespace': (text) => text.replace(' xmlns="http://hl7.org/fhir"', ''),
  'other-namespace': (text) => text.replace('"http://hl7.org/fhir"', '"http://hl7.org/fhir/"'),
  'namespace-of-version-3': (text) => text.replace('"http://hl7.org/fhir"', '"urn:hl7-org:v3"'),
  'prefixed-namespace': (text) =>
    withoutNarrative(text)
      .replace(' xmlns="http://hl7.org/fhir"', '')
      .replace(/<(\/?)([A-Za-z])/g, '<$1f:$2')
      .replace(/^((?:<\?[^>]*>)?\s*<[\w:]+)/, '$1 xmlns:f="http://hl7.org/fhir"'),
  'unknown-root': (text) => text.replace(/(<\/?)([A-Z]\w+)(?= xmlns|>\s*$)/g, '$1$2x'),
  'unknown-element': (text) => text.replace(/(<\/[A-Z]\w+>\s*)$/, '<banana value="1"/>$1'),
  'unknown-element-of-other-namespace': (text) =>
    text.replace(/(<\/[A-Z]\w+>\s*)$/, '<banana xmlns="urn:other" value="1"/>$1'),
  'element-in-other-namespace': (text) =>
    text.replace(/<id value=/, '<id xmlns="urn:other" value='),
  'unknown-attribute-of-resource': (text) =>
    text.replace(/( xmlns="http:\/\/hl7.org\/fhir")/, '$1 colour="red"'),
  'unknown-attribute-of-primitive': (text) => text.replace(/<id value=/, '<id colour="red" value='),
  'id-of-resource-as-attribute': (text) =>
    text.replace(/( xmlns="http:\/\/hl7.org\/fhir")/, '$1 id="a"'),
  'schema-location': (text) =>
    text.replace(
      /( xmlns="http:\/\/hl7.org\/fhir")/,
      '$1 xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://hl7.org/fhir fhir-all.xsd"',
    ),
  'empty-value': (text) => text.replace(/<id value="[^"]*"/, '<id value=""'),
  'no-value': (text) => text.replace(/<id value="[^"]*"/, '<id'),
  'element-without-content': (text) => text.replace(/(<\/id>|<id [^>]*\/>)/, '$1<meta></meta>'),
  'value-as-text': (text) => text.replace(/<id value="([^"]*)"\/>/, '<id>$1</id>'),
  'text-between': (text) => text.replace(/(<id [^>]*\/>)/, '$1 loose words '),
  'text-in-cdata': (text) => text.replace(/(<id [^>]*\/>)/, '$1<![CDATA[loose]]>'),
  'wrong-order': (text) => text.replace(/(<id [^>]*\/>)([\s\S]*?)(<\/[A-Z]\w+>\s*)$/, '$2$1$3'),
  'repeated-apart': (text) =>
    text.replace(/(<id [^>]*\/>)([\s\S]*?)(<\/[A-Z]\w+>\s*)$/, '$1$2$1$3'),
  'repeated-together': (text) => text.replace(/(<id [^>]*\/>)/, '$1$1'),
  'narrative-without-namespace': (text) =>
    text.replace(' xmlns="http://www.w3.org/1999/xhtml"', ''),
  'narrative-in-other-namespace': (text) =>
    text.replace('"http://www.w3.org/1999/xhtml"', '"http://www.w3.org/1999/html"'),
  'two-narratives': (text) => text.replace(/(<div xmlns[\s\S]*?<\/div>)(?=<\/text>)/, '$1$1'),
  'document-type': (text) => text.replace(/(<[A-Z])/, '<!DOCTYPE x>$1'),
  'document-type-with-entity': (text) =>
    text.replace(/(<[A-Z])/, '<!DOCTYPE x [<!ENTITY e "z">]>$1'),
  'html-entity': (text) => text.replace(/(<div xmlns[^>]*>)/, '$1&nbsp;'),
  comment: (text) => text.replace(/(<id [^>]*\/>)/, '$1<!-- a remark -->'),
  'comment-before-root': (text) => text.replace(/(<[A-Z])/, '<!-- a remark -->$1'),
  'processing-instruction': (text) => text.replace(/(<id [^>]*\/>)/, '$1<?go on?>'),
  'style-sheet': (text) => text.replace(/(<[A-Z])/, '<?xml-stylesheet href="a.xsl"?>$1'),
  'latin-encoding': (text) => text.replace('encoding="UTF-8"', 'encoding="ISO-8859-1"'),
  'xml-1.1': (text) => text.replace('version="1.0"', 'version="1.1"'),
  'no-declaration': (text) => text.replace(/^<\?xml[^>]*>/, ''),
  'unclosed-element': (text) => text.replace(/(<id [^>]*)\/>/, '$1>'),
  'two-roots': (text) => `${text}<Basic xmlns="http://hl7.org/fhir"/>`,
  'attribute-twice': (text) => text.replace(/<id value=/, '<id value="a" value='),
  'unquoted-attribute': (text) => text.replace(/<id value="([^"]*)"/, '<id value=$1'),
  'undeclared-prefix': (text) => text.replace(/<id value=/, '<f:id value='),
  'capital-element': (text) => text.replace(/<id value=("[^"]*")\/>/, '<Id value=$1/>'),
  'space-around-id': (text) => text.replace(/<id value="([^"]*)"/, '<id value=" $1 "'),
  'resource-without-wrapper': (text) =>
    text.replace(/(<id [^>]*\/>)/, '$1<Basic><id value="b"/></Basic>'),
  'two-resources-contained': (text) =>
    withContained(text, '<Basic><id value="b"/></Basic><Basic><id value="c"/></Basic>'),
  'contained-nothing': (text) => withContained(text, ''),
  'contained-of-unknown-type': (text) => withContained(text, '<Banana><id value="b"/></Banana>'),
  'extension-without-url': (text) => withExtension(text, '', '<valueString value="x"/>'),
  'extension-url-as-element': (text) =>
    withExtension(text, '', '<url value="https://vineyard.example/e"/><valueString value="x"/>'),
  'extension-with-unknown-choice': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueBanana value="x"/>'),
  'extension-with-two-values': (text) =>
    withExtension(
      text,
      ' url="https://vineyard.example/e"',
      '<valueString value="x"/><valueBoolean value="true"/>',
    ),
  'boolean-of-one': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueBoolean value="1"/>'),
  'decimal-with-plus': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueDecimal value="+1.0"/>'),
  'decimal-with-exponent': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueDecimal value="1e2"/>'),
  'integer-with-zero-before': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueInteger value="007"/>'),
  'integer-as-words': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueInteger value="seven"/>'),
  'date-of-thirty-second': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueDate value="2021-01-32"/>'),
  'line-break-in-a-text': (text) =>
    withExtension(text, ' url="https://vineyard.example/e"', '<valueString value="a&#10;b"/>'),
};

function withoutNarrative(text: string): string {
  return text.replace(/<text><status[\s\S]*?<\/text>/, '');
}

function withContained(text: string, inner: string): string {
  return withoutNarrative(text).replace(/(<id [^>]*\/>)/, `$1<contained>${inner}</contained>`);
}

function withExtension(text: string, attributes: string, inner: string): string {
  return withoutNarrative(text)
    .replace(/<meta>[\s\S]*?<\/meta>/, '')
    .replace(/(<id [^>]*\/>)/, `$1<extension${attributes}>${inner}</extension>`);
}

/** Types whose first small example is taken, so that the base has an id and a narrative. */
const baseTypes = ['Patient', 'Observation', 'Medication', 'CarePlan', 'Appointment', 'Location'];
const LONGEST = 6000;

/** A sound example of some types with each fault, and one example in XML of every type. */
export async function xmlCases(version: FhirRelease): Promise<XmlCase[]> {
  const folder = await publishedExamples(version);
  const types = xmlTypes(allDefinitions(version));
  const files = readdirSync(folder).sort();
  const textOf = (file: string): string => {
    const json = readFileSync(join(folder, file), 'utf8').replace(/^\uFEFF/, '');
    return orThrow('write XML', writeResourceXml(fromJson(json).value, types));
  };
  const firstOf = (type: string): string | undefined =>
    files.find((file) => {
      const text = file.startsWith(`${type}-`) && readFileSync(join(folder, file), 'utf8');
      return (
        text && text.length < LONGEST && text.includes('"div"') && !text.includes('"contained"')
      );
    });
  const bases = baseTypes.flatMap((type) => firstOf(type) ?? []);
  const plain = resourceTypes(version).flatMap((type) => firstOf(type) ?? []);
  const broken = Object.entries(xmlFaults).flatMap(([name, fault], at) => {
    const file = bases[at % bases.length] ?? '';
    const text = textOf(file);
    const changed = fault(text);
    return changed === text ? [] : [xmlCase(`${file} ${name}`, version, changed)];
  });
  return [...plain.map((file) => xmlCase(file, version, textOf(file))), ...broken];
}

function xmlCase(id: string, version: FhirRelease, text: string): XmlCase {
  const digest = createHash('sha256').update(text).digest('hex').slice(0, 8);
  return { id, version, text, digest };
}
