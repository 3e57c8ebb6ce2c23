import { fromHl7v2 } from '../../../src/convert/hl7v2/from-hl7v2.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { Suite } from '../syntax-cases.ts';
import mapping from './clinic.json' with { type: 'json' };

/** A yearly check of harbour workers as an old system sends it. */
export const head: readonly string[] = [
  'MSH|^~\\&|EXAM|HARBOUR|EHR|HUB|20240301101500+0000||ORU^R01^ORU_R01|T1|P|2.5.1||||||UNICODE UTF-8',
  'PID|1||H-0042^^^HARBOUR^MR||ROPE^ADA||19620320|F',
  'OBR|1||E-1|FNEX^Face and neck exam^99EXAM|||202403010945||||||||||||||||||F',
];

export const hl7v2Suite: Suite = {
  folder: 'hl7v2',
  // The file is checked against the schema of mappings when it is used.
  mapping: mapping as unknown as Mapping,
  convert: (text, own) => fromHl7v2(text, own),
  lineEnd: '\r',
  wrap: (lines) => [...head, ...lines],
};
