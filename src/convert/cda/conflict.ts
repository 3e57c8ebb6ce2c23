/** What an entry says that its narrative can be held against. */
export interface EntryClaim {
  readonly number?: string;
  /** Whether the entry is a negation; left out where that cannot be told. */
  readonly negated?: boolean;
  readonly side?: 'left' | 'right';
}

/**
 * What in the narrative of an entry speaks against the entry: another number, the other side alone,
 * or a negation on one of the two only. A hint for a reader, never a reason to code anything: the
 * entry is coded, the narrative is kept, and both are told apart. English words only.
 */
export function disagreements(narrative: string, claim: EntryClaim): string[] {
  const found: string[] = [];
  if (claim.number !== undefined) {
    const numbers = narrative.match(/(?<![\w.,])\d+(?:[.,]\d+)?/g) ?? [];
    const value = Number(claim.number);
    const same = numbers.some((text) => Number(text.replace(',', '.')) === value);
    if (numbers.length > 0 && !same) found.push('number');
  }
  const left = /\bleft\b/i.test(narrative);
  const right = /\bright\b/i.test(narrative);
  if (left !== right && claim.side !== undefined && claim.side !== (left ? 'left' : 'right')) {
    found.push('side');
  }
  if (claim.negated !== undefined && negation.test(narrative) !== claim.negated) {
    found.push('negation');
  }
  return found;
}

const negation = /\b(?:no|not|without|absent|never|nil|none|denies|negative)\b/i;
