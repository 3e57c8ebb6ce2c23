import type { ExportOptions } from '../../export/options.ts';
import type { Exporter } from '../../export/to-bundle.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { resourcesApart } from '../../fhir/references.ts';
import { hasErrors, type Issue, type Outcome, success } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { createCatalogue } from '../../terminology/catalogue.ts';
import { codesOfRows } from '../../terminology/code-map/adopter-codes.ts';
import type { AdopterCodes } from '../../terminology/code-map/entry.ts';
import type { Validation } from '../../validate/validate-bundle.ts';
import { type Conversion, prepareFields } from '../conversion.ts';
import { countFates, type LedgerCounts, type LedgerEntry } from '../exams/ledger.ts';
import { isFhirMapping } from '../mapping/is-fhir.ts';
import { confirmFindings } from '../proposals/apply.ts';
import type { Proposal } from '../proposals/proposal.ts';
import type { RawUnit } from '../record/record.ts';
import type { ConvertSettings } from './options.ts';

/** A line for one of the files of a run. */
export interface OutputLine {
  readonly file: string;
  readonly text: string;
}

/** What became of one unit. */
export interface UnitOutcome {
  /** None: the unit goes to quarantine, for the errors among the issues. */
  readonly exam?: { readonly id: string; readonly lines: readonly OutputLine[] };
  readonly issues: readonly Issue[];
  readonly counts: LedgerCounts;
}

export interface Converter {
  readonly conversion: Conversion;
  readonly convert: (units: readonly RawUnit[]) => UnitOutcome[];
}

export type ConverterOutcome = { readonly issues: readonly Issue[] } & Partial<Converter>;

type Validate = (bundle: unknown) => Validation;

/** A converter for these settings, or what is wrong with the mapping. */
export async function createConverter(settings: ConvertSettings): Promise<ConverterOutcome> {
  const added = settings.additions && createCatalogue(settings.additions);
  if (added !== undefined && added.value === undefined) return { issues: added.issues };
  const catalogue = added?.value;
  // What a run does not use is not loaded: the reader of FHIR, the export, the validator.
  const prepare = isFhirMapping(settings.mapping)
    ? (await import('../any-conversion.ts')).prepareConversion
    : prepareFields;
  const prepared = prepare(settings.mapping, catalogue ? { catalogue } : {});
  const conversion = prepared.value;
  if (conversion === undefined) return { issues: prepared.issues };
  const mapped = codesOfRows(settings.codeMap, conversion.catalogue, settings.canonicalBase);
  if (!mapped.ok) return { issues: mapped.issues };
  const exporter = await exporterOf(settings, conversion, mapped.value);
  const validate = await validatorOf(settings);
  const confirmed = byExam(settings.confirmed ?? []);
  return {
    issues: [...prepared.issues, ...mapped.issues],
    conversion,
    convert: (units) =>
      conversion.convert(units).map(({ exam, issues, ledger }): UnitOutcome => {
        const counts = countFates(ledger);
        if (exam === undefined) return { issues, counts };
        const stated = withConfirmed(exam, confirmed, conversion);
        if (stated.value === undefined) return { issues: [...issues, ...stated.issues], counts };
        const written = writeExam(stated.value, settings, exporter, validate);
        const all = [...issues, ...stated.issues, ...written.issues];
        if (written.lines === undefined) return { issues: all, counts };
        const lines = [...written.lines, ...ledgerLine(exam, ledger, settings)];
        return { exam: { id: exam.id, lines }, issues: all, counts };
      }),
  };
}

type Confirmed = ReadonlyMap<string, readonly Proposal[]>;

function byExam(proposals: readonly Proposal[]): Confirmed {
  const exams = new Map<string, Proposal[]>();
  for (const one of proposals) {
    if (one.confirmed === undefined) continue;
    const known = exams.get(one.exam) ?? [];
    exams.set(one.exam, known);
    known.push(one);
  }
  return exams;
}

/**
 * The exam with what was confirmed of its notes. One of which a confirmed statement can not be taken is set
 * aside: without the statement it would say less than a person has confirmed.
 */
function withConfirmed(exam: Exam, confirmed: Confirmed, { catalogue }: Conversion): Outcome<Exam> {
  const mine = confirmed.get(exam.id);
  return mine === undefined ? success(exam) : confirmFindings(exam, mine, { catalogue });
}

/** The validator of the version asked for; exams are not validated as FHIR. */
async function validatorOf({ to, fhirVersion }: ConvertSettings): Promise<Validate> {
  if (to === 'exams') {
    return () => ({ conformance: 'conforms', valid: true, issues: [], unchecked: [] });
  }
  switch (fhirVersion) {
    case 'R4B':
      return (await import('../../validate/versions/r4b.ts')).validateBundle;
    case 'R5':
      return (await import('../../validate/versions/r5.ts')).validateBundle;
    default:
      return (await import('../../validate/versions/r4.ts')).validateBundle;
  }
}

interface Written {
  /** None where the exam cannot be exported as valid FHIR. */
  readonly lines?: readonly OutputLine[];
  readonly issues: readonly Issue[];
}

/** Settings that are options of the export under the same name. */
const ofExport = [
  'fhirVersion',
  'bundleType',
  'snomed',
  'language',
  'canonicalBase',
  'identity',
  'masterData',
  'transaction',
  'detail',
  'target',
  'laterality',
  'profiles',
  'filing',
] as const satisfies readonly (keyof ConvertSettings & keyof ExportOptions)[];

/** The export as it was asked for; none where exams are written. */
async function exporterOf(
  settings: ConvertSettings,
  { catalogue, plan }: Conversion,
  codes: AdopterCodes | undefined,
): Promise<Outcome<Exporter> | undefined> {
  if (settings.to === 'exams') return undefined;
  const { prepareCheckedExport, prepareExport } = await import('../../export/to-bundle.ts');
  const given = ofExport.flatMap((name) =>
    settings[name] === undefined ? [] : [[name, settings[name]] as const],
  );
  const options: ExportOptions = Object.fromEntries(given);
  // An exam out of FHIR was given its id after it was checked.
  const prepare = plan === undefined ? prepareExport : prepareCheckedExport;
  return prepare({
    ...options,
    catalogue,
    ...(codes !== undefined && { codes }),
    allowDraft: true,
  });
}

function writeExam(
  exam: Exam,
  settings: ConvertSettings,
  exporter: Outcome<Exporter> | undefined,
  validate: Validate,
): Written {
  if (exporter === undefined) {
    return { lines: [{ file: 'exams.ndjson', text: JSON.stringify(exam) }], issues: [] };
  }
  const { value: bundle, issues } = exporter.ok ? exporter.value(exam) : exporter;
  // Warnings about the exam were told when it was made.
  const fresh = issues.filter(({ severity }) => severity === 'error');
  if (bundle === undefined) return { issues: fresh };
  const validation = validate(bundle);
  if (hasErrors(validation.issues)) return { issues: [...fresh, ...validation.issues] };
  if (settings.to !== 'resources') {
    return { lines: [{ file: 'bundles.ndjson', text: toJson(bundle) }], issues: fresh };
  }
  const lines = resourcesApart(bundle.entry ?? []).map((resource) => ({
    file: `${resource.resourceType}.ndjson`,
    text: toJson(resource),
  }));
  return { lines, issues: fresh };
}

function ledgerLine(
  exam: Exam,
  ledger: readonly LedgerEntry[],
  { ledger: asked }: ConvertSettings,
): OutputLine[] {
  if (asked !== true) return [];
  return [{ file: 'ledger.ndjson', text: JSON.stringify({ exam: exam.id, fields: ledger }) }];
}
