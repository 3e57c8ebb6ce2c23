import { expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import type { Exam } from '../../src/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { sampleExams } from '../../src/testing/index.ts';
import { notFound, observationsOf, overread } from '../export/overread.ts';

/** SEEDED_EXAMS=200 takes fewer. */
const COUNT = Number(process.env['SEEDED_EXAMS'] ?? 2000);

function* exams(): Generator<Exam> {
  yield* examples.values();
  yield* sampleExams(1, COUNT);
}

it.each(['R4', 'R4B', 'R5'] as const)(
  'nothing that was not found bears a code of a wider sign or place, %s',
  (fhirVersion) => {
    let denied = 0;
    const wider: string[] = [];
    for (const exam of exams()) {
      denied += notFound(exam);
      wider.push(...overread(exam, { fhirVersion, narrative: false }));
    }
    console.info(`${fhirVersion}: ${denied} negatives, ${wider.length} wider than examined`);
    expect(wider).toEqual([]);
    expect(denied).toBeGreaterThan(25 * COUNT);
  },
);

it('nothing that was taken over and not looked at again leaves as of today', () => {
  let takenOver = 0;
  const asToday: string[] = [];
  for (const exam of exams()) {
    const unconfirmed = exam.statements.filter(({ carried }) => carried?.confirmed === false);
    if (unconfirmed.length === 0) continue;
    const observations = observationsOf(exam, { narrative: false });
    const start = Date.parse(exam.performed.start);
    for (const { key, kind } of unconfirmed) {
      // A picture is no observation.
      if (kind === 'image') continue;
      takenOver += 1;
      const { status = '', effectiveDateTime = '' } = observations.get(key) ?? {};
      const unverified = ['preliminary', 'cancelled', 'entered-in-error'].includes(status);
      if (!unverified || !(Date.parse(effectiveDateTime) < start))
        asToday.push(`${exam.id} ${key}`);
    }
  }
  console.info(`${takenOver} taken over and not looked at again, ${asToday.length} as of today`);
  expect(asToday).toEqual([]);
  expect(takenOver).toBeGreaterThan(COUNT / 2);
});

it('what is said of a group names every member that was not examined, only in part, or has the sign', () => {
  let groups = 0;
  const overSaid: string[] = [];
  for (const exam of exams()) {
    for (const one of exam.statements.filter(isOfGroup)) {
      groups += 1;
      const named = new Set(('except' in one ? (one.except ?? []) : []).map(placeOf));
      const open = exam.statements.filter((member) => isOpen(member, one));
      overSaid.push(
        ...open
          .filter((member) => !named.has(placeOf(member)))
          .map(({ key }) => `${exam.id} ${one.key} ${key}`),
      );
    }
  }
  console.info(`${groups} negatives of groups, ${overSaid.length} over members that are open`);
  expect(overSaid).toEqual([]);
  expect(groups).toBeGreaterThan(COUNT / 10);
});

type Statement = Exam['statements'][number];
type Judged = Extract<Statement, { kind: 'finding' | 'region-state' }>;
type Place = { readonly region: string; readonly side?: string | undefined };

function placeOf({ region, side }: Place): string {
  return `${region} ${side ?? ''}`;
}

function isOfGroup(one: Statement): one is Judged {
  const normal = one.kind === 'region-state' && one.state === 'normal';
  const absent = one.kind === 'finding' && one.presence === 'absent';
  if (!(normal || absent) || one.carried?.confirmed === false) return false;
  return builtInCatalogue.regions.get(one.region)?.group === true;
}

/** By the fields of the statements and the parents in the table alone. */
function isOpen(member: Statement, group: Judged): member is Judged {
  if (member.kind !== 'region-state' && member.kind !== 'finding') return false;
  if (member.carried?.confirmed === false || !isBelow(member.region, group.region)) return false;
  const [mine, yours] = [member.methods, group.methods];
  if (mine && yours && !mine.some((method) => yours.includes(method))) return false;
  if (member.kind === 'region-state') {
    return ['not-examined', 'partial', 'not-applicable'].includes(member.state);
  }
  return (
    group.kind === 'finding' && member.finding === group.finding && member.presence === 'present'
  );
}

function isBelow(region: string, group: string): boolean {
  const parent = builtInCatalogue.regions.get(region)?.parent;
  return parent !== undefined && (parent === group || isBelow(parent, group));
}
