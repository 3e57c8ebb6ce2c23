import type { Proposal } from '../../../src/convert/suggest/proposal.ts';
import { suggestMapping } from '../../../src/convert/suggest/suggest-mapping.ts';
import type { Table } from './tables/table.ts';

/** How proposals for a list of tables compare with what a careful person says. */
export interface Score {
  /** Fields and items that have a place. */
  places: number;
  placed: number;
  /** Proposed as something else than said, or proposed where nobody could. */
  readonly wrong: string[];
  /** Of these: a side, a unit, the meaning of a word, the order of day and month. */
  readonly sides: string[];
  readonly units: string[];
  readonly negations: string[];
  readonly dates: string[];
  readonly missed: string[];
}

export function scoreTables(tables: readonly Table[]): Score {
  const score: Score = {
    places: 0,
    placed: 0,
    ...{ wrong: [], sides: [], units: [], negations: [], dates: [], missed: [] },
  };
  for (const table of tables) scoreTable(table, score);
  return score;
}

function scoreTable(table: Table, score: Score): void {
  const { proposals, mapping } = suggestMapping(table.text);
  const fields = byName(proposals, 'field');
  const items = byName(proposals, 'item');
  for (const [name, said] of Object.entries(table.columns)) {
    compare(`${table.name}: ${name}`, said, fields.get(name), score);
  }
  for (const [name, said] of Object.entries(table.items ?? {})) {
    compare(`${table.name}: ${name}`, said, items.get(name), score);
  }
  for (const [name, words] of Object.entries(table.words ?? {})) {
    score.negations.push(
      ...wrongWords(words, fields.get(name)).map((at) => `${table.name}: ${at}`),
    );
  }
  const dates = JSON.stringify(mapping['dates'] ?? {}) + JSON.stringify(mapping['exam'] ?? {});
  const isTold = dates.includes('"formats"');
  if (table.dates === 'open' ? isTold : !dates.includes(`"${table.dates}"`)) {
    score.dates.push(`${table.name}: ${dates}`);
  }
}

function byName(proposals: readonly Proposal[], of: Proposal['of']): ReadonlyMap<string, Proposal> {
  return new Map(proposals.filter((one) => one.of === of).map((one) => [one.name, one]));
}

/** Words with another meaning than said; `text` gives none. */
function wrongWords(
  said: { readonly [word: string]: string },
  proposal: Proposal | undefined,
): readonly string[] {
  const { target } = proposal ?? {};
  const words = target !== undefined && 'words' in target ? target.words : undefined;
  return Object.entries(typeof words === 'object' ? words : {}).flatMap(([word, meaning]) => {
    const right = said[word];
    const isWrong = right !== undefined && meaning !== right && meaning !== 'text';
    return isWrong ? [`${word} as ${String(meaning)}`] : [];
  });
}

interface Said {
  readonly what: string;
  readonly side: string;
  readonly unit: string;
}

const sides = ['right', 'left', 'both'];
const units = ['mm', 'cm', 'L/min'];

function parse(text: string): Said {
  const [what = '', ...rest] = text.split(' ');
  const side = rest.find((word) => sides.includes(word)) ?? '';
  const unit = rest.find((word) => units.includes(word)) ?? '';
  const others = rest.filter((word) => word !== side && word !== unit);
  return { what: [what, ...others].join(' '), side, unit };
}

function compare(where: string, said: string, proposal: Proposal | undefined, score: Score): void {
  const right = parse(said);
  const given = shown(proposal);
  if (right.what !== 'open') score.places += 1;
  if (given === undefined) {
    if (right.what !== 'open') score.missed.push(where);
    return;
  }
  const is = parse(given);
  const told = `${where} is ${given}, not ${said}`;
  if (is.side !== '' && is.side !== right.side) score.sides.push(told);
  if (is.unit !== '' && is.unit !== right.unit) score.units.push(told);
  const isWrong = is.what !== right.what && !right.what.startsWith(`${is.what}@`);
  if (isWrong || (is.side !== '' && is.side !== right.side)) score.wrong.push(told);
  else if (is.unit !== '' && is.unit !== right.unit) score.wrong.push(told);
  else if (given === said) score.placed += 1;
  else score.missed.push(told);
}

/** A proposal as the tables write it; undefined where nothing is proposed. */
function shown(proposal: Proposal | undefined): string | undefined {
  if (proposal?.head !== undefined) return `head/${proposal.head}`;
  if (proposal?.role !== undefined) return `item/${proposal.role}`;
  const target = proposal?.target;
  if (target === undefined) return undefined;
  const parts: Readonly<Record<string, unknown>> = { ...target };
  const kinds = [
    ['measure', 'measure'],
    ['finding', 'sign'],
    ['point', 'point'],
    ['test', 'point'],
    ['scale', 'scale'],
    ['symptom', 'symptom'],
    ['region', 'region'],
  ] as const;
  const named = kinds.find(([property]) => parts[property] !== undefined);
  if (named === undefined) return 'note';
  const [property, kind] = named;
  const place =
    property === 'finding' && parts['region'] !== undefined ? `@${parts['region']}` : '';
  const more = ['side', 'unit', 'modality'].flatMap((name) => parts[name] ?? []);
  return [`${kind}/${parts[property]}${place}`, ...more].join(' ');
}
