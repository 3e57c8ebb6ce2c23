import type { Composition, DiagnosticReport, Observation } from 'fhir/r4.js';
import type { Exam } from '../model/exam.ts';
import type { RecordEvent, RecordStatus } from '../model/record-event.ts';
import { english } from '../terminology/languages/language.ts';

/** A draft has no status of its own in FHIR: `partial` says that it may be incomplete and unverified. */
export function reportStatus(status: RecordStatus): DiagnosticReport['status'] {
  return status === 'draft' ? 'partial' : status;
}

/** DetectedIssue has in R5 fewer states than the record; these are in all versions. */
export function issueStatus(status: RecordStatus): 'preliminary' | 'final' | 'entered-in-error' {
  if (status === 'entered-in-error') return status;
  return status === 'draft' || status === 'preliminary' ? 'preliminary' : 'final';
}

/** Composition has fewer states than the record. @see https://hl7.org/fhir/R4/valueset-composition-status.html */
export const compositionStatus: Readonly<Record<RecordStatus, Composition['status']>> = {
  draft: 'preliminary',
  preliminary: 'preliminary',
  final: 'final',
  appended: 'amended',
  amended: 'amended',
  corrected: 'amended',
  cancelled: 'final',
  'entered-in-error': 'entered-in-error',
};

/**
 * Status of the observations of an exam by key. What a later step changed says so; the rest stays final.
 * @see https://hl7.org/fhir/R4/valueset-observation-status.html
 */
export function observationStatus({
  status,
  history,
}: Pick<Exam, 'status' | 'history'>): (key: string) => Observation['status'] {
  switch (status) {
    case 'draft':
    case 'preliminary':
      return () => 'preliminary';
    case 'cancelled':
    case 'entered-in-error':
      return () => status;
    case 'amended':
    case 'corrected': {
      const changed = new Set(history?.flatMap((event) => event.changed ?? []));
      return (key) => (changed.has(key) ? status : 'final');
    }
    default:
      return () => 'final';
  }
}

/**
 * Status of what was taken over from an earlier exam and not looked at again. HL7 defines
 * `preliminary` as initial or interim, where data may be incomplete or unverified.
 * @see https://hl7.org/fhir/R4/valueset-observation-status.html
 */
export function unverifiedStatus(status: Observation['status']): Observation['status'] {
  return status === 'entered-in-error' || status === 'cancelled' ? status : 'preliminary';
}

/** What each step did to the data. @see http://terminology.hl7.org/CodeSystem/v3-DataOperation */
export const dataOperation: Readonly<Record<RecordEvent['action'], string>> = {
  create: 'CREATE',
  release: 'UPDATE',
  sign: 'UPDATE',
  amend: 'UPDATE',
  correct: 'UPDATE',
  append: 'APPEND',
  cancel: 'CANCEL',
  retract: 'NULLIFY',
};

/** Words in place of the conclusion of a report that is entered in error. @see https://hl7.org/fhir/R4/diagnosticreport.html */
export const WITHDRAWN: string = english.texts.withdrawn;
