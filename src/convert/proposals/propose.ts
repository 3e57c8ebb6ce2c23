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
import { cutAtHeadings, type Part } from '../narrative/cut.ts';
import { type HeadingLookUp, headingLookUp } from '../narrative/headings.ts';
import { type Span, sentencesIn } from '../narrative/sentences.ts';
import { type PhraseIndex, phraseIndex } from '../suggest/names/phrase-index.ts';
import { clausesOf, isSign } from './clauses.ts';
import { type Item, itemsIn } from './items.ts';
import { regionOf } from './place.ts';
import { presenceOf } from './presence.ts';
import type { Proposal, ProposalPart, ProposedFinding } from './proposal.ts';
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

/** What is known of a sentence before it is read. */
interface Context {
  readonly region?: string;
  readonly side?: 'right' | 'left' | 'both';
  /** It may be of another time, person or part of the body. */
  readonly elsewhere: boolean;
}

function contextOf({ heading, unknown }: Part, note: Note): Context {
  const region = heading?.region ?? (heading === undefined && !unknown ? note.region : undefined);
  const side = heading === undefined ? sideOfNote(note, region) : heading.side;
  return {
    ...(region !== undefined && { region }),
    ...(side !== undefined && { side }),
    elsewhere: unknown === true || heading?.other === true,
  };
}

function sideOfNote({ side }: Note, region: string | undefined): Context['side'] {
  if (region === undefined) return undefined;
  return side === 'right' || side === 'left' || side === 'both' ? side : undefined;
}

type Found = Pick<Proposal, 'statement' | 'open' | 'score' | 'candidates'>;

function ofSentence(text: string, span: Span, context: Context, reader: Reader): Found[] {
  const { catalogue } = reader;
  const items = itemsIn(text, span, reader.index);
  spend(items.length);
  const goesOn =
    !/[.;!?]$/.test(text.slice(span.start, span.end)) &&
    deniedBelow.test(text.slice(span.end, span.end + 60));
  const isOpen = context.elsewhere || items.length > MOST_ITEMS || goesOn;
  const clauses = clausesOf(items);
  return clauses.flatMap((clause) =>
    clause.items.filter(isSign).map((sign): Found => {
      const signs = sign.codes.flatMap((code) => catalogue.findings.get(code) ?? []);
      const [only, other] = signs;
      const places = placesOf(signs);
      const region = isOpen ? undefined : regionOf(sign, places, clause, context.region, catalogue);
      const isBelow = context.side !== undefined && isAllWithin(items, context.region, catalogue);
      const heading = isBelow ? { heading: context.side } : {};
      const side = isOpen
        ? undefined
        : sideOf({ sign, places, clause, clauses, ...heading }, catalogue);
      const presence = isOpen ? undefined : presenceOf(sign, clause, clauses);
      const finding = other === undefined ? only?.code : undefined;
      const statement = placed({ finding, region, side, presence }, catalogue);
      const open = openParts(statement, catalogue);
      return {
        statement,
        open,
        ...(finding === undefined && { candidates: sign.codes }),
        score: Math.round(100 * 0.7 ** open.length) / 100,
      };
    }),
  );
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
