import { parseCheckSettings } from '../checks/settings/parse-settings.ts';
import { germanChecks } from '../checks/words/german.ts';
import { isPlainObject } from '../data/plain-data.ts';
import { checkAgainstSchema } from '../data/schema-check.ts';
import { type BudgetOption, within } from '../issues/budget.ts';
import {
  failure,
  hasErrors,
  type Issue,
  issuesBelow,
  type Outcome,
  success,
} from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { isOfStructure } from '../model/schema-issues.ts';
import { examForms } from '../model/words.ts';
import { builtInCatalogue, type Catalogue, createCatalogue } from '../terminology/catalogue.ts';
import { codesOfRows } from '../terminology/code-map/adopter-codes.ts';
import type { AdopterCodes } from '../terminology/code-map/entry.ts';
import { german } from '../terminology/languages/de.ts';
import { inLanguage } from '../terminology/languages/language.ts';
import { codeIssues, settingClashes } from './check-codes.ts';
import { exportIssues, exportPart } from './check-export.ts';
import type { Clinic } from './clinic.ts';
import type { ClinicChecks, ClinicFile } from './clinic-file.ts';
import { clinicValidator } from './compiled/clinic.js';
import { issue } from './issue.ts';
import { ownRowIssues, ownRows } from './own-rows.ts';
import { decided, UNDECIDED, undecidedIssue, undecidedParts } from './undecided.ts';

/**
 * Reads what a clinic decides from its file, and checks the whole of it: names, types, codes, and
 * settings that do not go together.
 *
 * @param value The file as plain data.
 * @param options `budget`: what the call may take.
 * @returns The clinic, whose parts are the options of what the library does; with it a remark for each
 *   thing that is still undecided. It fails where anything does not fit `clinic.schema.json`, where
 *   `createCatalogue`, `adopterCodes` or `parseCheckSettings` would, where a code is unknown, and where
 *   two settings cannot both hold.
 * @example
 * const clinic = orThrow('read the clinic file', parseClinic({ format: 'face-neck-clinic/1' }));
 * const bundle = toBundleOrThrow(exam, clinic.export);
 */
export function parseClinic(
  value: unknown,
  { budget }: { readonly budget?: BudgetOption } = {},
): Outcome<Clinic> {
  return within(
    'catalogue',
    budget,
    () => read(value),
    (why) => failure([endedIssue(why)]),
  );
}

function read(value: unknown): Outcome<Clinic> {
  const misshapen = checkAgainstSchema(value, {
    validator: clinicValidator,
    forms: examForms,
    includeValues: false,
  });
  if (hasErrors(misshapen)) {
    return failure(cutIssues([...misshapen, ...issuesOfParts(value)]));
  }
  const file = value as ClinicFile; // the schema, generated from this type, has accepted it
  const own = catalogueOf(file);
  const checks = checksIssues(file.checks);
  const catalogue = own.value ?? builtInCatalogue;
  // With rows that could not be taken, each code of them would be told as unknown.
  const codes = codesOfRows(own.ok ? file.codeMap : undefined, catalogue, file.canonicalBase);
  const settings = checks.some(isOfStructure) ? undefined : file.checks;
  const known = own.ok ? knownIssues(file.words, settings, catalogue) : [];
  const open = undecidedParts(file);
  const issues = cutIssues([
    ...misshapen,
    ...own.issues,
    ...exportIssues(file),
    ...codes.issues,
    ...checks,
    ...known,
    ...open
      .filter((part) => part !== 'system' || own.ok)
      .map((part) => undecidedIssue(part, 'information')),
  ]);
  if (hasErrors(issues)) return failure(issues);
  return success(clinicOf(file, catalogue, codes.value), issues);
}

/** Where the file as a whole does not fit, its two large parts are looked at nevertheless. */
function issuesOfParts(value: unknown): readonly Issue[] {
  if (!isPlainObject(value)) return [];
  const { catalogue, checks } = value as Partial<ClinicFile>; // each looks at what it is given
  return [
    ...(isPlainObject(catalogue)
      ? catalogueOf({ format: 'face-neck-clinic/1', catalogue }).issues
      : []),
    ...(isPlainObject(checks) ? checksIssues(checks) : []),
  ];
}

function catalogueOf({ catalogue: rows }: ClinicFile): Outcome<Catalogue> {
  if (rows === undefined) return success(builtInCatalogue);
  if (rows.system === UNDECIDED) {
    // The rest of the rows can be looked at whatever their system is called.
    const made = createCatalogue({ ...rows, system: 'urn:face-neck-fhir:undecided' });
    const refused = made.ok && ownRows(rows).length > 0 ? [undecidedIssue('system')] : [];
    const issues = [...refused, ...issuesBelow(['catalogue'], made.issues)];
    return hasErrors(issues) ? failure(issues) : success(builtInCatalogue, issues);
  }
  const made = createCatalogue(rows);
  const issues = issuesBelow(
    ['catalogue'],
    [...made.issues, ...(made.ok ? ownRowIssues(rows) : [])],
  );
  return made.ok && !hasErrors(issues) ? success(made.value, issues) : failure(issues);
}

const ofOneExam = ['judgements', 'dismissals'] as const;

function checksIssues(checks: ClinicChecks = {}): readonly Issue[] {
  const { ruleSets, ...rest } = checks;
  const own = decided(ruleSets);
  const settings = { ...rest, ...(own !== undefined && { ruleSets: own }) };
  return [
    ...issuesBelow(['checks'], parseCheckSettings(settings).issues),
    ...ofOneExam
      .filter((name) => Object.hasOwn(checks, name))
      .map((name) => issue('unknown-property', ['checks', name], { reason: 'of-one-exam' })),
  ];
}

function knownIssues(
  words: ClinicFile['words'] = {},
  checks: ClinicChecks = {},
  catalogue: Catalogue,
): readonly Issue[] {
  return [...codeIssues({ words, checks }, catalogue), ...settingClashes(checks, catalogue)];
}

/** Every part as the options of what uses it. */
function clinicOf(file: ClinicFile, catalogue: Catalogue, codes: AdopterCodes | undefined): Clinic {
  const { canonicalBase, catalogue: rows, codeMap, words, checks = {} } = file;
  const tag = decided(file.language) ?? 'en';
  const identity = decided(file.identity);
  const snomed = decided(file.snomed);
  const ruleSets = decided(checks.ruleSets);
  const { ruleSets: _, ...settings } = checks;
  const exported = exportPart(file);
  const { filing } = exported;
  const whose = {
    ...(identity !== undefined && { identity }),
    ...(canonicalBase !== undefined && { canonicalBase }),
  };
  const spoken = tag === 'de' ? { language: german } : {};
  const coded = codes === undefined ? {} : { codes };
  const policy = snomed === undefined ? {} : { snomed };
  return {
    file,
    catalogue,
    language: tag,
    undecided: undecidedParts(file),
    export: { ...exported, ...policy, ...whose, ...spoken, ...coded, catalogue },
    read: { ...whose, ...spoken, ...coded, ...(filing && { filing }), catalogue },
    checks: {
      ...settings,
      ...(ruleSets !== undefined && { ruleSets }),
      catalogue: tag === 'de' ? inLanguage(catalogue, german) : catalogue,
      ...(tag === 'de' && { words: germanChecks }),
    },
    form: { language: tag, catalogue, ...(canonicalBase !== undefined && { canonicalBase }) },
    find: { catalogue, ...(words !== undefined && { words }) },
    convert: {
      ...exported,
      ...policy,
      ...whose,
      ...spoken,
      ...(rows !== undefined && ownRows(rows).length > 0 && { additions: rows }),
      ...(codeMap !== undefined && { codeMap }),
    },
  };
}
