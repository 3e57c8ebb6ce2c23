import type { Target } from '../../convert/mapping/target.ts';
import type { Scan } from '../../convert/scan/scan.ts';
import type { Counted } from '../../convert/scan/scan-field.ts';
import type { Proposal } from '../../convert/suggest/proposal.ts';
import type { Suggestion } from '../../convert/suggest/suggest-mapping.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { type Choice, choiceOf, type MeaningLists } from './choices.ts';

/** One field or item as the page shows it and its script reads it. */
export interface Row {
  readonly proposal: Proposal;
  /** What is proposed, with what must be said beside it; none where nothing is. */
  readonly choice?: Choice;
  /** The item is listed in this of the items of the mapping. */
  readonly item?: number;
  /** Answers, with the meaning that is proposed for each. */
  readonly words: readonly (readonly [word: string, meaning: string])[];
  /** Answers that are not shown, since values were not asked for. */
  readonly hidden: number;
  readonly forms: readonly string[];
  readonly filled: number;
  readonly blank: number;
  readonly examples: readonly Counted[];
}

/** The rows of a review: every field and item, what has no use in the record among them. */
export function rowsOf(
  scan: Scan,
  { proposals, mapping }: Suggestion,
  catalogue: Catalogue,
  meanings: MeaningLists,
  showValues: boolean,
): readonly Row[] {
  const scanned = new Map(scan.fields.map((one) => [`${one.of} ${one.name}`, one]));
  const items = itemMaps(mapping);
  return proposals.map((proposal) => {
    const field = scanned.get(`${proposal.of} ${proposal.name}`);
    const words = wordsOf(proposal.target, field?.values ?? []);
    // What is plain is a word of ours as well; every other one is a value of the export.
    const shown = showValues ? words : words.filter(([, meaning]) => meaning !== 'text');
    const item = items.findIndex((map) => Object.hasOwn(map, proposal.name));
    const forms = proposal.questions.flatMap((one) => ('forms' in one ? one.forms : []));
    return {
      proposal: withoutWords(proposal),
      ...choice(proposal, catalogue, meanings),
      ...(proposal.of === 'item' && { item: Math.max(0, item) }),
      words: shown,
      hidden: words.length - shown.length,
      forms,
      filled: field?.filled ?? 0,
      blank: field?.blank ?? 0,
      examples: showValues ? (field?.values ?? []) : [],
    };
  });
}

function choice(
  proposal: Proposal,
  catalogue: Catalogue,
  meanings: MeaningLists,
): { readonly choice?: Choice } {
  const { target, head, role, questions } = proposal;
  const none = { sides: [], sideRequired: false, units: [], regionRequired: false };
  if (target === undefined) {
    if (head !== undefined) return { choice: { head, ...none } };
    return role === undefined ? {} : { choice: none };
  }
  const asked = new Set(questions.map(({ question }) => question));
  return {
    choice: {
      ...choiceOf(bare(target), catalogue, meanings),
      // What a field beside it tells is not asked.
      sideRequired: asked.has('side'),
      regionRequired: asked.has('region'),
      ...(!asked.has('unit') && !('unit' in target) && { units: [] }),
    },
  };
}

function withoutWords(proposal: Proposal): Proposal {
  const { target, ...rest } = proposal;
  return target === undefined ? rest : { ...rest, target: bare(target) };
}

function bare(target: Target): Target {
  return 'words' in target ? { ...target, words: {} } : target;
}

function wordsOf(
  target: Target | undefined,
  values: readonly Counted[],
): readonly (readonly [string, string])[] {
  if (target !== undefined && 'words' in target && typeof target.words === 'object') {
    return Object.entries(target.words).map(([word, meaning]) => [
      word,
      typeof meaning === 'string' ? meaning : 'text',
    ]);
  }
  if (target !== undefined) return [];
  return values.map(({ text }) => [text, 'text']);
}

/** The maps of the items of a mapping that is not finished. */
function itemMaps(mapping: Suggestion['mapping']): readonly object[] {
  const items = mapping['items'];
  if (!Array.isArray(items)) return [];
  return items.map((one: unknown) =>
    typeof one === 'object' && one !== null && 'map' in one && typeof one.map === 'object'
      ? (one.map ?? {})
      : {},
  );
}
