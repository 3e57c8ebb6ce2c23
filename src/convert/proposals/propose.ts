import { append } from '../../data/append.ts';
import { type BudgetOption, spend, within } from '../../issues/budget.ts';
import { failure, type Outcome, success } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import { isNote } from '../../kinds/note/convert.ts';
import type { Exam } from '../../model/exam.ts';
import { parseExam } from '../../model/parse-exam.ts';
import { isWithin } from '../../model/rules/places.ts';
import type { Note } from '../../model/statement.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { HeadingPlace } from '../mapping/mapping.ts';
import { cutAtHeadings } from '../narrative/cut.ts';
import { type HeadingLookUp, headingLookUp } from '../narrative/headings.ts';
import { type Span, sentencesIn } from '../narrative/sentences.ts';
import { type PhraseIndex, phraseIndex } from '../suggest/names/phrase-index.ts';
import { type Clause, clausesOf, isSign } from './clauses.ts';
import { type Context, contextOf } from './context.ts';
import { type Item, itemsIn } from './items.ts';
import { type FoundRegion, regionOf } from './place.ts';
import { presenceOf } from './presence.ts';
import type { Proposal, ProposalPart, ProposalReasons, ProposedFinding } from './proposal.ts';
import { sideOf } from './sides.ts';

/** How proposals are made. */
export interface ProposeOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What headings mean besides those that are known, as in a mapping. */
  readonly headings?: { readonly [heading: string]: HeadingPlace };
  /** What the call may take. */
  readonly budget?: BudgetOption;
}

/** A line that goes on below with "none" is the label of it. */
const deniedBelow =
  /^[^\S\n]*\n\s*(?:\p{P}\s*)?(?:none|no|not|nil|absent|kein\p{L}*|nicht|nein|negativ\p{L}*|ohne|fehlt)/iu;

/** Of a longer sentence nothing is decided: it is no sentence but a list without marks. */
const MOST_ITEMS = 60;

/**
 * Proposes what the sentences in the notes of an exam could say as findings, each with its place in the
 * text. The exam is not changed, and nothing is decided by guess: a side, a denial or a region that a
 * sentence does not say in plain words stays open. A note about history, plan or another part of the body
 * leaves open whether what it names is there.
 *
 * @param exam An exam with notes, such as one that was converted.
 * @param options The catalogue and further headings; see {@link ProposeOptions}.
 * @returns The proposals in the order of the text. It fails where the exam is none.
 * @example
 * const proposals = orThrow('propose', proposeFindings(exam));
 */
export function proposeFindings(
  exam: Exam,
  options: ProposeOptions = {},
): Outcome<readonly Proposal[]> {
  return within(
    'legacy',
    options.budget,
    () => proposed(exam, options),
    (why) => failure([endedIssue(why)]),
  );
}

interface Reader {
  readonly catalogue: Catalogue;
  readonly index: PhraseIndex;
  readonly meaningOf: HeadingLookUp;
}

function proposed(given: Exam, options: ProposeOptions): Outcome<readonly Proposal[]> {
  const catalogue = options.catalogue ?? builtInCatalogue;
  const { value: exam, issues } = parseExam(given, { catalogue });
  if (exam === undefined) return failure(issues);
  const reader: Reader = {
    catalogue,
    index: phraseIndex(catalogue),
    meaningOf: headingLookUp(catalogue, options.headings),
  };
  const proposals: Proposal[] = [];
  for (const statement of exam.statements) {
    if (isNote(statement)) append(proposals, ofNote(exam.id, statement, reader));
  }
  return success(proposals);
}

function ofNote(exam: string, note: Note, reader: Reader): Proposal[] {
  const { text } = note;
  spend(text.length);
  const proposals: Proposal[] = [];
  for (const part of cutAtHeadings(text, reader.meaningOf, reader.catalogue)) {
    const body = text.slice(part.body, part.end);
    for (const { start, end } of sentencesIn(body)) {
      const span = { start: start + part.body, end: end + part.body };
      const context = contextOf(part, note);
      for (const found of ofSentence(text, span, context, reader)) {
        proposals.push({
          exam,
          note: note.key,
          ...span,
          text: text.slice(span.start, span.end),
          ...found,
        });
      }
    }
  }
  return proposals;
}

type Found = Pick<Proposal, 'statement' | 'open' | 'score' | 'candidates' | 'reasons'>;

/** A sentence as it was read. */
interface Sentence {
  readonly items: readonly Item[];
  readonly clauses: readonly Clause[];
  readonly context: Context;
  readonly unread?: ProposalReasons['unread'];
}

function ofSentence(text: string, span: Span, context: Context, reader: Reader): Found[] {
  const items = itemsIn(text, span, reader.index);
  spend(items.length);
  const clauses = clausesOf(items);
  const unread = unreadFor(text, span, items, context);
  const sentence = { items, clauses, context, ...(unread && { unread }) };
  return clauses.flatMap((clause) =>
    clause.items.filter(isSign).map((sign) => ofSign(sign, clause, sentence, reader.catalogue)),
  );
}

function unreadFor(
  text: string,
  { start, end }: Span,
  items: readonly Item[],
  { elsewhere }: Context,
): ProposalReasons['unread'] {
  if (elsewhere) return 'elsewhere';
  if (items.length > MOST_ITEMS) return 'long';
  const isEnded = /[.;!?]$/.test(text.slice(start, end));
  return !isEnded && deniedBelow.test(text.slice(end, end + 60)) ? 'goes-on' : undefined;
}

type Sign = Item & { readonly is: 'sign' };

function ofSign(sign: Sign, clause: Clause, sentence: Sentence, catalogue: Catalogue): Found {
  const signs = sign.codes.flatMap((code) => catalogue.findings.get(code) ?? []);
  const [only, other] = signs;
  const finding = other === undefined ? only?.code : undefined;
  const isRead = sentence.unread === undefined;
  const read = isRead ? readSign(sign, placesOf(signs), clause, sentence, catalogue) : undefined;
  const { side, presence } = read ?? {};
  const statement = placed({ finding, region: read?.at?.region, side, presence }, catalogue);
  const open = openParts(statement, catalogue);
  return {
    statement,
    open,
    ...(finding === undefined && { candidates: sign.codes }),
    score: Math.round(100 * 0.7 ** open.length) / 100,
    reasons: reasonsOf(sign, statement, read?.at?.by, sentence),
  };
}

interface Read {
  readonly at: FoundRegion | undefined;
  readonly side: ProposedFinding['side'] | undefined;
  readonly presence: ProposedFinding['presence'] | undefined;
}

function readSign(
  sign: Sign,
  places: readonly string[],
  clause: Clause,
  { items, clauses, context }: Sentence,
  catalogue: Catalogue,
): Read {
  const isBelow = context.side !== undefined && isAllWithin(items, context.region, catalogue);
  const heading = isBelow ? { heading: context.side } : {};
  return {
    at: regionOf(sign, places, clause, context.region, catalogue),
    side: sideOf({ sign, places, clause, clauses, ...heading }, catalogue),
    presence: presenceOf(sign, clause, clauses),
  };
}

function reasonsOf(
  { start, end }: Sign,
  { side }: ProposedFinding,
  regionBy: FoundRegion['by'] | undefined,
  { clauses, context, unread }: Sentence,
): ProposalReasons {
  return {
    words: { start, end },
    ...(context.heading && { heading: context.heading }),
    ...(regionBy && { region: regionBy === 'above' ? context.by : regionBy }),
    ...(side !== undefined && { side: clauses.some(hasSide) ? 'sentence' : context.by }),
    ...(unread && { unread }),
  };
}

function hasSide({ items }: Clause): boolean {
  return items.some(({ is }) => is === 'side');
}

/** The side of a heading is that of its region: a sentence on another place is not on this side. */
function isAllWithin(
  items: readonly Item[],
  region: string | undefined,
  catalogue: Catalogue,
): boolean {
  return (
    region !== undefined &&
    items.every(
      (item) =>
        item.is !== 'region' || item.codes.every((code) => isWithin(code, region, catalogue)),
    )
  );
}

/** Places of a sign, all where none is named. */
function placesOf(signs: readonly { readonly regions?: readonly string[] }[]): readonly string[] {
  const places = signs.flatMap(({ regions = [] }) => regions);
  return places.length === 0 ? ['face-neck'] : [...new Set(places)];
}

/** The statement without what is not known, and without a side that its place does not have. */
function placed(
  {
    finding,
    region,
    side,
    presence,
  }: { [P in Exclude<keyof ProposedFinding, 'kind'>]: ProposedFinding[P] | undefined },
  catalogue: Catalogue,
): ProposedFinding {
  const row = region === undefined ? undefined : catalogue.regions.get(region);
  const isPossible =
    side !== undefined &&
    (row === undefined || lateralitySides[row.laterality].sides.includes(side));
  return {
    kind: 'finding',
    ...(finding !== undefined && { finding }),
    ...(region !== undefined && { region }),
    ...(isPossible && { side }),
    ...(presence !== undefined && { presence }),
  };
}

function openParts(
  { finding, region, side, presence }: ProposedFinding,
  catalogue: Catalogue,
): ProposalPart[] {
  const row = region === undefined ? undefined : catalogue.regions.get(region);
  const needsSide = row === undefined || lateralitySides[row.laterality].required;
  return [
    ...(finding === undefined ? (['finding'] as const) : []),
    ...(region === undefined ? (['region'] as const) : []),
    ...(side === undefined && needsSide ? (['side'] as const) : []),
    ...(presence === undefined ? (['presence'] as const) : []),
  ];
}
