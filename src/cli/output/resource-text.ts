import { toJson } from '../../fhir/json/to-json.ts';
import type { FhirVersion } from '../../fhir/version.ts';
import { type Outcome, success } from '../../issues/issue.ts';
import { type OptionTable, type OptionValues, textOption } from '../arguments.ts';
import type { Choices } from '../command.ts';
import { fhirVersionOf } from '../shared-options.ts';

/** In which of FHIR's formats resources are written. */
export const formatOutOption: OptionTable = {
  'format-out': {
    type: 'text',
    values: ['json', 'xml'],
    fallback: 'json',
    help: 'FHIR format of what is written',
  },
};

export function wantsXml(options: OptionValues): boolean {
  return textOption(options, 'format-out') === 'xml';
}

/** Text of a resource with a line break at its end: over several lines, or `onOneLine`. */
export type ResourceWriter = (resource: unknown, onOneLine: boolean) => Outcome<string>;

/** The writer of a call; the one for XML is loaded only where it is asked for. */
export async function resourceWriter(choices: Choices): Promise<ResourceWriter> {
  return wantsXml(choices.options) ? xmlWriter(fhirVersionOf(choices)) : writeJson;
}

function writeJson(resource: unknown, onOneLine: boolean): Outcome<string> {
  return success(`${toJson(resource, { pretty: !onOneLine })}\n`);
}

async function xmlWriter(version: FhirVersion): Promise<ResourceWriter> {
  const { toXml } = await import('../../fhir/xml/to-xml.ts');
  return (resource, onOneLine) => {
    const xml = toXml(resource, { fhirVersion: version, pretty: !onOneLine });
    return xml.ok && onOneLine ? success(oneLine(xml.value), xml.issues) : xml;
  };
}

/**
 * Line breaks stand only in the texts of a narrative; there a reference says the same.
 * https://www.w3.org/TR/xml/#sec-line-ends
 */
function oneLine(xml: string): string {
  return `${xml.replaceAll(/\r\n?|\n/g, '&#10;')}\n`;
}
