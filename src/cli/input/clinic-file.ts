import type { Clinic } from '../../clinic/clinic.ts';
import { parseClinic } from '../../clinic/parse-clinic.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { failure, type Outcome } from '../../issues/issue.ts';
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
