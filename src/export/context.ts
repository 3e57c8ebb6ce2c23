import type {
  CodeableConcept,
  Coding,
  Extension,
  Identifier,
  Observation,
  Reference,
} from 'fhir/r4.js';
import { codeSystemUrl } from '../fhir/code-systems.ts';
import { idsOf } from '../fhir/ids.ts';
import {
  type IdentitySystems,
  identitySystems,
  partIdentifier,
  partName,
} from '../fhir/part-names.ts';
import { placeCode, placeText } from '../fhir/place.ts';
import { observationStatus } from '../fhir/record-status.ts';
import { CANONICAL_BASE, LATERALITY_EXTENSION } from '../fhir/systems.ts';
import type { FhirVersion } from '../fhir/version.ts';
import type { Exam } from '../model/exam.ts';
import type { Side } from '../model/primitive.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { sideSnomed } from '../terminology/sides.ts';
import { type Coder, createCoder } from './coder.ts';
import { existingReference } from './existing.ts';
import type { ExportOptions } from './options.ts';

/** What every exporter of a statement works with. Made once for an export. */
export interface ExportContext {
  readonly exam: Exam;
  readonly catalogue: Catalogue;
  readonly coder: Coder;
  readonly version: FhirVersion;
  readonly base: string;
  readonly narrative: boolean;
  /** Status of an observation that was made; `changed` tells whether the last step touched it. */
  readonly status: (key: string) => Observation['status'];
  readonly subject: Reference;
  readonly encounter: Reference | undefined;
  /** Who examined: the PractitionerRole where a role is told, else the Practitioner. */
  readonly performer: (examiner: string) => Reference;
  readonly device: (instrument: string) => Reference;
  /** Resource id for a stable name within this exam. */
  readonly id: (name: string) => string;
  readonly reference: (name: string) => Reference;
  readonly statementIdentifier: (key: string) => Identifier;
  readonly trackingIdentifier: (tracking: string) => Identifier;
  readonly examIdentifier: Identifier;
  readonly systems: Required<IdentitySystems>;
  /** Keys of the sensation statements at each test point. */
  readonly sensations: ReadonlyMap<string, readonly string[]>;
}

/** Stable names of the resources of an exam; their ids derive from these. */
export const resourceName = {
  report: 'report',
  composition: 'composition',
  bundle: 'bundle',
  patient: 'patient',
  organization: 'organization',
  encounter: 'encounter',
  statement: (key: string): string => `statement/${key}`,
  media: (key: string): string => `media/${key}`,
  group: (section: string): string => `group/${section}`,
  item: (item: string, at: number): string => `item/${item}/${at}`,
  practitioner: (key: string): string => `practitioner/${key}`,
  role: (key: string): string => `role/${key}`,
  device: (key: string): string => `device/${key}`,
  plan: (key: string): string => `plan/${key}`,
  event: (version: number): string => `event/${version}`,
} as const;

export function createContext(exam: Exam, options: ExportOptions): ExportContext {
  const base = options.canonicalBase ?? CANONICAL_BASE;
  const catalogue = options.catalogue ?? builtInCatalogue;
  const systems = identitySystems(base, options.identity);
  const id = idsOf(systems.exam, exam.id);
  const reference = (name: string): Reference => ({ reference: `urn:uuid:${id(name)}` });
  // A reference alone would not tell the reader which examiner or instrument of the exam is meant.
  const partOf = (name: string): Identifier => partIdentifier(systems.statement, exam.id, name);
  const examiners = new Map(exam.examiners.map((examiner) => [examiner.key, examiner]));
  const instruments = new Map(exam.instruments?.map((instrument) => [instrument.key, instrument]));

  return {
    exam,
    catalogue,
    base,
    id,
    reference,
    coder: createCoder(catalogue, options.snomed ?? 'free-set', base),
    version: options.fhirVersion ?? 'R4',
    narrative: options.narrative ?? true,
    status: observationStatus(exam),
    subject: existingReference(exam.subject) ?? reference(resourceName.patient),
    encounter:
      exam.encounter && (existingReference(exam.encounter) ?? reference(resourceName.encounter)),
    performer: (key) => {
      const examiner = examiners.get(key);
      if (examiner?.role !== undefined) return reference(resourceName.role(key));
      const existing = existingReference(examiner);
      if (existing === undefined) return reference(resourceName.practitioner(key));
      return { ...existing, identifier: partOf(partName.examiner(key)) };
    },
    device: (key) => {
      const existing = existingReference(instruments.get(key));
      if (existing === undefined) return reference(resourceName.device(key));
      return { ...existing, identifier: partOf(partName.instrument(key)) };
    },
    sensations: sensationsOf(exam),
    systems,
    examIdentifier: { system: systems.exam, value: exam.id },
    statementIdentifier: partOf,
    trackingIdentifier: (tracking) => ({ system: systems.tracking, value: tracking }),
  };
}

function sensationsOf({ statements }: Exam): Map<string, string[]> {
  const keys = new Map<string, string[]>();
  for (const statement of statements) {
    if (statement.kind !== 'sensation') continue;
    const list = keys.get(statement.point);
    if (list === undefined) keys.set(statement.point, [statement.key]);
    else list.push(statement.key);
  }
  return keys;
}

/**
 * The place: our own code of region and side, the mapped codes of the region, words that name the
 * side, and the side as the standard extension where a SNOMED CT code for it may leave.
 */
export function bodySite(
  context: ExportContext,
  region: string,
  side: Side | undefined,
): CodeableConcept {
  const { coder, catalogue, base } = context;
  const row = catalogue.regions.get(region);
  const [own, ...mapped] = coder.codings('regions', region);
  const text = placeText(row?.display ?? region, side);
  const sided: Coding = {
    system: own?.system ?? codeSystemUrl(base, 'regions'),
    code: placeCode(region, side),
    display: text,
  };
  const laterality = side === undefined ? undefined : lateralityExtension(context, side);
  return {
    ...(laterality !== undefined && { extension: [laterality] }),
    coding: [sided, ...mapped],
    text,
  };
}

/** Right, left and both are in the free set; the midline is not, and is said by our own code and text. */
function lateralityExtension({ coder }: ExportContext, side: Side): Extension | undefined {
  const id = sideSnomed[side];
  const coding = id === undefined ? undefined : coder.snomed(id);
  if (coding === undefined) return undefined;
  // No display: the value set of the extension prints other words than the terms do.
  const { display: _, ...plain } = coding;
  return { url: LATERALITY_EXTENSION, valueCodeableConcept: { coding: [plain] } };
}
