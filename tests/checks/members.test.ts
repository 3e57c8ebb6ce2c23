import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { checkExam } from '../../src/checks/check-exam.ts';
import { indexExam } from '../../src/checks/exam-index.ts';
import { sign } from '../../src/checks/facts/stated.ts';
import { englishChecks } from '../../src/checks/words/english.ts';
import {
  type Exam,
  fromBundle,
  parseExam,
  type Statement,
  toBundleOrThrow,
} from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { examOf, examStart } from './rules/rule-cases.ts';

/** Groups and all their members with the sides they have, from the table of regions itself. */
const groups = [...builtInCatalogue.regions.values()].filter(({ group }) => group === true);

interface Member {
  readonly region: string;
  readonly side?: 'left' | 'right';
}

function membersOf(group: string): readonly Member[] {
  return [...builtInCatalogue.regions.values()].flatMap((row): readonly Member[] => {
    if (row.parent !== group) return [];
    if (row.group === true) return membersOf(row.code);
    const { code: region } = row;
    if (row.laterality !== 'paired') return [{ region }];
    return [
      { region, side: 'left' },
      { region, side: 'right' },
    ];
  });
}

const pairs = groups.flatMap(({ code, laterality }) =>
  membersOf(code).map((member) => ({
    group: { region: code, ...(laterality === 'paired' && { side: 'both' as const }) },
    member,
  })),
);

const finding = 'lump-felt';
const methods = ['inspection'] as const;
const reason = { code: 'unable-dressing' };

function absent(
  group: { readonly region: string; readonly side?: 'left' | 'both' },
  except?: readonly Member[],
): Statement {
  return {
    kind: 'finding',
    key: 'none',
    finding,
    presence: 'absent',
    methods,
    ...group,
    ...(except && { except }),
  };
}

const opened: readonly ((member: Member) => Statement)[] = [
  (member) => ({ kind: 'region-state', key: 'member', state: 'not-examined', ...member, reason }),
  (member) => ({
    kind: 'region-state',
    key: 'member',
    state: 'partial',
    ...member,
    methods,
    limit: reason,
  }),
];

function holds(statements: readonly Statement[], { region, side }: Member): boolean | undefined {
  const exam = examOf({ statements }, 'E-1', examStart);
  const context = {
    index: indexExam(exam),
    catalogue: builtInCatalogue,
    features: new Map(),
    words: englishChecks,
  };
  // Signs are read from the index and the tables alone.
  return sign(context as unknown as Parameters<typeof sign>[0], {
    finding,
    regions: [region],
    ...(side !== undefined && { side }),
    by: methods,
  }).holds;
}

function fires(statements: readonly Statement[]): boolean {
  const { results } = checkExam(examOf({ statements }, 'E-1', examStart));
  return results.some((one) => one.ruleId === 'R51' && one.outcome === 'fires');
}

describe('what is said of a group', () => {
  it('does not hold of a member that was not examined, or only in part', () => {
    for (const { group, member } of pairs) {
      expect(holds([absent(group)], member), member.region).toBe(false);
      for (const open of opened) {
        expect.soft(holds([absent(group), open(member)], member), member.region).toBeUndefined();
      }
      expect.soft(holds([absent(group, [member])], member), member.region).toBeUndefined();
    }
  });

  it('is an error beside such a member, unless it names it', () => {
    for (const { group, member } of pairs) {
      for (const open of opened) {
        expect.soft(fires([absent(group), open(member)]), member.region).toBe(true);
        expect.soft(fires([absent(group, [member]), open(member)]), member.region).toBe(false);
      }
    }
  });

  it('follows from all members that are normal by the method, and from all but one not', () => {
    for (const { code } of groups) {
      const normal = membersOf(code).map(
        (member, at): Statement => ({
          kind: 'region-state',
          key: `m-${at}`,
          state: 'normal',
          ...member,
          methods,
        }),
      );
      expect.soft(holds(normal, { region: code }), code).toBe(false);
      for (const left of normal) {
        const others = normal.filter((one) => one !== left);
        expect.soft(holds(others, { region: code }), code).toBeUndefined();
      }
    }
  });

  it('takes exceptions that are members with their side, of what is absent or normal', () => {
    const issuesOf = (statement: Statement): readonly string[] =>
      parseExam(examOf({ statements: [statement] }, 'E-1', examStart))
        .issues.filter(({ severity }) => severity === 'error')
        .map(({ code, path }) => `${code} ${path.slice(2).join('.')}`);
    const skin = { region: 'skin' };
    expect(issuesOf(absent(skin, [{ region: 'glabella' }]))).toEqual([]);
    expect(issuesOf(absent(skin, [{ region: 'forehead' }]))).toEqual([
      'missing-side except.0.side',
    ]);
    expect(issuesOf(absent(skin, [{ region: 'glabella', side: 'left' }]))).toEqual([
      'impossible-side except.0.side',
    ]);
    for (const region of ['thyroid-isthmus', 'skin']) {
      expect(issuesOf(absent(skin, [{ region }]))).toEqual(['contradiction except.0.region']);
    }
    expect(issuesOf(absent(skin, [{ region: 'glabela' }]))).toContain(
      'unknown-region except.0.region',
    );
    const there = { ...absent(skin, [{ region: 'glabella' }]), presence: 'present' } as Statement;
    expect(issuesOf(there)).toEqual(['contradiction except']);
  });

  it.each(['R4', 'R4B', 'R5'] as const)('keeps its exceptions through %s', (fhirVersion) => {
    const statements: readonly Statement[] = [
      absent({ region: 'eyes', side: 'left' }, [
        { region: 'pupil', side: 'left' },
        { region: 'cornea', side: 'left' },
      ]),
      {
        kind: 'region-state',
        key: 'skin',
        state: 'normal',
        region: 'skin',
        methods,
        except: [{ region: 'forehead', side: 'left' }],
      },
    ];
    const exam: Exam = {
      ...examOf({ statements }, 'E-1', examStart),
      recorded: '2024-05-31T12:00:00Z',
    };
    for (const laterality of ['extension', 'body-structure', 'text'] as const) {
      const bundle = toBundleOrThrow(exam, { fhirVersion, laterality });
      const text = JSON.stringify(bundle);
      expect(text).toContain('"Skin of face and neck (except Forehead, left)"');
      const { value, issues } = fromBundle(bundle);
      expect(issues).toEqual([]);
      expect(value?.statements).toEqual(statements);
    }
  });

  it('sends no code of another system for the place that it does not speak of as a whole', () => {
    const exam = examOf(
      { statements: [absent({ region: 'skin' }, [{ region: 'glabella' }])] },
      'E-1',
      examStart,
    );
    const bundle = toBundleOrThrow(exam);
    const sites = bundle.entry?.flatMap(({ resource }) =>
      resource !== undefined && 'bodySite' in resource && resource.resourceType === 'Observation'
        ? [resource.bodySite]
        : [],
    );
    expect(sites).toHaveLength(1);
    expect(JSON.stringify(sites)).not.toContain('snomed');
  });

  it('is whole in no example that leaves a member out', () => {
    for (const [name, exam] of examples) {
      const { results } = checkExam(exam);
      const found = results.filter((one) => one.ruleId === 'R51' && one.outcome === 'fires');
      expect(found, name).toEqual([]);
    }
    const page = toHtml(examples.get('skin-lesion') as Exam); // one of the six
    expect(page).toContain('Skin of face and neck (except ');
  });
});
