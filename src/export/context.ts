import type { FhirResource, Identifier, Meta, Observation, Reference } from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import { idsOf } from '../fhir/names/ids.ts';
import {
  type IdentitySystems,
  identitySystems,
  partIdentifier,
  partName,
} from '../fhir/names/part-names.ts';
import { type ProfileName, profileUrl } from '../fhir/names/profile-names.ts';
import { resourceName } from '../fhir/names/resource-names.ts';
import { CANONICAL_BASE } from '../fhir/names/systems.ts';
import { observationStatus } from '../fhir/record-status.ts';
import type { FhirVersion } from '../fhir/version.ts';
import { subjectOf } from '../kinds/registries/meanings.ts';
import type { Exam } from '../model/exam.ts';
import type { Side } from '../model/primitive.ts';
import type { StatementKind } from '../model/statement.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { english, inLanguage, type Language } from '../terminology/language.ts';
import type { CodingRules } from './coding/caller-codings.ts';
import { type Coder, createCoder } from './coding/coder.ts';
import { ownCodes } from './coding/own-codes.ts';
import type { ExportOptions } from './options.ts';
import { existingReference } from './resources/existing.ts';

/** A resource of any version that the library writes. */
export type AnyResource = FhirResource | r5.FhirResource;

/** A region and side. */
export interface Placed {
  readonly region: string;
  readonly side: Side;
}

/** What every exporter of a statement works with. Made once for an export. */
export interface ExportContext {
  readonly exam: Exam;
  readonly catalogue: Catalogue;
  readonly coder: Coder;
  readonly version: FhirVersion;
  readonly base: string;
  readonly narrative: boolean;
  readonly language: Language;
  readonly laterality: NonNullable<ExportOptions['laterality']>;
  /** Places that were named with a side, for the BodyStructure resources; filled as they are named. */
  readonly placed: Map<string, Placed>;
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
  /** The claim of a profile, where the export makes claims. */
  readonly profile: (name: ProfileName) => { readonly meta?: Meta };
  /** Whether a statement stands in the exam; one that a step withdrew does not. */
  readonly isStated: (key: string) => boolean;
  /** Keys of the statements of a kind about one thing: the sensations at a test point. */
  readonly about: (kind: StatementKind, subject: string) => readonly string[];
}

export function createContext(exam: Exam, options: ExportOptions): ExportContext {
  const base = options.canonicalBase ?? CANONICAL_BASE;
  const language = options.language ?? english;
  const catalogue = inLanguage(options.catalogue ?? builtInCatalogue, language);
  const systems = identitySystems(base, options.identity);
  const id = idsOf(systems.exam, exam.id);
  const reference = (name: string): Reference => ({ reference: `urn:uuid:${id(name)}` });
  // A reference alone would not tell the reader which examiner or instrument of the exam is meant.
  const partOf = (name: string): Identifier => partIdentifier(systems.statement, exam.id, name);
  const stated = new Set(exam.statements.map(({ key }) => key));
  const examiners = new Map(exam.examiners.map((examiner) => [examiner.key, examiner]));
  const instruments = new Map(exam.instruments?.map((instrument) => [instrument.key, instrument]));

  return {
    exam,
    catalogue,
    base,
    id,
    reference,
    coder: createCoder({ catalogue, base, rules: codingRules(options), codes: options.codes }),
    language,
    laterality: options.laterality ?? 'extension',
    placed: new Map(),
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
    profile: (name) =>
      options.profiles === true && options.fhirVersion !== 'R4B'
        ? { meta: { profile: [profileUrl(base, name)] } }
        : {},
    isStated: (key) => stated.has(key),
    about: statementsAbout(exam),
    systems,
    examIdentifier: { system: systems.exam, value: exam.id },
    statementIdentifier: partOf,
    trackingIdentifier: (tracking) => ({ system: systems.tracking, value: tracking }),
  };
}

/** What decides which codings of the caller leave. */
export function codingRules(options: ExportOptions): CodingRules {
  return {
    policy: options.snomed ?? 'free-set',
    freeSet: options.freeSet,
    ownCode: ownCodes(
      options.catalogue ?? builtInCatalogue,
      options.canonicalBase ?? CANONICAL_BASE,
    ),
    includeValues: options.includeValues,
  };
}

function statementsAbout({ statements }: Exam): ExportContext['about'] {
  const keys = new Map<string, string[]>();
  for (const statement of statements) {
    const name = `${statement.kind}|${subjectOf(statement).code}`;
    const list = keys.get(name);
    if (list === undefined) keys.set(name, [statement.key]);
    else list.push(statement.key);
  }
  return (kind, subject) => keys.get(`${kind}|${subject}`) ?? [];
}
