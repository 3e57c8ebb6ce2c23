import { describe, expect, it } from 'vitest';
import {
  type Exam,
  type ExamDraft,
  finishExam,
  finishExamOrThrow,
  fromBundle,
  type Issue,
  startExam,
  state,
  toBundle,
  toBundleOrThrow,
  toJson,
} from '../../src/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { lateralitySides } from '../../src/terminology/sides.ts';
import { begin } from './begin.ts';

const draft = startExam({
  ...begin,
  examiners: [{ key: 'doctor' }, { key: 'nurse' }],
});

const methods = ['inspection'] as const;
const reason = { code: 'unable-dressing' };

/** Every group of the table with each member below it that is no group. */
const pairs = [...builtInCatalogue.regions.values()].flatMap((member) => {
  const groups: string[] = [];
  for (let above = member.parent; above !== undefined; ) {
    groups.push(above);
    above = builtInCatalogue.regions.get(above)?.parent;
  }
  return member.group === true ? [] : groups.map((group) => [group, member] as const);
});

type Stated = Parameters<typeof state>[1];

/** A state of a region, or a sign of it; the compiler does not follow what is put together here. */
function said(to: ExamDraft, what: object): ExamDraft {
  return state(to, what as Stated);
}

function normal(to: ExamDraft, at: object): ExamDraft {
  return said(to, { kind: 'region-state', state: 'normal', methods, ...at });
}

function notExamined(to: ExamDraft, at: object): ExamDraft {
  return said(to, { kind: 'region-state', state: 'not-examined', reason, ...at });
}

function partial(to: ExamDraft, at: object): ExamDraft {
  return said(to, { kind: 'region-state', state: 'partial', methods, limit: reason, ...at });
}

function absent(to: ExamDraft, at: object): ExamDraft {
  return said(to, { kind: 'finding', finding: 'lump-felt', presence: 'absent', ...at });
}

/** What says of the group that all of it is well, and of the member that it was not seen, or not whole. */
const whole = { normal, absent };
const open = { 'not examined': notExamined, partial };

/** The place with a side where it must have one: of a group both. */
function sided(region: string, wanted: 'right' | 'both' = 'right'): object {
  const row = builtInCatalogue.regions.get(region);
  const { sides, required } = lateralitySides[row?.laterality ?? 'whole'];
  return { region, ...(required && { side: sides.includes(wanted) ? wanted : sides[0] }) };
}

function codesOf({ issues }: { readonly issues: readonly Issue[] }): string[] {
  return issues
    .filter(({ severity }) => severity === 'error')
    .map(({ code, facts }) => `${code} ${'reason' in facts ? facts.reason : ''}`);
}

const refused = ['contradiction open-members'];

describe.each(Object.entries(whole))('a group that is said to be %s', (_, all) => {
  it.each(Object.entries(open))('beside a member that is %s names it', (_name, one) => {
    expect(pairs.length).toBeGreaterThan(90);
    for (const [group, { code }] of pairs) {
      const member = sided(code);
      const beside = one(draft, member);
      const told = codesOf(finishExam(all(beside, sided(group, 'both')), 'final'));
      expect({ group, code, told }).toEqual({ group, code, told: refused });
      const named = all(beside, { ...sided(group, 'both'), except: [member] });
      expect({ group, code, told: codesOf(finishExam(named, 'final')) }).toMatchObject({
        told: [],
      });
    }
  });
});

describe('what leaves another reading', () => {
  const hidden = notExamined(draft, { region: 'forehead', side: 'left' });
  const face = { region: 'skin', methods } as const;

  it.each([
    [
      'the exception of what holds it',
      normal(hidden, { ...face, except: [{ region: 'forehead', side: 'both' }] }),
    ],
    ['another examiner', normal(hidden, { ...face, examiner: 'nurse' })],
    ['another time', normal(hidden, { ...face, at: '2025-05-05T09:10:00+02:00' })],
    [
      'another method',
      normal(partial(draft, { region: 'forehead', side: 'left', methods: ['palpation'] }), face),
    ],
    [
      'an earlier exam',
      normal(hidden, {
        ...face,
        carried: { exam: 'e', statement: 's', at: '2020', confirmed: false },
      }),
    ],
  ])('is accepted: %s', (_, given) => {
    expect(codesOf(finishExam(given, 'final'))).toEqual([]);
  });

  it('is no exception of the other side', () => {
    const other = normal(hidden, { ...face, except: [{ region: 'forehead', side: 'right' }] });
    expect(codesOf(finishExam(other, 'final'))).toEqual(refused);
  });
});

describe('by whatever way it comes', () => {
  const hidden = notExamined(draft, { region: 'forehead', side: 'left' });
  const except = [{ region: 'forehead', side: 'left' }] as const;
  const sound = finishExamOrThrow(normal(hidden, { region: 'skin', methods, except }), 'final');

  it('plain data is not exported', () => {
    const plain = JSON.parse(JSON.stringify(sound).replace(/,"except":\[[^\]]*\]/, ''));
    expect(codesOf(toBundle(plain as Exam))).toEqual(refused);
  });

  it('a bundle that says both is told, and neither is dropped', () => {
    const bundle = toBundleOrThrow(sound);
    for (const { resource } of bundle.entry ?? []) {
      if (resource?.resourceType === 'Observation' && 'component' in resource)
        delete resource.component;
    }
    const { value, issues } = fromBundle(JSON.parse(toJson(bundle)));
    expect(issues.map(({ code, severity }) => `${severity} ${code}`)).toContain(
      'error contradiction',
    );
    expect(value?.statements).toHaveLength(2);
  });
});
