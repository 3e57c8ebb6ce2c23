/// <reference types="node" />
import { readdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fromJson } from '../../fhir/json/from-json.ts';
import { hasErrors, type Issue } from '../../issues/issue.ts';
import type { Profiles } from '../../validate/profiles/compile.ts';
import type { OptionTable } from '../arguments.ts';
import { fileFailure } from '../failure.ts';
import type { CliIo } from '../io.ts';
import { fromLine, type IssueFormat, writeIssues } from '../output/issue-writer.ts';
import type { Validator } from '../validators.ts';
import { type Document, documents } from './documents.ts';

export const profileOption: OptionTable = {
  profile: {
    type: 'text',
    value: 'PATH',
    repeated: true,
    help:
      'StructureDefinition with snapshot, or a value set, code system or extension that one uses, or ' +
      'a Questionnaire that answers are checked against; ' +
      'a folder gives its .json files; may be repeated',
  },
};

/** The profiles of files and folders; undefined where one cannot be read or used, which has been told. */
export async function profilesOf(
  io: CliIo,
  paths: readonly string[],
  compile: Validator['compileProfiles'],
  format: IssueFormat,
): Promise<Profiles | undefined> {
  const sources: Document[] = [];
  const resources: unknown[] = [];
  const told: { readonly source: Document; readonly issues: readonly Issue[] }[] = [];
  const files = (await Promise.all(paths.map((path) => filesOf(io, path)))).flat();
  for await (const source of files.length === 0 ? [] : documents(io, files)) {
    const { value, issues } =
      source.issue === undefined
        ? fromJson(source.text)
        : { value: undefined, issues: [source.issue] };
    told.push({ source, issues: fromLine(source.line, issues) });
    sources.push(source);
    resources.push(value);
  }
  if (told.some(({ issues }) => hasErrors(issues))) {
    for (const { source, issues } of told) await writeIssues(io, format, source, issues);
    return undefined;
  }
  const profiles = compile(resources);
  for (const found of profiles.issues) {
    const [, at, ...path] = found.path;
    const source = sources[Number(at)] ?? { input: '--profile' };
    await writeIssues(io, format, source, [{ ...found, path }]);
  }
  return hasErrors(profiles.issues) ? undefined : profiles;
}

async function filesOf(io: CliIo, path: string): Promise<string[]> {
  const folder = resolve(io.cwd, path);
  try {
    if (!(await stat(folder)).isDirectory()) return [path];
    const names = (await readdir(folder)).filter((name) => name.endsWith('.json'));
    return names.sort().map((name) => join(path, name));
  } catch (thrown) {
    throw fileFailure('read', path, thrown);
  }
}
