import { type Found, find } from '../../find/find.ts';
import type { FindKind, FindLanguage } from '../../find/phrases.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { textOption } from '../arguments.ts';
import type { Command } from '../command.ts';
import { UsageError } from '../failure.ts';
import { clinicOption } from '../shared-options.ts';

const kinds: readonly FindKind[] = [
  'region',
  'sign',
  'point',
  'measure',
  'scale',
  'symptom',
  'reason',
];
const languages: readonly FindLanguage[] = ['en', 'de'];

export const command: Command = {
  argumentsText: 'WORD ...',
  description:
    'Finds codes by what people call them: displays, synonyms, lay words and abbreviations in English ' +
    'and German, even with typing errors. Each line has kind, code, display and the matched word, with ' +
    'tabs between; the likeliest comes first. Exit code 1: nothing similar was found.',
  options: {
    ...clinicOption,
    kind: { type: 'text', values: kinds, help: 'Only codes of this kind' },
    region: {
      type: 'text',
      value: 'CODE',
      help: 'Only what can be said of this region, of a part of it or of what it is part of',
    },
    language: { type: 'text', values: languages, help: 'Only words of this language' },
    limit: { type: 'text', value: 'N', fallback: '10', help: 'Most codes' },
    format: { type: 'text', values: ['text', 'json'], fallback: 'text', help: 'Form of the list' },
  },
  examples: [
    ['find droopy eyelid', 'the code of a sign'],
    ['find Leberfleck --kind sign', 'by a lay word in German'],
    ['find discharge --region eac', 'what can be said of the ear canal'],
  ],
  files: { least: 1, most: Number.POSITIVE_INFINITY },
  run: async ({ io, files, options, clinic }) => {
    const region = textOption(options, 'region');
    if (region !== undefined && !(clinic?.catalogue ?? builtInCatalogue).regions.has(region)) {
      const [near] = find(region, { ...clinic?.find, kind: 'region', limit: 1 });
      const perhaps = near === undefined ? '' : `; perhaps ${near.code}`;
      throw new UsageError(`--region is not the code of a region${perhaps}`);
    }
    const kind = textOption(options, 'kind');
    const language = textOption(options, 'language');
    const found = find(files.join(' '), {
      ...clinic?.find,
      limit: limitOf(textOption(options, 'limit') ?? '10'),
      ...(region !== undefined && { region }),
      // Both were held to their lists when the options were read.
      ...(kind !== undefined && { kind: kind as FindKind }),
      ...(language !== undefined && { language: language as FindLanguage }),
    });
    const json = textOption(options, 'format') === 'json';
    await io.out(json ? `${JSON.stringify(found, undefined, 2)}\n` : found.map(line).join(''));
    if (found.length === 0) await io.err('face-neck-fhir: nothing is similar to these words\n');
    return found.length === 0 ? 1 : 0;
  },
};

function line({ kind, code, display, word }: Found): string {
  const met = word === display || word === code ? '' : `\t(${word})`;
  return `${kind}\t${code}\t${display}${met}\n`;
}

function limitOf(text: string): number {
  if (!/^[1-9]\d{0,3}$/.test(text)) throw new UsageError('--limit takes a number from 1 to 9999');
  return Number(text);
}
