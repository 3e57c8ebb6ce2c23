import type { Clinic } from '../../clinic/clinic.ts';
import { clinicCodeSystem } from '../../clinic/definitions/code-system.ts';
import { clinicDefinitions } from '../../clinic/definitions/definitions.ts';
import { firstClinicFile } from '../../clinic/first-file.ts';
import { parseClinic } from '../../clinic/parse-clinic.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { locatedInJson } from '../../validate/text/validate-text.ts';
import { textOption } from '../arguments.ts';
import type { Call, Command } from '../command.ts';
import { UsageError } from '../failure.ts';
import { readClinic } from '../input/clinic-file.ts';
import { clinicText } from '../output/clinic-text.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { outputTo } from '../output/output.ts';
import { formatOption, outOption } from '../shared-options.ts';

export const command: Command = {
  argumentsText: '[FILE]',
  description:
    'Checks the file that says once what a clinic decides: own regions, signs, protocols and ' +
    'words, code map, identity, SNOMED CT policy, how exams leave, rule sets and settings of the ' +
    'checks. Every other command takes it as --clinic FILE. Without a file it writes one to start ' +
    'from. What nobody has decided yet is marked undecided in it and reported; what cannot do ' +
    'without it is refused.',
  options: {
    to: {
      type: 'text',
      values: ['text', 'code-system', 'definitions'],
      fallback: 'text',
      help: 'What the file holds, its own codes as a FHIR CodeSystem, or with them the value sets and the map',
    },
    ...outOption,
    ...formatOption,
  },
  examples: [
    ['clinic --out clinic.json', 'a file to start from'],
    ['clinic clinic.json', 'whether it can be used, and what is still undecided'],
    ['clinic clinic.json --to code-system --out codes.json', 'own codes, for a FHIR server'],
    [
      'clinic clinic.json --to definitions --out definitions.json',
      'all that it needs, as a transaction',
    ],
  ],
  files: { least: 0, most: 1 },
  run: async (call) => {
    const [file] = call.files;
    return file === undefined ? begin(call) : look(call, file);
  },
};

/** A first file, with what is to be decided at its lines. */
async function begin({ io, options }: Call): Promise<number> {
  const text = `${toJson(firstClinicFile(), { pretty: true })}\n`;
  const output = outputTo(io, textOption(options, 'out'));
  await output.write(text);
  await output.finish();
  const { issues } = parseClinic(firstClinicFile());
  const input = textOption(options, 'out') ?? '(stdout)';
  await writeIssues(io, issueFormatOf(options), { input }, locatedInJson(text)(issues));
  return 0;
}

async function look({ io, options }: Call, file: string): Promise<number> {
  const { value: clinic, issues } = await readClinic(io, file);
  await writeIssues(io, issueFormatOf(options), { input: file }, issues);
  if (clinic === undefined) return 1;
  const output = outputTo(io, textOption(options, 'out'));
  const to = textOption(options, 'to');
  if (to === 'code-system') {
    const codes = clinicCodeSystem(clinic);
    if (codes === undefined) throw new UsageError('the file has no rows of its own');
    await output.write(`${toJson(codes, { pretty: true })}\n`);
  } else if (to === 'definitions') {
    await output.write(`${toJson(definitionsBundle(clinic), { pretty: true })}\n`);
  } else {
    await output.write(clinicText(clinic));
  }
  await output.finish();
  return 0;
}

/** Each definition is put by its id, so that a value set takes the place of that of the guide. */
function definitionsBundle(clinic: Clinic): object {
  const definitions = clinicDefinitions(clinic);
  if (definitions.length === 0) {
    throw new UsageError('the file has no rows of its own and no code map');
  }
  const entry = definitions.map((resource) => ({
    resource,
    request: { method: 'PUT', url: `${resource.resourceType}/${resource.id}` },
  }));
  return { resourceType: 'Bundle', type: 'transaction', entry };
}
