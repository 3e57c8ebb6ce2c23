import { targetConversion } from '../../../kinds/registries/conversions.ts';
import type { Catalogue } from '../../../terminology/catalogue.ts';
import type { Laterality } from '../../../terminology/types.ts';
import type { Target } from '../../mapping/target.ts';
import type { Proposal, ProposalQuestion, ProposalReason } from '../proposal.ts';
import type { NamedSide, NameParts } from './name-parts.ts';
import type { ShortSide } from './name-words.ts';
import type { PhraseIndex } from './phrase-index.ts';

/** What names are compared with. */
export interface Naming {
  readonly index: PhraseIndex;
  readonly catalogue: Catalogue;
  /** Pairs of short side words that the export uses. */
  readonly pairs: readonly ShortSide[];
  /** Side and unit come from fields of their own, as in a table of items. */
  readonly beside?: { readonly side: boolean; readonly unit: boolean };
}

export type Placement = Pick<Proposal, 'target' | 'score' | 'reasons' | 'questions'>;

export const nothing: Placement = { score: 0, reasons: [], questions: [] };

/** Left open with the question that stands against it. */
export function open(question: ProposalQuestion): Placement {
  return { ...nothing, questions: [question] };
}

/** What a name is about, without side and unit. */
export interface Meaning {
  readonly target: Target;
  readonly score: number;
  readonly reasons: readonly ProposalReason[];
}

/** The target with the side and unit that the name states, or the question that stands against it. */
export function withSideAndUnit(
  { target, score, reasons }: Meaning,
  parts: NameParts,
  texts: readonly string[],
  naming: Naming,
): Placement {
  const { side, unit } = parts;
  const against = questionAgainst(target, parts, naming.catalogue);
  if (against !== undefined) return open(against);
  const sided = side === undefined ? {} : { side: side.side };
  const measured = unit === undefined ? {} : { unit: unit.code };
  return {
    // What has a measure has a unit, and what has a laterality a side.
    target: { ...target, ...sided, ...measured } as Target,
    score,
    reasons: [...reasons, ...statedBy(parts)],
    questions: questionsOf(target, parts, texts, naming),
  };
}

function statedBy({ side, unit }: NameParts): readonly ProposalReason[] {
  const reasons: ProposalReason[] = [];
  if (side !== undefined) reasons.push({ reason: 'side', word: side.word, side: side.side });
  if (unit !== undefined) reasons.push({ reason: 'unit', word: unit.word, unit: unit.code });
  return reasons;
}

/** Why nothing can be proposed although the name is known. */
function questionAgainst(
  target: Target,
  { side, loneSide, unit }: NameParts,
  catalogue: Catalogue,
): ProposalQuestion | undefined {
  if (loneSide !== undefined) return { question: 'lone-side', word: loneSide };
  if (side !== undefined && !canBeSide(side, target, catalogue)) return { question: 'not-a-side' };
  if (unit !== undefined && !unitsOf(target, catalogue).includes(unit.code)) {
    return { question: 'wrong-unit' };
  }
  return undefined;
}

/** What a person has to say before the target can be used. */
function questionsOf(
  target: Target,
  { side, unit }: NameParts,
  texts: readonly string[],
  { catalogue, beside }: Naming,
): readonly ProposalQuestion[] {
  const laterality = lateralityOf(target, catalogue);
  const needsSide = laterality === 'paired' || laterality === 'crossing';
  const needsUnit = unitsOf(target, catalogue).some((code) => code !== '1');
  const questions: ProposalQuestion[] = [];
  if (needsSide && side === undefined && beside?.side !== true) {
    questions.push({ question: 'side' });
  }
  if (needsUnit && unit === undefined && beside?.unit !== true && !texts.some(hasUnit)) {
    questions.push({ question: 'unit' });
  }
  if (targetConversion(target).needs === 'region' && !('region' in target)) {
    questions.push({ question: 'region' });
  }
  return questions;
}

function hasUnit(text: string): boolean {
  return /\d\s*[\p{L}%°]/u.test(text);
}

/** UCUM units of a quantity. */
export function unitsOf(target: Target, { measures }: Catalogue): readonly string[] {
  const measure = 'measure' in target ? measures.get(target.measure) : undefined;
  if (measure?.type !== 'quantity') return [];
  return [measure.unit, ...(measure.units ?? [])];
}

/** How the place of a target is divided, as far as it tells its place. */
export function lateralityOf(target: Target, catalogue: Catalogue): Laterality | undefined {
  const { laterality } = targetConversion(target);
  return (
    laterality?.(target, catalogue) ??
    catalogue.regions.get(regionOf(target, catalogue) ?? '')?.laterality
  );
}

function regionOf(target: Target, catalogue: Catalogue): string | undefined {
  const stated = 'region' in target ? target.region : undefined;
  return stated ?? targetConversion(target).home?.(target, catalogue);
}

/** Right, left or both of what has two sides; of the eyes or ears where the word says so. */
function canBeSide({ section }: NamedSide, target: Target, catalogue: Catalogue): boolean {
  if (lateralityOf(target, catalogue) === 'midline') return false;
  if (section === undefined) return true;
  const region = regionOf(target, catalogue);
  const finding = 'finding' in target ? catalogue.findings.get(target.finding ?? '') : undefined;
  const regions = region === undefined ? (finding?.regions ?? []) : [region];
  return (
    regions.length > 0 && regions.every((code) => catalogue.regions.get(code)?.section === section)
  );
}
