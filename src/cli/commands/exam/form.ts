import { toJson } from '../../../fhir/json/to-json.ts';
import { toFormDescription } from '../../../forms/describe.ts';
import { toExtractableQuestionnaire } from '../../../forms/extract/index.ts';
import type { FormLanguage } from '../../../forms/form.ts';
import { fromQuestionnaireResponse, type ResponseOptions } from '../../../forms/from-response.ts';
import { startingResponse } from '../../../forms/starting-response.ts';
import { type QuestionnaireOptions, toQuestionnaire } from '../../../forms/to-questionnaire.ts';
import { failure, type Outcome, success } from '../../../issues/issue.ts';
import { finishExam } from '../../../model/builder/finish-exam.ts';
import type { RecordStatus } from '../../../model/record-event.ts';
import { type CatalogueAdditions, createCatalogue } from '../../../terminology/catalogue.ts';
import { flagOption, type OptionValues, textOption } from '../../arguments.ts';
import type { Call, Command } from '../../command.ts';
import { UsageError } from '../../failure.ts';
import { readExam, readJson } from '../../input/read-exam.ts';
import type { CliIo } from '../../io.ts';
import { languageOption } from '../../language.ts';
import { issueFormatOf, writeIssues } from '../../output/issue-writer.ts';
import { outputTo } from '../../output/output.ts';
import {
  clinicOption,
  fhirOption,
  fhirVersionOf,
  issueOptions,
  outOption,
} from '../../shared-options.ts';

const statuses = ['draft', 'preliminary', 'final'] as const satisfies readonly RecordStatus[];

export const command: Command = {
  argumentsText: 'PROTOCOL',
  description:
    'Makes the form of a protocol, given by its code: a FHIR Questionnaire, a plain description of it, ' +
    'or the response that it begins with. With --read it reads what was filled in back to an exam: ' +
    'every answer is checked against the form again, and what was not answered is not stated.',
  options: {
    to: {
      type: 'text',
      values: ['questionnaire', 'description', 'start', 'exam'],
      help: 'What to write; default: a questionnaire, or with --read an exam',
    },
    ...fhirOption,
    ...languageOption,
    ...clinicOption,
    catalogue: {
      type: 'text',
      value: 'FILE',
      help: 'Rows of your own, such as protocols, in the form of catalogue.schema.json',
    },
    canonical: { type: 'text', value: 'URL', help: 'Canonical URL of the Questionnaire' },
    'last-time': {
      type: 'flag',
      help: 'Show in the form what was said last time; --to start fills it in',
    },
    extract: {
      type: 'flag',
      help: 'Add templates, by which engines extract Observations from a response',
    },
    prior: { type: 'text', value: 'FILE', help: 'With --to start: the exam before' },
    read: { type: 'text', value: 'FILE', help: 'A QuestionnaireResponse; - is standard input' },
    head: {
      type: 'text',
      value: 'FILE',
      help: 'With --read: who, whom and when, as JSON: id, subject, examiners, performed, recorded',
    },
    questionnaire: {
      type: 'text',
      value: 'FILE',
      help: 'With --read: the form that was filled in, if it was changed',
    },
    status: {
      type: 'text',
      values: statuses,
      fallback: 'draft',
      help: 'With --read: status of the exam; only a clinician can make it final',
    },
    complete: {
      type: 'flag',
      help: 'With --read: a question without the answer that the form needs is an error',
    },
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['form droopy-lid --language de --out lid.json', 'a form in German'],
    ['form mask-check --clinic clinic.json', 'a protocol of your own'],
    ['form droopy-lid --to start --last-time --prior 2024.json', 'what it begins with'],
    ['form droopy-lid --read response.json --head head.json --to exam', 'the answers as an exam'],
  ],
  files: { least: 1, most: 1 },
  run: async (call) => {
    const { io, options, clinic } = call;
    const [protocol = ''] = call.files;
    const reads = textOption(options, 'read') !== undefined;
    const to = textOption(options, 'to') ?? (reads ? 'exam' : 'questionnaire');
    if ((to === 'exam') !== reads)
      throw new UsageError('--to exam and --read FILE need each other');
    const form = await formOptionsOf(call);
    const { value, issues } = form.ok
      ? await made({ io, options, ...(clinic && { clinic }), form: form.value }, to, protocol)
      : form;
    const input = textOption(options, 'read') ?? protocol;
    await writeIssues(io, issueFormatOf(options), { input }, issues);
    if (value === undefined) return 1;
    const output = outputTo(io, textOption(options, 'out'));
    await output.write(`${toJson(value, { pretty: true })}\n`);
    await output.finish();
    return 0;
  },
};

interface FormCall extends Omit<Call, 'files'> {
  readonly form: QuestionnaireOptions;
}

async function formOptionsOf({
  io,
  options,
  clinic,
}: Call): Promise<Outcome<QuestionnaireOptions>> {
  const canonical = textOption(options, 'canonical');
  const rows = await jsonOf(io, options, 'catalogue');
  if (rows?.ok === false) return rows;
  // What they are is looked at before they are taken.
  const catalogue = rows && createCatalogue(rows.value as CatalogueAdditions);
  if (catalogue?.ok === false) return catalogue;
  return success({
    ...clinic?.form,
    fhirVersion: fhirVersionOf({ options, ...(clinic && { clinic }) }),
    language: (textOption(options, 'language') ?? clinic?.language ?? 'en') as FormLanguage, // held to its list
    lastTime: flagOption(options, 'last-time'),
    ...(canonical !== undefined && { canonical }),
    ...(catalogue && { catalogue: catalogue.value }),
  });
}

async function made(call: FormCall, to: string, protocol: string): Promise<Outcome<unknown>> {
  if (to === 'exam') return readBack(call, protocol);
  if (to === 'description') return toFormDescription(protocol, call.form);
  if (to === 'start') return begun(call, protocol);
  return flagOption(call.options, 'extract')
    ? toExtractableQuestionnaire(protocol, call.form)
    : toQuestionnaire(protocol, call.form);
}

async function begun(call: FormCall, protocol: string): Promise<Outcome<unknown>> {
  const { options, form } = call;
  const file = textOption(options, 'prior');
  if (file === undefined) return startingResponse(protocol, form);
  const prior = await readExam(call, file);
  if (prior === undefined) return failure([]);
  return startingResponse(protocol, { ...form, prior });
}

async function readBack(
  { io, options, form }: FormCall,
  protocol: string,
): Promise<Outcome<unknown>> {
  const head = await jsonOf(io, options, 'head');
  if (head === undefined) throw new UsageError('--read needs --head FILE');
  const response = await jsonOf(io, options, 'read');
  const questionnaire = await jsonOf(io, options, 'questionnaire');
  for (const one of [head, response, questionnaire]) if (one?.ok === false) return one;
  const includeValues = flagOption(options, 'include-values');
  const read = fromQuestionnaireResponse(response?.value, {
    ...form,
    protocol,
    // Its form is looked at when the draft is made.
    exam: head.value as ResponseOptions['exam'],
    ...(questionnaire?.ok && { questionnaire: questionnaire.value }),
    unanswered: flagOption(options, 'complete') ? 'refuse' : 'tell',
    includeValues,
  });
  if (!read.ok) return read;
  const status = statuses.find((one) => one === textOption(options, 'status')) ?? 'draft';
  const { catalogue } = form;
  const finished = finishExam(read.value, status, {
    includeValues,
    ...(catalogue && { catalogue }),
  });
  // What the draft was told is not told again.
  return finished.ok ? success(finished.value, read.issues) : finished;
}

async function jsonOf(
  io: CliIo,
  options: OptionValues,
  name: string,
): Promise<Outcome<unknown> | undefined> {
  const file = textOption(options, name);
  if (file === undefined) return undefined;
  if (file === '-' && io.interactive) throw new UsageError('nothing comes from standard input');
  return readJson(io, file);
}
