import { resourceName } from '../../fhir/names/resource-names.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  lookAt,
  lookAtList,
  peek,
  textOf,
  uriOf,
} from '../../read/bundle/element.ts';
import { claimFrame, type Entry } from '../../read/bundle/entries.ts';
import { claimReference, targetOf } from '../../read/bundle/reference.ts';
import { ownCode } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import { aboutOf, claimCommon, type Observed } from '../../read/observation/observation.ts';
import { type Place, placeOf } from '../../read/observation/place.ts';
import { siteOf } from '../../read/observation/site.ts';
import { codingsOf, filled } from '../../read/observation/values.ts';
import type { Image } from './statement.ts';

export const imageReader: Reader<Image> = {
  of: ({ table, code }) => table === 'items' && code === 'image',
  read: readImage,
  pictureUrl: ({ url }) => url,
};

const consents = ['given', 'refused', 'not-asked'] as const;

function readImage(observed: Observed, key: string | undefined): Read<Image> | undefined {
  const { reading, element, components } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'items');
  const site = siteOf(observed);
  const title = textOf(element, 'valueString');
  const stated = components.value('photo-consent', 'consent');
  const consent = consents.find((known) => known === stated);
  if (code === undefined || site === undefined || title === undefined || consent === undefined) {
    return undefined;
  }
  const picture = pictureOf(observed, { title, site, name: key });
  if (picture === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });
  const scaleBar = components.flag('scale-bar');
  const purpose = components.text('purpose');
  const about = aboutOf(observed);
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'image',
    ...site,
    title,
    ...picture,
    consent,
    ...(scaleBar !== undefined && { scaleBar }),
    ...(purpose !== undefined && { purpose }),
    ...(about && { about }),
    ...(codings && { codings }),
  };
}

type Picture = Pick<Image, 'contentType' | 'url'>;
interface Stated {
  readonly title: string;
  readonly site: Place;
  /** Key of the statement. */
  readonly name: string | undefined;
}

/** The Media (R4, R4B) or DocumentReference (R5) that the observation is derived from. */
function pictureOf(observed: Observed, stated: Stated): Picture | undefined {
  const { reading, entry, element } = observed;
  const [reference] = lookAtList(element, 'derivedFrom');
  const target = reference && targetOf(reading, reference, entry);
  if (target === undefined || typeof target === 'string') return undefined;
  claimReference(reading, element, 'derivedFrom', 0);
  if (target.type === 'Media') return readMedia(observed, target, stated);
  return target.type === 'DocumentReference' ? readDocument(observed, target, stated) : undefined;
}

function readMedia(
  observed: Observed,
  media: Entry,
  { title, site, name }: Stated,
): Picture | undefined {
  const { reading } = observed;
  const { resource } = media;
  claimMedia(observed, media, { status: 'completed', name });
  const { performed, recorded } = reading;
  // Its times are those of the observation, which reads them.
  const at = peek(observed.element, 'effectiveDateTime');
  claimEqual(resource, 'createdDateTime', at);
  if (performed !== undefined) claimEqual(resource, 'createdPeriod', performed);
  if (recorded !== undefined) claimEqual(resource, 'issued', recorded);
  const same = lookAt(resource, 'bodySite');
  const place = same && resource.claims.attempt(() => matching(placeOf(reading, same), site));
  if (place) innerOf(resource, 'bodySite');
  const content = innerOf(resource, 'content');
  return content && attachmentOf(content, title);
}

function readDocument(
  observed: Observed,
  entry: Entry,
  { title, name }: Stated,
): Picture | undefined {
  const { resource } = entry;
  claimMedia(observed, entry, { status: 'current', name });
  const { recorded } = observed.reading;
  if (recorded !== undefined) claimEqual(resource, 'date', recorded);
  const [content] = innersOf(resource, 'content');
  const attachment = content && innerOf(content, 'attachment');
  return attachment && attachmentOf(attachment, title);
}

function claimMedia(
  { reading }: Observed,
  entry: Entry,
  { status, name }: { readonly status: string; readonly name: string | undefined },
): void {
  const { resource } = entry;
  claimFrame(reading, entry, name === undefined ? undefined : resourceName.media(name));
  const withdrawn = reading.status === 'entered-in-error';
  claimEqual(resource, 'status', withdrawn ? 'entered-in-error' : status);
  const subject = lookAt(resource, 'subject');
  if (subject && reading.people.isSubject(subject, entry)) {
    claimReference(reading, resource, 'subject');
  }
  const encounter = lookAt(resource, 'encounter');
  if (encounter && reading.people.isEncounter(encounter, entry)) {
    claimReference(reading, resource, 'encounter');
  }
  const [visit] = lookAtList(resource, 'context');
  if (visit && reading.people.isEncounter(visit, entry)) {
    claimReference(reading, resource, 'context', 0);
  }
}

function attachmentOf(attachment: Element, title: string): Picture | undefined {
  const contentType = textOf(attachment, 'contentType');
  const url = uriOf(attachment, 'url');
  claimEqual(attachment, 'title', title);
  return contentType === undefined || url === undefined ? undefined : { contentType, url };
}

function matching(place: Place | undefined, site: Place): Place | undefined {
  return place?.region === site.region && place.side === site.side ? place : undefined;
}
