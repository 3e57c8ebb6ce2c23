import type {
  Attachment,
  FhirResource,
  Identifier,
  Meta,
  Observation,
  Reference,
} from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import type { Filing } from '../fhir/filing.ts';
import {
  identityOf,
  instrumentIdentity,
  organizationIdentity,
  roleIdentity,
} from '../fhir/names/identity.ts';
import { type Identity, idsOf, type SharedType, sharedId } from '../fhir/names/ids.ts';
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
import type { ExamSignature } from '../fhir/signature.ts';
import type { FhirVersion } from '../fhir/version.ts';
import { subjectOf } from '../kinds/registries/meanings.ts';
import type { Exam } from '../model/exam.ts';
import type { Side } from '../model/primitive.ts';
import type { StatementKind } from '../model/statement.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { english, inLanguage, type Language } from '../terminology/languages/language.ts';
import type { CodingRules } from './coding/caller-codings.ts';
import { type Coder, createCoder } from './coding/coder.ts';
import { ownCodes } from './coding/own-codes.ts';
import { type Detail, withDetail } from './detail.ts';
import type { ExportOptions } from './options.ts';
import {
  conditionalReference,
  existingReference,
  type MasterDataKind,
  masterDataMode,
  type Stated,
} from './resources/master-data.ts';
import { presentedForms } from './resources/presented-form.ts';

/** A resource of any version that the library writes. */
export type AnyResource = FhirResource | r5.FhirResource;

/** A region and side. */
export interface Placed {
  readonly region: string;
  readonly side: Side;
}

/** What every exporter of a statement works with. Made once for an export. */
export interface ExportContext {
  /** With the statements that leave. */
  readonly exam: Exam;
  readonly detail: Detail;
  /** How many statements do not leave. */
  readonly leftOut: number;
  readonly catalogue: Catalogue;
  readonly coder: Coder;
  readonly version: FhirVersion;
  readonly base: string;
  readonly narrative: boolean;
  readonly language: Language;
  readonly filing: Filing;
  /** The report as people read it. */
  readonly presentedForms: readonly Attachment[];
  readonly signatures: readonly ExamSignature[];
  /** Whether they leave as a document of the chart too. */
  readonly filed: boolean;
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
  /** Whether the resource of that stable name has an identity beyond the exam. */
  readonly isShared: (name: string) => boolean;
  /**
   * The reference to whoever or whatever no resource is written for; undefined where one is. A
   * document holds everyone whom it names.
   */
  readonly outside: (kind: MasterDataKind, stated: Stated | undefined) => Reference | undefined;
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

/** What an export works with whatever the exam. Made once, also for many exams. */
export interface ExportSettings {
  readonly options: ExportOptions;
  readonly base: string;
  readonly language: Language;
  /** In that language. */
  readonly catalogue: Catalogue;
  readonly rules: CodingRules;
  readonly coder: Coder;
}

/** @param options without issues of `optionIssues` */
export function exportSettings(options: ExportOptions): ExportSettings {
  const { canonicalBase: base = CANONICAL_BASE, language = english, codes } = options;
  const catalogue = inLanguage(options.catalogue ?? builtInCatalogue, language);
  const rules = codingRules(options);
  const coder = createCoder({ catalogue, base, rules, codes });
  return { options, base, language, catalogue, rules, coder };
}

export function createContext(whole: Exam, settings: ExportSettings): ExportContext {
  const { options, base, language, catalogue, coder } = settings;
  const detail = options.detail ?? 'everything';
  const { exam, leftOut } = withDetail(whole, detail, catalogue);
  const systems = identitySystems(base, options.identity);
  const ownId = idsOf(systems.exam, exam.id);
  const shared = sharedIds(exam, systems.exam);
  const id = (name: string): string => shared.get(name) ?? ownId(name);
  const outside = outsideOf(options);
  const reference = (name: string): Reference => ({ reference: `urn:uuid:${id(name)}` });
  // A reference alone would not tell the reader which examiner or instrument of the exam is meant.
  const partOf = (name: string): Identifier => partIdentifier(systems.statement, exam.id, name);
  const forms = presentedForms(whole, options.presentedForms);
  const stated = new Set(exam.statements.map(({ key }) => key));
  const examiners = new Map(exam.examiners.map((examiner) => [examiner.key, examiner]));
  const instruments = new Map(exam.instruments?.map((instrument) => [instrument.key, instrument]));

  return {
    exam,
    detail,
    leftOut,
    catalogue,
    base,
    id,
    reference,
    coder,
    language,
    laterality: options.laterality ?? 'extension',
    placed: new Map(),
    version: options.fhirVersion ?? 'R4',
    narrative: options.narrative ?? true,
    filing: options.filing ?? {},
    presentedForms: forms,
    signatures: detail === 'everything' ? (options.signatures ?? []) : [],
    filed: forms.length > 0 && isFiled(options),
    status: observationStatus(exam),
    isShared: (name) => shared.has(name),
    outside,
    subject: outside('patient', exam.subject) ?? reference(resourceName.patient),
    encounter:
      exam.encounter && (outside('encounter', exam.encounter) ?? reference(resourceName.encounter)),
    performer: (key) => {
      const examiner = examiners.get(key);
      const hasRole = examiner?.role !== undefined;
      const name = hasRole ? resourceName.role(key) : resourceName.practitioner(key);
      const existing = hasRole ? undefined : outside('practitioner', examiner);
      if (existing === undefined && !shared.has(name)) return reference(name);
      return { ...(existing ?? reference(name)), identifier: partOf(partName.examiner(key)) };
    },
    device: (key) => ({
      ...(outside('device', instruments.get(key)) ?? reference(resourceName.device(key))),
      identifier: partOf(partName.instrument(key)),
    }),
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

function isFiled({ documentReference, detail }: ExportOptions): boolean {
  return documentReference ?? detail === 'report';
}

const resourceTypes: Readonly<Record<MasterDataKind, string>> = {
  patient: 'Patient',
  practitioner: 'Practitioner',
  organization: 'Organization',
  encounter: 'Encounter',
  device: 'Device',
};

function outsideOf({ bundleType, masterData }: ExportOptions): ExportContext['outside'] {
  return (kind, stated) => {
    if (stated === undefined || (bundleType === 'document' && kind !== 'device')) return undefined;
    const existing = existingReference(stated);
    if (existing !== undefined || bundleType !== 'transaction') return existing;
    return masterDataMode(masterData, kind) === 'reference'
      ? conditionalReference(resourceTypes[kind], stated)
      : undefined;
  };
}

/**
 * Ids of what has an identity beyond the exam, by stable name. Of two examiners with one identity the
 * second keeps a resource of the exam, since the two may say different things.
 */
function sharedIds(exam: Exam, examSystem: string): ReadonlyMap<string, string> {
  const { subject, organization, encounter, examiners, instruments = [] } = exam;
  const ids = new Map<string, string>();
  const add = (name: string, type: SharedType, identity: Identity | undefined): void => {
    if (identity !== undefined) ids.set(name, sharedId(type, identity));
  };
  add(resourceName.patient, 'Patient', identityOf(subject, examSystem));
  add(resourceName.organization, 'Organization', organizationIdentity(organization, examSystem));
  add(resourceName.encounter, 'Encounter', identityOf(encounter, examSystem));
  const known = new Set<string>();
  for (const examiner of examiners) {
    const person = identityOf(examiner, examSystem);
    const word = JSON.stringify(person);
    if (person === undefined || known.has(word)) continue;
    known.add(word);
    add(resourceName.practitioner(examiner.key), 'Practitioner', person);
    const role = roleIdentity(examiner, organization, examSystem);
    add(resourceName.role(examiner.key), 'PractitionerRole', role);
  }
  for (const one of instruments) {
    add(resourceName.device(one.key), 'Device', instrumentIdentity(one, examSystem));
  }
  return ids;
}

/** What decides which codings of the caller leave. */
function codingRules(options: ExportOptions): CodingRules {
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
