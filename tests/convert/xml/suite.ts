import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import { fromXmlExport } from '../../../src/convert/xml/from-xml-export.ts';
import type { Suite } from '../syntax-cases.ts';
import mapping from './vineyard.json' with { type: 'json' };

/** What every exam of the cases begins with; the id is added. */
export const about: readonly string[] = [
  '<worker no="V-17" born="1970-05-12" sex="f"><name>Ivy Trellis</name></worker>',
  '<when>2024-03-01T09:45</when>',
  '<written>2024-03-01T10:15:00Z</written>',
];

export const xmlSuite: Suite = {
  folder: 'xml',
  // The file is checked against the schema of mappings when it is used.
  mapping: mapping as unknown as Mapping,
  convert: (text, own) => fromXmlExport(text, own),
  lineEnd: '\n',
  wrap: (lines) => [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<export>',
    '<exam id="1" status="done">',
    ...about,
    ...lines,
    '</exam>',
    '</export>',
  ],
};
