import type { Detail } from '../export/detail.ts';
import type { BundleType, ExportOptions } from '../export/options.ts';
import {
  type MasterData,
  type MasterDataMode,
  masterDataKinds,
} from '../export/resources/master-data.ts';
import { targets } from '../export/target/guides.ts';
import type { SnomedPolicy } from '../fhir/licence/snomed-policy.ts';
import type { FhirVersion } from '../fhir/version.ts';
import { type OptionTable, type OptionValues, textOption } from './arguments.ts';
import type { Choices } from './command.ts';
import { UsageError } from './failure.ts';
import { languageOf, languageOption } from './language.ts';

export const helpOption: OptionTable = {
  help: { type: 'flag', help: 'Show this text' },
};

export const clinicOption: OptionTable = {
  clinic: {
    type: 'text',
    value: 'FILE',
    help: 'What the clinic has decided, as clinic.schema.json has it; options take precedence',
  },
};

export const fhirOption: OptionTable = {
  fhir: {
    type: 'text',
    values: ['r4', 'r4b', 'r5'],
    fallback: 'r4',
    help: 'FHIR version',
  },
};

const masterDataModes: readonly MasterDataMode[] = ['match', 'reference', 'own'];

const masterDataOptions: OptionTable = Object.fromEntries(
  masterDataKinds.map((kind) => [
    kind,
    { type: 'text', values: masterDataModes, help: `The same for ${kind} resources alone` },
  ]),
);

export const identityOption: OptionTable = {
  identity: {
    type: 'text',
    value: 'URI',
    help: 'A URI of yours that the ids of exams stand under; a transaction needs it',
  },
};

/** How an exam becomes a bundle. */
export const bundleOptions: OptionTable = {
  ...fhirOption,
  ...languageOption,
  bundle: {
    type: 'text',
    values: ['collection', 'transaction', 'document'],
    fallback: 'collection',
    help: 'Kind of bundle',
  },
  detail: {
    type: 'text',
    values: ['everything', 'notable', 'report'],
    fallback: 'everything',
    help: 'How much of the exam leaves: all, what is not merely normal or absent, the report alone',
  },
  target: {
    type: 'text',
    values: targets,
    help: 'Claim the profiles of this guide (R4); what the exam lacks for it is an error',
  },
  transaction: {
    type: 'text',
    values: ['put', 'conditional'],
    fallback: 'put',
    help: 'With --bundle transaction: update by our ids, or by identifier where the server gives ids',
  },
  ...identityOption,
  'master-data': {
    type: 'text',
    values: masterDataModes,
    fallback: 'match',
    help:
      'With --bundle transaction: people, places and devices are matched and never overwritten, ' +
      'only referred to, or our own to write',
  },
  ...masterDataOptions,
  snomed: {
    type: 'text',
    values: ['none', 'free-set', 'licensed'],
    fallback: 'free-set',
    help: 'SNOMED CT codes that may leave: none, those published free of charge, or all',
  },
  'snomed-holder': {
    type: 'text',
    value: 'NAME',
    help: 'With --snomed licensed: who holds the licence',
  },
  'snomed-edition': {
    type: 'text',
    value: 'URI',
    help: 'With --snomed licensed: edition and release as a SNOMED CT version URI',
  },
};

export const outOption: OptionTable = {
  out: {
    type: 'text',
    value: 'PATH',
    help: 'Write to this file instead of standard output; it appears whole or not at all',
  },
};

export const formatOption: OptionTable = {
  format: {
    type: 'text',
    values: ['text', 'json', 'operation-outcome'],
    fallback: 'text',
    help: 'How issues are written to standard error',
  },
};

export const issueOptions: OptionTable = {
  ...formatOption,
  'include-values': {
    type: 'flag',
    help: 'Show the offending values in issues: they can be patient data',
  },
};

const versions: ReadonlyMap<string, FhirVersion> = new Map([
  ['r4', 'R4'],
  ['r4b', 'R4B'],
  ['r5', 'R5'],
]);

export function fhirVersionOf({ options, clinic }: Choices): FhirVersion {
  return versions.get(textOption(options, 'fhir') ?? '') ?? clinic?.export.fhirVersion ?? 'R4';
}

const bundleTypes: ReadonlyMap<string, BundleType> = new Map([
  ['collection', 'collection'],
  ['transaction', 'transaction'],
  ['document', 'document'],
]);

/** Export options of a call. Throws UsageError where a licence is claimed without saying whose. */
export function exportOptionsOf(choices: Choices): ExportOptions {
  const { options, clinic } = choices;
  const { displays } = languageOf(choices);
  const { language: _, ...decided } = clinic?.export ?? {};
  const { bundleType = 'collection', detail = 'everything', snomed = 'free-set' } = decided;
  return {
    ...decided,
    ...(displays.tag !== 'en' && { language: displays }),
    fhirVersion: fhirVersionOf(choices),
    bundleType: bundleTypes.get(textOption(options, 'bundle') ?? '') ?? bundleType,
    transaction: transactionOf(options) ?? decided.transaction ?? 'put',
    ...identityOf(choices),
    masterData: masterDataOf(options, decided.masterData),
    detail: details.find((one) => one === textOption(options, 'detail')) ?? detail,
    snomed: snomedPolicyOf(options) ?? snomed,
    ...targetOf(options),
  };
}

function transactionOf(options: OptionValues): ExportOptions['transaction'] {
  const given = textOption(options, 'transaction');
  return given === 'conditional' || given === 'put' ? given : undefined;
}

function targetOf(options: OptionValues): Pick<ExportOptions, 'target'> {
  const target = targets.find((one) => one === textOption(options, 'target'));
  return target === undefined ? {} : { target };
}

export function identityOf({ options, clinic }: Choices): Pick<ExportOptions, 'identity'> {
  const identity = textOption(options, 'identity') ?? clinic?.export.identity;
  return identity === undefined ? {} : { identity };
}

const details: readonly Detail[] = ['everything', 'notable', 'report'];

function masterDataOf(options: OptionValues, decided: ExportOptions['masterData']): MasterData {
  const modeIn = (name: string): MasterDataMode | undefined =>
    masterDataModes.find((mode) => mode === textOption(options, name));
  const all = modeIn('master-data');
  const before = (kind: keyof MasterData): MasterDataMode =>
    (typeof decided === 'object' ? decided[kind] : decided) ?? 'match';
  return Object.fromEntries(
    masterDataKinds.map((kind) => [kind, modeIn(kind) ?? all ?? before(kind)]),
  );
}

function snomedPolicyOf(options: OptionValues): SnomedPolicy | undefined {
  const policy = textOption(options, 'snomed');
  const holder = textOption(options, 'snomed-holder');
  const edition = textOption(options, 'snomed-edition');
  if (policy === 'licensed') {
    if (holder === undefined || edition === undefined) {
      throw new UsageError('--snomed licensed needs --snomed-holder and --snomed-edition');
    }
    return { licensed: { holder, edition } };
  }
  if (holder !== undefined || edition !== undefined) {
    throw new UsageError('--snomed-holder and --snomed-edition belong to --snomed licensed');
  }
  return policy === 'none' || policy === 'free-set' ? policy : undefined;
}
