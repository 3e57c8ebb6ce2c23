import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { targetConversion } from '../../kinds/registries/conversions.ts';
import { issue } from '../issue.ts';
import type { ItemRecords, ItemStatus, Mapping } from '../mapping/mapping.ts';
import type { Target } from '../mapping/target.ts';

/**
 * What the statusCode of an entry says (code system v3-ActStatus of HL7 terminology 7.0.1). Our
 * choice: only what is completed was found; what is still going on is kept as text.
 */
export const actStatusWords: { readonly [code: string]: ItemStatus } = {
  completed: 'stated',
  normal: 'text',
  new: 'text',
  active: 'text',
  held: 'text',
  suspended: 'text',
  aborted: 'withdrawn',
  cancelled: 'withdrawn',
  nullified: 'withdrawn',
  obsolete: 'withdrawn',
};

/** The mapping with the meaning of statusCode filled in where it says nothing of it. */
export function completeCda(mapping: Mapping): Mapping {
  if (mapping.items === undefined) return mapping;
  return { ...mapping, items: mapping.items.map((items) => withLaterality(withStatus(items))) };
}

/** SNOMED CT 272741003 Laterality: the name of the qualifier that holds a side (C-CDA R2.1, 1.1.13). */
const LATERALITY = '272741003';

/** A qualifier of a site says a side only where its name says so; others are of depth, order or kind. */
function withLaterality(items: ItemRecords): ItemRecords {
  const end = '/qualifier/value/@code';
  if (typeof items.side !== 'string' || !items.side.endsWith(end)) return items;
  const field = items.side.replace(end, '/qualifier/name/@code');
  return { ...items, side: { from: items.side, where: { field, is: LATERALITY } } };
}

/** Records that have no status of their own. */
const notActs: ReadonlySet<string> = new Set(['section', 'other-section', 'nonXMLBody']);

function withStatus(items: ItemRecords): ItemRecords {
  const element = items.kind?.replace(/^negated-/, '');
  if (items.status !== undefined || element === undefined || notActs.has(element)) return items;
  return { ...items, status: { from: `${element}/statusCode/@code`, words: actStatusWords } };
}

/**
 * What a mapping of CDA must not do: take a negated entry for a stated one, or read a narrative as
 * anything but a note.
 */
export function cdaMappingIssues(mapping: Mapping): Issue[] {
  const issues: Issue[] = [];
  (mapping.items ?? []).forEach((items, at) => {
    const path = ['items', at];
    if (items.kind === undefined) {
      issues.push(issue('missing-property', [...path, 'kind'], { reason: 'item-kind' }));
    }
    if (!isNarrative(items.value)) return;
    for (const [code, target] of Object.entries(items.map)) {
      if (!isVerbatim(target)) issues.push(notANote([...path, 'map', code, 'kind']));
    }
  });
  for (const [name, target] of Object.entries(mapping.fields ?? {})) {
    if (isNarrative(name) && !isVerbatim(target)) issues.push(notANote(['fields', name, 'kind']));
  }
  return issues;
}

function isVerbatim(target: Target): boolean {
  return targetConversion(target).verbatim === true;
}

function isNarrative(name: string): boolean {
  return ['section/text', 'section/title', 'nonXMLBody/text'].includes(name);
}

function notANote(path: Path): Issue {
  return issue('contradiction', path, { reason: 'narrative' });
}
