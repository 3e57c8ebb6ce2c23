import type { BodyStructure, CodeableConcept, Coding, Extension } from 'fhir/r4.js';
import { lateralityDisplay } from '../../fhir/laterality.ts';
import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { BODY_SITE_EXTENSION, LATERALITY_EXTENSION } from '../../fhir/names/systems.ts';
import { placeCode, placeText, placeTextExcept } from '../../fhir/place.ts';
import { escapeXhtml } from '../../fhir/xhtml.ts';
import type { ExceptedPlace } from '../../kinds/facets/base.ts';
import type { Side } from '../../model/primitive.ts';
import { sideSnomed } from '../../terminology/sides.ts';
import type { ExportContext, Placed } from '../context.ts';
import { generated } from './narrative.ts';

/**
 * The place: our own code of region and side, the mapped codes of the region, and words that name the
 * side. The side stands as an extension besides, or in a BodyStructure, as the export asks.
 * @param strict leaves out codes of places wider than the region: of what was found they say less
 *   and are right, of what was not found they would say more than was examined
 * @param except places below it that are not meant. With any, no code of another system stands there,
 *   since it would take them in, nor a BodyStructure, which other statements share
 */
export function bodySite(
  context: ExportContext,
  region: string,
  side: Side | undefined,
  strict: boolean,
  except: readonly ExceptedPlace[] = [],
): CodeableConcept {
  if (except.length > 0) return siteExcept(context, region, side, except);
  const extension = side === undefined ? undefined : sideExtension(context, { region, side });
  return { ...(extension && { extension: [extension] }), ...place(context, region, side, strict) };
}

function siteExcept(
  context: ExportContext,
  region: string,
  side: Side | undefined,
  except: readonly ExceptedPlace[],
): CodeableConcept {
  const extension =
    side === undefined || context.laterality === 'text'
      ? undefined
      : lateralityExtension(context, side);
  const { coding: [own] = [], text = region } = place(context, region, side, true);
  const names = except.map((one) => place(context, one.region, one.side, true).text ?? one.region);
  return {
    ...(extension && { extension: [extension] }),
    ...(own && { coding: [own] }),
    text: placeTextExcept(text, context.language.texts.except, names),
  };
}

/** The place as a value: each place that a statement does not speak of stands in a component. */
export function exceptedSite(
  context: ExportContext,
  { region, side }: ExceptedPlace,
): CodeableConcept {
  return place(context, region, side, true);
}

function place(
  context: ExportContext,
  region: string,
  side: Side | undefined,
  strict: boolean,
): CodeableConcept {
  const { coder, base, language } = context;
  const [own, ...ofRegion] = coder.codings('regions', region, strict);
  const code = placeCode(region, side);
  const text = placeText(coder.display('regions', region), side, language.sides);
  const sided: Coding = {
    system: own?.system ?? codeSystemUrl(base, 'regions'),
    code,
    display: text,
  };
  const beside = side === undefined ? ofRegion : coder.besideSide(region, code, strict);
  return { coding: [sided, ...beside], text };
}

function sideExtension(context: ExportContext, placed: Placed): Extension | undefined {
  switch (context.laterality) {
    case 'extension':
      return lateralityExtension(context, placed.side);
    case 'body-structure': {
      const code = placeCode(placed.region, placed.side);
      context.placed.set(code, placed);
      const valueReference = context.reference(resourceName.bodyStructure(code));
      return { url: BODY_SITE_EXTENSION, valueReference };
    }
    case 'text':
      return undefined;
  }
}

/** Right, left and both are in the free set; the midline is not, and is said by our own code and text. */
function lateralityExtension({ coder }: ExportContext, side: Side): Extension | undefined {
  const id = sideSnomed[side];
  const coding = id === undefined ? undefined : coder.snomed(id);
  if (coding === undefined) return undefined;
  return {
    url: LATERALITY_EXTENSION,
    valueCodeableConcept: { coding: [{ ...coding, ...lateralityDisplay(coding.display) }] },
  };
}

/**
 * A place with its side as a resource of its own, in R4 form; the version adapter turns it into R5's.
 * @see https://hl7.org/fhir/R4/bodystructure.html
 */
export function bodyStructure(context: ExportContext, { region, side }: Placed): BodyStructure {
  const code = placeCode(region, side);
  // One resource stands for the place in negatives too, so it holds no wider code.
  const location = place(context, region, side, true);
  const { text = code } = location;
  return {
    resourceType: 'BodyStructure',
    id: context.id(resourceName.bodyStructure(code)),
    ...(context.narrative && { text: generated(`<p>${escapeXhtml(text)}</p>`) }),
    identifier: [context.statementIdentifier(partName.bodyStructure(code))],
    location,
    locationQualifier: [context.coder.concept('values', `side.${side}`)],
    description: text,
    patient: context.subject,
  };
}
