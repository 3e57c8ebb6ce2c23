import { describe, expect, it } from 'vitest';
import { documentName } from '../../src/cli/output/issue-writer.ts';
import { fromCsv } from '../../src/convert/csv/from-csv.ts';
import { fromXmlExport } from '../../src/convert/xml/from-xml-export.ts';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { fromXml, toXml } from '../../src/fhir/xml/index.ts';
import { parseExam, toBundleOrThrow, toJson } from '../../src/index.ts';
import { budgets } from '../../src/issues/budget.ts';
import { type Issue, issue, issueText } from '../../src/issues/issue.ts';
import { cutIssues } from '../../src/issues/issue-list.ts';
import { pathText } from '../../src/issues/path.ts';
import { shownText } from '../../src/issues/shown-text.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { createRandom } from '../../src/testing/random.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { toOperationOutcome } from '../../src/validate/to-operation-outcome.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { sampled } from '../sampled.ts';

const canary = 'Muster-Geheim';

type Holder = Record<string, unknown>;

function holders(value: unknown): Holder[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.values(value).flatMap(holders);
  return Array.isArray(value) ? inside : [value as Holder, ...inside];
}

/** A copy with the canary as the name of a property, as a value, or with a known name under it. */
function planted(data: object, seed: number): object {
  const random = createRandom(seed);
  const copy = structuredClone(data);
  const holder = random.pick(holders(copy));
  const [name = 'x', value] = random.pick(Object.entries(holder));
  random.pick([
    () =>
      Object.assign(holder, { [`Anna ${canary}`]: random.pick(['a', 5, null, {}, ['\u0000']]) }),
    () => Object.assign(holder, { [canary]: { '\u0001': { [canary]: '\uD800' } } }),
    () => Object.assign(holder, { [name]: { [canary]: value } }),
    () => Object.assign(holder, { [name]: canary }),
    () => Object.assign(holder, { [name]: [canary, { __proto__: null, constructor: canary }] }),
    () => Object.assign(holder, { resourceType: canary, kind: canary, code: canary }),
  ])();
  return copy;
}

function leaks(issues: readonly Issue[]): boolean {
  return JSON.stringify([issues, issues.map(issueText), toOperationOutcome(issues)]).includes(
    canary,
  );
}

describe('no text of the input stands in an issue', () => {
  /** `CANARY_SEEDS=5000` for a long run. */
  const count = Number(process.env.CANARY_SEEDS ?? sampled(5, 60));
  const seeds = Array.from({ length: count }, (_, seed) => seed);

  it('of an exam or a bundle, wherever a canary stands', () => {
    let told = 0;
    for (const seed of seeds) {
      const exam = sampleExam(seed, { size: 'small' });
      const bundle = toBundleOrThrow(exam);
      const badExam = planted(exam, seed);
      const badBundle = planted(bundle, seed);
      const found = [
        parseExam(badExam).issues,
        validateBundle(badBundle).issues,
        fromBundle(badBundle).issues,
        toXml(badBundle).issues,
      ];
      for (const [at, issues] of found.entries()) {
        told += issues.length;
        expect({ seed, at, leaks: leaks(issues) }).toEqual({ seed, at, leaks: false });
      }
    }
    expect(told).toBeGreaterThan(seeds.length);
  });

  it('of JSON and XML with a bracket, quote or mark lost', () => {
    const bundle = toBundleOrThrow(sampleExam(1, { size: 'small' }));
    const texts = [toJson(bundle), toXml(bundle).value ?? ''];
    for (const seed of seeds) {
      const random = createRandom(seed);
      for (const [at, text] of texts.entries()) {
        const cut = random.pick([...text.matchAll(/["{}[\]<>:,]/g)]).index;
        const damaged = `${text.slice(0, cut)}"${canary}":"${canary}<${canary} ${text.slice(cut + 1)}`;
        const { issues } = at === 0 ? fromJson(damaged) : fromXml(damaged);
        expect({ seed, at, leaks: leaks(issues) }).toEqual({ seed, at, leaks: false });
      }
    }
  });

  it('of a JSON text in which a lost bracket made a name of a value', () => {
    const { issues } = fromJson('{"name":{"given":"Anna","Maria Muster-Geheim"]}}');
    expect(issues.map(({ path }) => pathText(path))).toEqual(['name[unknown property 2]']);
  });

  it('of a legacy export, as heading or as the name of an element', () => {
    const source = { zone: 'UTC', dates: ['yyyy-MM-dd'] };
    const mapping = { format: 'face-neck-mapping/1', exam: {}, fields: {} };
    const csv = { ...mapping, source: { ...source, syntax: 'csv' } } as never;
    const xml = { ...mapping, source: { ...source, syntax: 'xml', exam: 'e/x' } } as never;
    const found = [
      fromCsv(`${canary},b\n${canary},c\n`, csv).issues,
      fromXmlExport(`<e><x><${canary} ${canary}="${canary}">${canary}</${canary}></x></e>`, xml)
        .issues,
    ];
    expect(found.map(leaks)).toEqual([false, false]);
  });

  it('but a mistyped name is shown, with the one that it is near', () => {
    const { issues } = parseExam({ ...sampleExam(1, { size: 'small' }), statments: [] });
    expect(issues.map(({ path, expected }) => [pathText(path), expected])).toContainEqual([
      'statments',
      'statements',
    ]);
  });
});

// Unicode Technical Report 36, 3.1 and 3.2; ECMA-48 for escape sequences.
describe('text for a terminal', () => {
  it.each([
    ['plain Ärzte 漢字 😀', 'plain Ärzte 漢字 😀'],
    ['a\u001b[2Jb', 'a\\u{1b}[2Jb'],
    ['a\u009b31mb', 'a\\u{9b}31mb'],
    ['valid  a.json\nvalid  b.json', 'valid  a.json\\u{a}valid  b.json'],
    ['a\u202egpj.exe', 'a\\u{202e}gpj.exe'],
    ['a\u2028b\u2066c\u200bd', 'a\\u{2028}b\\u{2066}c\\u{200b}d'],
    ['\u0007\u0008\r\t', '\\u{7}\\u{8}\\u{d}\\u{9}'],
  ])('%j is shown as %j', (text, shown) => {
    expect(shownText(text)).toBe(shown);
  });

  it('holds for every control and format character in issues and names of files', () => {
    for (let code = 0; code < 0x3000; code++) {
      const character = String.fromCharCode(code);
      if (!/[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}]/u.test(character)) continue;
      const found = issue('unsafe-property', [character], { reason: 'name' });
      expect(issueText(found)).not.toContain(character);
      expect(documentName({ input: `a${character}b` } as never)).not.toContain(character);
    }
  });
});

describe('a list of issues', () => {
  const mostIssues = budgets.exam.issues;
  const many = Array.from({ length: 5000 }, (_, at) =>
    issue(
      'unsafe-property',
      [at],
      { reason: 'name' },
      { severity: at > 4990 ? 'error' : 'information' },
    ),
  );

  it('is cut with a count, and errors are never what is left out', () => {
    const cut = cutIssues(many);
    expect(cut).toHaveLength(mostIssues + 1);
    expect(cut.filter(({ severity }) => severity === 'error')).toHaveLength(9);
    expect(cut.at(-1)).toMatchObject({ code: 'issues-cut', severity: 'information' });
    expect(cut.at(-1)?.message).toContain('4000');
  });

  it('stays whole where it is short', () => {
    expect(cutIssues(many.slice(0, mostIssues))).toEqual(many.slice(0, mostIssues));
  });
});
