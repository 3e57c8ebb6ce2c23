import type { FormItem } from '../../../src/forms/index.ts';
import { builtInCatalogue } from '../../../src/index.ts';
import { answerText, type Placed } from './asked.ts';
import { type Answers, answered, type Saved } from './saved.ts';

/** One place at which a batch can say its sentence. */
export interface BatchPlace {
  readonly linkId: string;
  readonly text: string;
  readonly section: string;
  /** Said there already, or of a region that was not examined: it is left as it is. */
  readonly isLeft: boolean;
}

/** A sentence that can be said of several places, each of which gets a statement of its own. */
export interface Sentence {
  readonly id: string;
  readonly text: string;
  /** The same behind the name of a place. */
  readonly told: string;
  /** Code of the answer. */
  readonly answer: string;
  readonly places: readonly BatchPlace[];
  /** What else has to be said: how it was examined, or why not. */
  readonly needs: 'methods' | 'methods-if-known' | 'reason';
  readonly options: readonly { readonly code: string; readonly display: string }[];
}

/** What can be said of several places at once in this protocol. */
export function sentencesOf(all: readonly Placed[], answers: Answers): readonly Sentence[] {
  const found = new Map<string, { sentence: Omit<Sentence, 'places'>; places: BatchPlace[] }>();
  for (const one of all) {
    for (const sentence of saidBy(one.item)) {
      const known = found.get(sentence.id) ?? { sentence, places: [] };
      found.set(sentence.id, known);
      known.places.push(placeOf(one, answers));
    }
  }
  return [...found.values()]
    .filter(({ places }) => places.length > 1)
    .map(({ sentence, places }) => ({ ...sentence, places }));
}

function placeOf({ item, page, isAsked }: Placed, answers: Answers): BatchPlace {
  const { says, linkId } = item;
  const region = says?.part === 'statement' ? (says.statement['region'] ?? '') : '';
  const side = says?.part === 'statement' ? says.statement['side'] : undefined;
  const section = builtInCatalogue.regions.get(region)?.section ?? '';
  return {
    linkId,
    text: side === undefined ? page.text : `${page.text}, ${side}`,
    section: builtInCatalogue.sections.get(section)?.display ?? section,
    isLeft: !isAsked || answered(answers, linkId).length > 0,
  };
}

function saidBy(item: FormItem): readonly Omit<Sentence, 'places'>[] {
  const { says, linkId } = item;
  if (says?.part !== 'statement' || linkId.includes('#')) return [];
  const { kind, finding = '', region = '' } = says.statement;
  const methods = builtInCatalogue.regions.get(region)?.methods ?? [];
  const display = (code: string) => ({
    code,
    display: builtInCatalogue.methods.get(code)?.display ?? code,
  });
  if (kind === 'finding' && says.member[0] === 'presence') {
    const row = builtInCatalogue.findings.get(finding);
    // A sign that is the usual appearance is said as there, all others as not found.
    const [answer, word] =
      row?.usual === true ? ['presence.present', 'Present'] : ['presence.absent', 'Not found'];
    return [
      {
        id: `${kind}/${finding}`,
        text: `${word}: ${row?.display ?? finding}`,
        told: `${row?.display ?? finding}: ${word.toLowerCase()}`,
        answer,
        needs: 'methods-if-known',
        options: methods.map(display),
      },
    ];
  }
  if (kind !== 'region-state' || says.member[0] !== 'state') return [];
  return [
    {
      id: 'state/normal',
      text: 'Examined: normal',
      told: 'examined, normal',
      answer: 'state.normal',
      needs: 'methods',
      options: [...builtInCatalogue.methods.values()],
    },
    {
      id: 'state/not-examined',
      text: 'Not examined',
      told: 'not examined',
      answer: 'state.not-examined',
      needs: 'reason',
      options: [...builtInCatalogue.reasons.values()],
    },
  ];
}

export interface BatchChoice {
  readonly sentence: Sentence;
  /** LinkIds of the places marked. */
  readonly marked: ReadonlySet<string>;
  /** Codes of methods, or the one reason. */
  readonly more: readonly string[];
}

/** The statements that a batch would make, each in words. */
export function statementsTold({ sentence, marked, more }: BatchChoice): readonly string[] {
  const named = answerText({ options: sentence.options } as unknown as FormItem, more);
  return sentence.places
    .filter(({ linkId, isLeft }) => marked.has(linkId) && !isLeft)
    .map(({ text }) => `${text}: ${sentence.told}${named === '' ? '' : ` (${named})`}`);
}

/** Answers every marked place that is still open; what was said there before stays. */
export function withBatch(saved: Saved, { sentence, marked, more }: BatchChoice): Saved {
  const answers: Record<string, readonly string[]> = { ...saved.answers };
  const { needs } = sentence;
  for (const { linkId, isLeft } of sentence.places) {
    if (isLeft || !marked.has(linkId)) continue;
    answers[linkId] = [sentence.answer];
    if (more.length > 0) answers[`${linkId}:${needs === 'reason' ? 'reason' : 'methods'}`] = more;
  }
  return { ...saved, answers };
}
