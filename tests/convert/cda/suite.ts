import { fromCda } from '../../../src/convert/cda/from-cda.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { Suite } from '../syntax-cases.ts';
import mapping from './harbour.json' with { type: 'json' };

/** Head of a document up to its body. */
export function header(id: string): string[] {
  return [
    '<ClinicalDocument xmlns="urn:hl7-org:v3" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">',
    '<typeId root="2.16.840.1.113883.1.3" extension="POCD_HD000040"/>',
    `<id root="1.2.3.4" extension="${id}"/>`,
    '<effectiveTime value="20240301101500+0000"/>',
    '<recordTarget><patientRole><id root="1.2.3.5" extension="H-0042"/>',
    '<patient><name><given>Ada</given><family>Rope</family></name><birthTime value="19620320"/></patient>',
    '</patientRole></recordTarget>',
    '<componentOf><encompassingEncounter><effectiveTime value="202403010945"/></encompassingEncounter></componentOf>',
    '<component><structuredBody>',
  ];
}

export const sectionStart: readonly string[] = [
  '<component><section>',
  '<templateId root="2.16.840.1.113883.10.20.2.10" extension="2015-08-01"/>',
  '<code code="29545-1" codeSystem="2.16.840.1.113883.6.1"/><title>Physical examination</title>',
];

export const sectionEnd = '</section></component>';
export const documentEnd = '</structuredBody></component></ClinicalDocument>';

export const cdaSuite: Suite = {
  folder: 'cda',
  // The file is checked against the schema of mappings when it is used.
  mapping: mapping as unknown as Mapping,
  convert: (text, own) => fromCda(text, own),
  lineEnd: '\n',
  wrap: (lines) => [...header('D-1'), ...sectionStart, ...lines, sectionEnd, documentEnd],
};
