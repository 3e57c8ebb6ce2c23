import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import { sideSnomed } from '../../terminology/sides.ts';
import type { XmlElement } from '../../xml/tree.ts';
import { type ConversionCode, type ConversionFacts, issue } from '../issue.ts';
import type { Field, LegacyRecord } from '../record/record.ts';
import { actStatusWords } from './complete.ts';
import { disagreements, type EntryClaim } from './conflict.ts';
import { type PlaceOf, readFields, typeOf, valueFields } from './fields.ts';
import { childElement, childElements } from './names.ts';

export interface EntryReading {
  readonly placeOf: PlaceOf;
  readonly issues: Issue[];
  readonly records: LegacyRecord[];
  /** Narrative of the element with this ID in the entry's section. */
  readonly narrative: (id: string) => string | undefined;
  /** The section, or an entry around this one, is about someone else. */
  readonly ofOther?: boolean;
  /** An entry around this one is denied, planned or taken back: what this one says may not hold. */
  readonly inDoubt?: boolean;
}

const ownRecords: ReadonlySet<string> = new Set(['entryRelationship', 'component', 'value']);

/**
 * An entry and the entries inside it, each as a record named by its element. With negationInd it is
 * a `negated-observation` (and so on): a mapping for observations never takes a negated one. An
 * entry inside another also has the code of that one, as `../code/@code`.
 */
export function readEntry(
  act: XmlElement,
  parent: XmlElement | undefined,
  reading: EntryReading,
): void {
  const { placeOf, records } = reading;
  const at = placeOf(act.start);
  const values = childElements(act, 'value');
  const fields = [
    ...readFields(act, placeOf, ownRecords, act.name),
    ...values.flatMap((value) => valueFields(value, `${act.name}/value`, placeOf)),
    ...outerFields(parent, placeOf),
  ];
  const negated = isTrue(act.attributes.get('negationInd'));
  const ofOther = reading.ofOther || childElement(act, 'subject') !== undefined;
  const problems = [
    ...moodProblems(act, placeOf),
    ...nullProblems(act, values, placeOf),
    ...(ofOther ? [otherSubject(act, placeOf)] : []),
    ...(reading.inDoubt ? [outerDoubt(act, placeOf)] : []),
  ];
  records.push({
    kind: negated ? `negated-${act.name}` : act.name,
    fields,
    at,
    ...(problems.length > 0 && { malformed: problems }),
  });
  append(reading.issues, referenceIssues(act, values, negated, reading));
  const isDoubtful = reading.inDoubt || negated || isOpen(act);
  for (const link of act.children) {
    if (link.name !== 'entryRelationship' && link.name !== 'component') continue;
    const inDoubt = isDoubtful || isTrue(link.attributes.get('negationInd'));
    for (const inner of link.children) readEntry(inner, act, { ...reading, ofOther, inDoubt });
  }
}

/** Planned, or taken back: statuses of v3-ActStatus that say so of a whole. */
function isOpen(act: XmlElement): boolean {
  const mood = act.attributes.get('moodCode');
  const status = childElement(act, 'statusCode')?.attributes.get('code')?.trim() ?? '';
  const isWithdrawn =
    Object.hasOwn(actStatusWords, status) && actStatusWords[status] === 'withdrawn';
  return (mood !== undefined && mood !== 'EVN') || isWithdrawn;
}

/** CDA does not say what the negation or the end of a whole means for its parts (CDA R2, 4.3.8). */
function outerDoubt(act: XmlElement, placeOf: PlaceOf): Issue {
  const details = { severity: 'warning', source: placeOf(act.start) } as const;
  return issue('contradiction', [], { reason: 'outer-entry' }, details);
}

function outerFields(parent: XmlElement | undefined, placeOf: PlaceOf): Field[] {
  const code = parent && childElement(parent, 'code');
  const text = code?.attributes.get('code');
  if (code === undefined || text === undefined) return [];
  return [{ name: '../code/@code', text, at: placeOf(code.start) }];
}

/** Only what has happened was found: a plan, goal or order is not a finding. */
function moodProblems(act: XmlElement, placeOf: PlaceOf): Issue[] {
  const mood = act.attributes.get('moodCode');
  if (mood === undefined || mood === 'EVN') return [];
  return [
    issue(
      'not-an-event',
      [],
      { reason: 'mood' },
      {
        severity: 'warning',
        source: placeOf(act.start),
      },
    ),
  ];
}

/** What is found on a relative, a fetus or a specimen is not found on the patient (CDA R2, 4.3.3.7). */
function otherSubject(act: XmlElement, placeOf: PlaceOf): Issue {
  const source = placeOf(act.start);
  return issue('several-patients', [], { reason: 'subject' }, { severity: 'warning', source });
}

/** A nullFlavor on the entry says that there is no information; a value in it says that there is. */
function nullProblems(act: XmlElement, values: readonly XmlElement[], placeOf: PlaceOf): Issue[] {
  if (!act.attributes.has('nullFlavor')) return [];
  if (values.every((value) => value.attributes.has('nullFlavor'))) return [];
  return [
    issue(
      'contradiction',
      [],
      { reason: 'null-entry' },
      { severity: 'warning', source: placeOf(act.start) },
    ),
  ];
}

/** Holds an entry against the piece of narrative that it refers to. Both are kept either way. */
function referenceIssues(
  act: XmlElement,
  values: readonly XmlElement[],
  negated: boolean,
  reading: EntryReading,
): Issue[] {
  const text = childElement(act, 'text');
  const reference = text && childElement(text, 'reference')?.attributes.get('value');
  if (text === undefined || reference === undefined || !reference.startsWith('#')) return [];
  const report = <Code extends ConversionCode>(code: Code, facts: ConversionFacts<Code>): Issue =>
    issue(code, [], facts, {
      severity: 'warning',
      source: reading.placeOf(text.start),
    });
  const narrative = reading.narrative(reference.slice(1));
  if (narrative === undefined) {
    return [report('broken-reference', { reason: 'narrative' })];
  }
  const parts = disagreements(narrative, claimOf(act, values, negated));
  if (parts.length === 0) return [];
  return [report('narrative-conflict', { reason: 'parts', names: parts })];
}

function claimOf(act: XmlElement, [value]: readonly XmlElement[], negated: boolean): EntryClaim {
  const side = sideOf(act);
  const isNumber = value !== undefined && /^(?:PQ|INT|REAL)$/.test(typeOf(value));
  const number = isNumber ? value.attributes.get('value') : undefined;
  const asserts = childElement(act, 'code')?.attributes.get('code') === 'ASSERTION';
  return {
    ...(number !== undefined && { number }),
    ...(side !== undefined && { side }),
    // Without the assertion pattern a value such as "absent" may carry the negation itself.
    ...((negated || asserts) && { negated }),
  };
}

/** The side by the SNOMED CT code of the target site's laterality qualifier. */
function sideOf(act: XmlElement): 'left' | 'right' | undefined {
  const site = childElement(act, 'targetSiteCode');
  const codes = (site === undefined ? [] : childElements(site, 'qualifier')).map((qualifier) =>
    childElement(qualifier, 'value')?.attributes.get('code'),
  );
  if (codes.includes(sideSnomed.left)) return 'left';
  return codes.includes(sideSnomed.right) ? 'right' : undefined;
}

function isTrue(text: string | undefined): boolean {
  return text === 'true' || text === '1';
}
