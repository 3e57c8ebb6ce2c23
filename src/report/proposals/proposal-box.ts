import type { Proposal, ProposalPart } from '../../convert/proposals/proposal.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Language } from '../../terminology/languages/language.ts';
import { type Content, element, joined, list, words } from '../html.ts';
import type { ProposalReviewWords } from './review-words.ts';

/** What boxes are written with. The displays of the catalogue are in the language. */
export interface BoxWriting {
  readonly catalogue: Catalogue;
  readonly language: Language;
  readonly words: ProposalReviewWords;
}

/** Characters of the note that are shown before and behind a sentence. */
const AROUND = 200;

const partNames: readonly ProposalPart[] = ['finding', 'region', 'side', 'presence'];

/** One proposal: its sentence in the note, what it could say and why, and what is to be decided. */
export function proposalBox(
  proposal: Proposal,
  at: number,
  text: string,
  writing: BoxWriting,
): Content {
  const { reasons } = proposal;
  const labels = writing.words;
  const sign = reasons === undefined ? '' : text.slice(reasons.words.start, reasons.words.end);
  return element(
    'fieldset',
    { id: `row-${at}` },
    element('legend', {}, `${at + 1}. `, words(sign)),
    headingLine(proposal, text, labels),
    sentence(proposal, text),
    list(partNames.map((part) => partLine(part, proposal, writing))),
    reasons?.unread !== undefined && element('p', {}, labels.unread[reasons.unread]),
    (['confirm', 'change', 'reject'] as const).map((value) =>
      element(
        'label',
        {},
        element('input', { type: 'radio', name: `how-${at}`, value }),
        labels.choices[value],
      ),
    ),
    partNames.map((part) =>
      element(
        'div',
        { 'data-control': part, hidden: '' },
        element('label', { for: `${part}-${at}` }, labels.parts[part]),
        element('select', { id: `${part}-${at}` }),
      ),
    ),
    element('p', {}, element('button', { type: 'button', hidden: '' }, labels.takeBack)),
  );
}

function headingLine(
  { reasons, start }: Proposal,
  text: string,
  labels: ProposalReviewWords,
): Content {
  const heading = reasons?.heading;
  if (heading === undefined || heading.start >= start - AROUND) return undefined;
  return element('p', {}, `${labels.below} `, words(text.slice(heading.start, heading.end)));
}

/** The sentence marked in what stands around it, and in it the words that name the sign. */
function sentence({ start, end, reasons }: Proposal, text: string): Content {
  const from = wordStart(text, start - AROUND);
  const to = wordEnd(text, end + AROUND);
  const sign = reasons?.words ?? { start: end, end };
  return element(
    'p',
    { class: 'verbatim soft', dir: 'auto' },
    from > 0 && '… ',
    text.slice(from, start),
    element(
      'mark',
      {},
      text.slice(start, sign.start),
      element('strong', {}, text.slice(sign.start, sign.end)),
      text.slice(sign.end, end),
    ),
    text.slice(end, to),
    to < text.length && ' …',
  );
}

/** The first beginning of a word from a place on, so that no word and no character is cut. */
function wordStart(text: string, from: number): number {
  if (from <= 0) return 0;
  const space = text.slice(from, from + 40).search(/\s/);
  return space < 0 ? from + Number(isLow(text, from)) : from + space + 1;
}

function wordEnd(text: string, to: number): number {
  if (to >= text.length) return text.length;
  const space = text.slice(to - 40, to).search(/\s\S*$/);
  return space < 0 ? to - Number(isLow(text, to)) : to - 40 + space;
}

/** Whether the second half of a character stands there. */
function isLow(text: string, at: number): boolean {
  return /[\udc00-\udfff]/.test(text.charAt(at));
}

function partLine(
  part: ProposalPart,
  { statement, open, candidates = [], reasons }: Proposal,
  { catalogue, language, words: labels }: BoxWriting,
): Content {
  const { finding, region, side, presence } = statement;
  const said: { readonly [Part in ProposalPart]: string | undefined } = {
    finding: finding && (catalogue.findings.get(finding)?.display ?? finding),
    region: region && (catalogue.regions.get(region)?.display ?? region),
    side: side && language.sides[side],
    presence: presence && labels.presence[presence],
  };
  const label = `${labels.parts[part]}: `;
  if (open.includes(part)) {
    const means = candidates.map((code) => catalogue.findings.get(code)?.display ?? code);
    const several = part === 'finding' && means.length > 0;
    return joined(
      label,
      element('span', { class: 'asked' }, labels.open),
      several && `. ${labels.canMean}: ${means.join('; ')}`,
    );
  }
  if (said[part] === undefined) return undefined;
  const by = part === 'region' || part === 'side' ? reasons?.[part] : undefined;
  return joined(
    label,
    element('strong', {}, said[part]),
    by !== undefined && ` (${labels.readIn[by]})`,
  );
}
