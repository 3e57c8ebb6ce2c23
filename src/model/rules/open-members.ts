import { isUnconfirmed, seenAt } from '../../kinds/facets/base.ts';
import type { Saying } from '../../kinds/facets/meaning.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Key } from '../primitive.ts';
import { sidesOverlap } from '../sides.ts';
import type { Statement } from '../statement.ts';
import { isWithin, lineageOf } from './places.ts';
import type { ExamRule, RuleContext } from './rule.ts';

/**
 * What is normal or not there in a group of regions holds of every member that is not excepted. So it
 * may not stand beside a member that was not examined, only in part, or is not there, by the same
 * examiner at the same time, and by a method in common where both name one.
 */
export const seenMembers: ExamRule = ({ exam, catalogue, said: saidBy, report }) => {
  const open = openByGroup(exam.statements, catalogue, saidBy);
  if (open.size === 0) return;
  exam.statements.forEach((statement, at) => {
    if (isUnconfirmed(statement)) return;
    const [said] = saidBy(statement);
    const [place] = said?.at ?? [];
    if (said === undefined || place === undefined || !saysOfAll(said)) return;
    const keys = (open.get(groupOf(place.region, statement)) ?? [])
      .filter((member) => meets(said, member) && !excepted(said, member, catalogue))
      .map(({ key }) => key);
    if (keys.length > 0)
      report('contradiction', ['statements', at], { reason: 'open-members', keys });
  });
};

/** A sign that is not there, or a region that is normal. */
function saysOfAll({ of, polarity }: Saying): boolean {
  return polarity === 'denies' && (of.table === 'findings' || of.table === 'regions');
}

interface Open {
  readonly key: Key;
  readonly region: string;
  readonly side: Saying['at'][number]['side'];
  readonly methods: Saying['methods'];
}

/** What was not seen, or not whole, by each group that holds it. Alike ones stand once, which bounds the lists. */
function openByGroup(
  statements: readonly Statement[],
  catalogue: Catalogue,
  saidBy: RuleContext['said'],
): ReadonlyMap<string, readonly Open[]> {
  const open = new Map<string, Open[]>();
  const known = new Set<string>();
  for (const statement of statements) {
    if (isUnconfirmed(statement)) continue;
    const [said] = saidBy(statement);
    const [place] = said?.at ?? [];
    if (said?.of.table !== 'regions' || said.completeness === 'whole' || place === undefined)
      continue;
    const alike = JSON.stringify([groupOf(place.region, statement), place.side, said.methods]);
    if (known.has(alike)) continue;
    known.add(alike);
    for (const above of lineageOf(place.region, catalogue).slice(1)) {
      if (above === undefined) continue;
      const name = groupOf(above, statement);
      const list = open.get(name) ?? [];
      list.push({ key: statement.key, ...place, methods: said.methods });
      open.set(name, list);
    }
  }
  return open;
}

function groupOf(region: string, statement: Statement): string {
  return JSON.stringify([region, statement.examiner, seenAt(statement)]);
}

function meets({ at: [place], methods }: Saying, member: Open): boolean {
  return (
    sidesOverlap(place?.side, member.side) &&
    (methods.length === 0 ||
      member.methods.length === 0 ||
      methods.some((method) => member.methods.includes(method)))
  );
}

function excepted({ except }: Saying, member: Open, catalogue: Catalogue): boolean {
  return except.some(
    ({ region, side }) =>
      isWithin(member.region, region, catalogue) && sidesOverlap(member.side, side),
  );
}
