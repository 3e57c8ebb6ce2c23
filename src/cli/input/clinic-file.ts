import type { Clinic } from '../../clinic/clinic.ts';
import { parseClinic } from '../../clinic/parse-clinic.ts';
import { undecidedIssue } from '../../clinic/undecided.ts';
import type { ExportOptions } from '../../export/options.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { failure, type Issue, type Outcome } from '../../issues/issue.ts';
import { locatedInJson } from '../../validate/text/validate-text.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { textFile } from './text-file.ts';

/** A clinic file with the line and column of each issue. */
export async function readClinic(io: Call['io'], file: string): Promise<Outcome<Clinic>> {
  const text = (await textFile(io, file)).replace(/^\uFEFF/, '');
  const json = fromJson(text);
  if (!json.ok) return failure(json.issues);
  const parsed = parseClinic(json.value);
  return { ...parsed, issues: locatedInJson(text)([...json.issues, ...parsed.issues]) };
}

/**
 * The clinic that `--clinic` names; undefined where the file cannot be used, which has been told. What
 * is still undecided is told by the command `clinic` alone.
 */
export async function clinicOf({
  io,
  options,
}: Pick<Call, 'io' | 'options'>): Promise<Clinic | undefined> {
  const file = textOption(options, 'clinic') ?? '';
  const { value, issues } = await readClinic(io, file);
  const told = issues.filter(({ severity }) => severity !== 'information');
  await writeIssues(io, issueFormatOf(options), { input: file }, told);
  return value;
}

/**
 * Whether bundles to be stored have no identity, because the clinic has not decided on one; it is told
 * once, at its line, and not for each exam.
 */
export async function lacksIdentity(
  { io, options, clinic }: Call,
  { bundleType, identity }: Pick<ExportOptions, 'bundleType' | 'identity'>,
): Promise<boolean> {
  if (bundleType !== 'transaction' || identity !== undefined) return false;
  if (clinic?.undecided.includes('identity') !== true) return false;
  const file = textOption(options, 'clinic') ?? '';
  const issues: readonly Issue[] = [undecidedIssue('identity')];
  const located = locatedInJson(await textFile(io, file))(issues);
  await writeIssues(io, issueFormatOf(options), { input: file }, located);
  return true;
}
