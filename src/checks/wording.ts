import type { RuleSet } from './rule-sets.ts';

/** Goes with every output that shows a prompt. */
export const cautions: readonly string[] = [
  "A prompt supports and never replaces the clinician's judgement and the local pathway.",
  'It rests only on what this record states; what is missing is listed and was not taken for normal.',
  'It names no disease as present and does not change any finding or the status of the record.',
  'Guidelines differ by country and change: check the edition in force where you practise.',
];

/**
 * Text of a prompt: what the guideline asks for in its own verb ("consider", "refer"), whose advice
 * it is, and that the clinician decides.
 */
export function promptText(advice: string, set: RuleSet): string {
  const place = set.jurisdiction === 'none' ? '' : `, ${set.jurisdiction}`;
  return `${advice} Per ${set.publisher}, ${set.title}, ${set.version}${place}. Supports, does not replace, the clinician's judgement and the local pathway.`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listText(parts: readonly string[]): string {
  const last = parts.at(-1);
  if (last === undefined) return '';
  return parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}
