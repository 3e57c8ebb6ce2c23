import { filledBy, onlyWhere, type Template } from './annotation.ts';

/**
 * What a response says of itself, as a status that Observation and DiagnosticReport both have.
 * @see https://hl7.org/fhir/R4/valueset-questionnaire-answers-status.html
 */
const status =
  "iif(%resource.status = 'completed', 'final', " +
  "iif(%resource.status = 'amended' or %resource.status = 'entered-in-error', %resource.status, 'preliminary'))";

/** An instant has a time; when a response was written may be told by its day alone. */
const written = '%resource.authored.where(toString().length() > 19)';

/**
 * What every extracted resource takes from the response itself: of whom it is, when and by whom it was
 * written. The answers say no more of that, so a time of examination apart from it is not known.
 */
export function responseHead(): Template {
  return {
    // Stays where an engine does not fill it in.
    status: 'unknown',
    _status: filledBy(status),
    subject: {
      ...referenceTo('%resource.subject'),
      identifier: {
        _system: filledBy('%resource.subject.identifier.system'),
        _value: filledBy('%resource.subject.identifier.value'),
      },
    },
    encounter: referenceTo('%resource.encounter'),
    _effectiveDateTime: filledBy('%resource.authored'),
    _issued: filledBy(written),
    performer: [{ ...onlyWhere('%resource.author'), ...referenceTo('%resource.author') }],
  };
}

/** The response that was extracted from, where it has an id. */
export function fromResponse(): Template {
  return {
    derivedFrom: [
      {
        ...onlyWhere('%resource.id'),
        _reference: filledBy("'QuestionnaireResponse/' + %resource.id"),
      },
    ],
  };
}

function referenceTo(path: string): Template {
  return { _reference: filledBy(`${path}.reference`) };
}
