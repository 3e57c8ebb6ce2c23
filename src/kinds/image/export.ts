import type { CodeableConcept, Media, Reference } from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import type { ExportContext } from '../../export/context.ts';
import { bodySite } from '../../export/resources/body-site.ts';
import { summary } from '../../export/resources/narrative.ts';
import {
  codedComponent,
  type Exporter,
  effective,
  flagComponent,
  textComponent,
} from '../../export/resources/observation.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { seenAt } from '../facets/base.ts';
import type { Image } from './statement.ts';

/** What is said of a picture; the picture itself is a Media (R4) or a DocumentReference (R5). */
export const imageExport: Exporter<Image> = {
  profile: 'face-neck-observation',
  parts: (context, image) => {
    const { coder } = context;
    const consent = coder.concept('values', `consent.${image.consent}`);
    return {
      code: coder.concept('items', 'image'),
      value: { valueString: image.title },
      focus: image.about ?? [],
      derivedFrom: [pictureOf(context, image)],
      components: [
        codedComponent(context, 'photo-consent', consent),
        ...(image.scaleBar === undefined
          ? []
          : [flagComponent(context, 'scale-bar', image.scaleBar)]),
        ...(image.purpose === undefined ? [] : [textComponent(context, 'purpose', image.purpose)]),
      ],
    };
  },
  resources: (context, image) => [
    context.version === 'R5' ? imageDocument(context, image) : imageMedia(context, image),
  ],
  picture: pictureOf,
};

function pictureOf(context: ExportContext, { key }: Image): Reference {
  return context.reference(resourceName.media(key));
}

/** R4 and R4B. @see https://hl7.org/fhir/R4/media.html */
function imageMedia(context: ExportContext, image: Image): Media {
  const { effectiveDateTime, effectivePeriod } = effective(context, seenAt(image));
  return {
    resourceType: 'Media',
    id: context.id(resourceName.media(image.key)),
    ...summary(context, [image.title]),
    status: context.exam.status === 'entered-in-error' ? 'entered-in-error' : 'completed',
    subject: context.subject,
    ...(context.encounter && { encounter: context.encounter }),
    ...(effectiveDateTime !== undefined && { createdDateTime: effectiveDateTime }),
    ...(effectivePeriod !== undefined && { createdPeriod: effectivePeriod }),
    issued: context.exam.recorded,
    bodySite: plainSite(context, image),
    content: { contentType: image.contentType, url: image.url, title: image.title },
  };
}

/** The extension for the side belongs to Observation.bodySite alone; our code and the text say it here. */
function plainSite(context: ExportContext, { region, side }: Image): CodeableConcept {
  const { extension: _, ...site } = bodySite(context, region, side, false);
  return site;
}

/** R5, which has no Media. @see https://hl7.org/fhir/R5/documentreference.html */
function imageDocument(context: ExportContext, image: Image): r5.DocumentReference {
  const document = {
    resourceType: 'DocumentReference',
    id: context.id(resourceName.media(image.key)),
    ...summary(context, [image.title]),
    status: context.exam.status === 'entered-in-error' ? 'entered-in-error' : 'current',
    subject: context.subject,
    ...(context.encounter && { context: [context.encounter] }),
    date: context.exam.recorded,
    content: [
      { attachment: { contentType: image.contentType, url: image.url, title: image.title } },
    ],
  };
  // References are alike in both versions; their typings differ in Extension alone.
  return document as r5.DocumentReference;
}
