import { ruleTitles } from '../../issues/english/rules.ts';
import type { Finding } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { listIn } from '../exam-index.ts';
import { methodsMeet } from '../facts/signs.ts';
import { regionName } from '../places/regions.ts';
import { sidesOverlap } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when a sign is both found and not found at one place, or two values of one feature are. */
export const r35ContradictorySigns: ConsistencyRule = {
  id: 'R35',
  title: ruleTitles.R35,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'contradiction',
  source:
    'common practice, no source; the table of findings says which signs are values of one feature',
  evidence: 'common-practice',
  run: (context) => {
    const findings = context.index.all('finding');
    if (findings.length < 2) return [];
    const found = [...presentAndAbsent(context, findings), ...twoValues(context, findings)];
    if (found.some((one) => one.outcome === 'fires')) return found;
    return [
      ...found,
      {
        outcome: 'does-not-fire',
        inputsUsed: [],
        inputsMissing: [],
        text: 'No signs exclude each other.',
      },
    ];
  },
};

function presentAndAbsent(
  context: CheckContext,
  findings: readonly Finding[],
): readonly RuleFinding[] {
  const present = new Map<string, Finding[]>();
  for (const one of findings) {
    if (one.presence === 'present') listIn(present, `${one.region} ${one.finding}`).push(one);
  }
  return findings.flatMap((absent) => {
    if (absent.presence !== 'absent') return [];
    const against = present
      .get(`${absent.region} ${absent.finding}`)
      ?.find((one) => meet(one, absent) && sameLesion(one, absent));
    return against === undefined ? [] : [clash(context, against, absent, 'found and not found')];
  });
}

function twoValues(context: CheckContext, findings: readonly Finding[]): readonly RuleFinding[] {
  const places = new Map<string, Finding[]>();
  const found: RuleFinding[] = [];
  for (const one of findings) {
    const feature = context.catalogue.findings.get(one.finding)?.feature;
    if (feature === undefined || one.presence !== 'present') continue;
    const here = listIn(places, `${one.region} ${feature}`);
    const against = here.find(
      (other) => other.finding !== one.finding && meet(other, one) && sameQuadrant(other, one),
    );
    if (against !== undefined) {
      found.push(clash(context, against, one, 'two values of one feature'));
    }
    // Alike signs add nothing to compare with, and leaving them out keeps long lists quick.
    if (!here.some((other) => alike(other, one))) here.push(one);
  }
  return found;
}

function alike(a: Finding, b: Finding): boolean {
  return (
    a.finding === b.finding &&
    a.side === b.side &&
    a.place === b.place &&
    a.methods?.join(' ') === b.methods?.join(' ') &&
    partsOf(a).join(' ') === partsOf(b).join(' ')
  );
}

/** One place, on one side, seen by one method, as far as the two say. */
function meet(a: Finding, b: Finding): boolean {
  const samePlace = a.place === undefined || b.place === undefined || a.place === b.place;
  return samePlace && sidesOverlap(a.side, b.side) && methodsMeet(a.methods, b.methods);
}

/** Followed lesions are themselves: one can be gone while another is there. */
function sameLesion(a: Finding, b: Finding): boolean {
  return a.tracking === undefined || b.tracking === undefined || a.tracking === b.tracking;
}

/** Parts of the eardrum can look different. */
function sameQuadrant(a: Finding, b: Finding): boolean {
  const [mine, yours] = [partsOf(a), partsOf(b)];
  return mine.length === 0 || yours.length === 0 || mine.some((part) => yours.includes(part));
}

function partsOf(finding: Finding): readonly unknown[] {
  return (finding.attributes ?? [])
    .filter((one) => one.attribute === 'tm-part')
    .map((one) => one.value);
}

function clash(
  { catalogue }: CheckContext,
  first: Finding,
  second: Finding,
  how: string,
): RuleFinding {
  // With a place in words on one of them alone the two may be about different spots.
  const certain = first.place === second.place;
  return {
    outcome: certain ? 'fires' : 'not-evaluable',
    on: second.key,
    ...(second.side !== undefined && { side: second.side }),
    inputsUsed: [second.key, first.key],
    inputsMissing: certain ? [] : ['whether both are about the same spot'],
    text: `${regionName(catalogue, second.region)}: ${how}${certain ? '' : ', if both are about one spot'}.`,
  };
}
