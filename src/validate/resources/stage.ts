import { isAbsolute } from '../bundles/resolve.ts';
import type { Property } from '../elements/definitions.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { Stage } from '../walk/stage.ts';
import { checkAnswers } from './answers.ts';
import { checkCodeSystem } from './code-systems.ts';
import { checkConceptMap } from './concept-maps.ts';
import { checkQuestionnaire } from './questionnaires.ts';
import { checkSearchParameter } from './search-parameters.ts';
import { checkStructureMap } from './structure-maps.ts';
import { checkStructure } from './structures.ts';
import { checkValueSet } from './value-sets.ts';

/** The stage of rules that hold for one type of resource, beyond its elements and invariants. */
export const resourceStage: Stage = {
  objects: {
    QuestionnaireResponse: checkAnswers,
    Questionnaire: checkQuestionnaire,
    CodeSystem: checkCodeSystem,
    ValueSet: checkValueSet,
    ConceptMap: checkConceptMap,
    StructureDefinition: checkStructure,
    SearchParameter: checkSearchParameter,
    StructureMap: checkStructureMap,
  },
  primitives: { uri: checkCanonicalUrl },
  appliesTo: isCanonicalUrl,
};

/** The url of a resource that others refer to by it. */
function isCanonicalUrl({ path }: Property): boolean {
  return /^(?!Extension)[A-Z][A-Za-z]+\.url$/.test(path);
}

/** @see https://hl7.org/fhir/R5/canonicalresource-definitions.html#CanonicalResource.url: "An absolute URI" */
function checkCanonicalUrl(value: unknown, scope: Scope): void {
  if (typeof value !== 'string' || isAbsolute(value)) return;
  const rule = 'https://hl7.org/fhir/R5/canonicalresource-definitions.html#CanonicalResource.url';
  report(scope, 'invalid-value', { reason: 'canonical-url' }, { rule, value });
}
