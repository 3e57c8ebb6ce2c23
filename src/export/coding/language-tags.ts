import { XHTML } from '../../fhir/names/systems.ts';
import type { AnyResource } from '../context.ts';

interface Textual {
  readonly text?: { readonly div: string } | undefined;
}

/** What a resource of any version can hold as narrative. */
interface WithTexts extends Textual {
  readonly id?: string | undefined;
  readonly section?: readonly Textual[] | undefined;
}

/**
 * A resource that says in which language its texts are written, and so do its narratives.
 * @see https://hl7.org/fhir/R4/resource.html#language and narrative.html on lang
 */
export function inLanguageOf(resource: AnyResource, tag: string): AnyResource {
  const { text, section }: WithTexts = resource;
  const { resourceType, id, ...rest } = resource;
  const tagged = {
    resourceType,
    id,
    language: tag,
    ...rest,
    ...(text && { text: withLang(text, tag) }),
    ...(section && {
      section: section.map((one) => (one.text ? { ...one, text: withLang(one.text, tag) } : one)),
    }),
  };
  return tagged as AnyResource; // the same resource with its own properties, and `language`
}

function withLang<N extends { readonly div: string }>(narrative: N, tag: string): N {
  const opening = `<div xmlns="${XHTML}"`;
  const div = narrative.div.replace(opening, `${opening} lang="${tag}" xml:lang="${tag}"`);
  return { ...narrative, div };
}
