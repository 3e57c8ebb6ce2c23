import fc from 'fast-check';
import { expect, test } from 'vitest';
import { thoroughR4 } from '../../../src/validate/thorough/thorough.ts';
import { validateBundle as r4 } from '../../../src/validate/versions/r4.ts';
import { validateBundle as r4b } from '../../../src/validate/versions/r4b.ts';
import { validateBundle as r5 } from '../../../src/validate/versions/r5.ts';
import { keptBases } from '../../reference/bases.ts';
import { sampled } from '../../sampled.ts';
import { observation, profiles } from '../profiles/adopter-profile.ts';

// Whatever stands in the place of any part of a bundle: issues, and no throw.

type Path = readonly (string | number)[];

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([name, each]) =>
    pathsOf(each, [...path, Array.isArray(value) ? Number(name) : name]),
  );
  return [path, ...inner];
}

/** A copy with another value at a path, or without what stands there. */
function replaced(base: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  const copy: unknown = Array.isArray(base) ? [...base] : { ...Object(base) };
  const holder = copy as Record<string | number, unknown>; // a copy of an object or list
  holder[step] = replaced(holder[step], rest, value);
  return copy;
}

/** Values that a place may hold in some other resource, and values of no use anywhere. */
const odd = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom<unknown>(
    ...[null, '', ' ', '#', '#p', 'Patient/', 'urn:uuid:', 'http://', 'PT', '2026-02-30', '1e999'],
    ...[[], {}, [null], [[]], { reference: '#' }, { coding: [{ code: '' }] }, { value: 1 }],
    ...[
      { url: 'x', extension: [] },
      { resourceType: 'Patient' },
      { resourceType: 'Bundle', entry: [{}] },
    ],
    ...[
      '<div xmlns="http://www.w3.org/1999/xhtml"><',
      '</>',
      '<!--',
      '&#',
      '%',
      '\u0000',
      '\ud800',
    ],
    ...[-0, 1e21, 2 ** 53, Number.NaN, true, undefined, { __proto__: null }, { constructor: 1 }],
  ),
);

const bases = keptBases()
  .filter((_, at) => at % 5 === 0)
  .map(({ version, text }) => ({ version, bundle: JSON.parse(text) as unknown }))
  .map((base) => ({ ...base, paths: pathsOf(base.bundle) }));
const validators = { R4: r4, R4B: r4b, R5: r5 } as const;

const broken = fc.constantFrom(...bases).chain(({ version, bundle, paths }) =>
  fc
    .array(fc.tuple(fc.constantFrom(...paths), odd), { minLength: 1, maxLength: 3 })
    .map((changes) => ({
      version,
      value: changes.reduce((base, [path, value]) => replaced(base, path, value), bundle),
    })),
);

test('bundles with anything in any place', () => {
  fc.assert(
    fc.property(broken, ({ version, value }) => {
      const { valid, issues } = validators[version](value, { includeValues: true });
      expect(valid).toBe(!issues.some(({ severity }) => severity === 'error'));
    }),
    { numRuns: sampled(200, 600), seed: 20_261_128 },
  );
});

test('resources with anything in any place, against a profile and at the thorough level', () => {
  const paths = pathsOf(observation);
  const changes = fc.array(fc.tuple(fc.constantFrom(...paths), odd), {
    minLength: 1,
    maxLength: 3,
  });
  fc.assert(
    fc.property(changes, (list) => {
      const value = list.reduce<unknown>(
        (base, [path, each]) => replaced(base, path, each),
        observation,
      );
      const fast = r4(value, { profiles });
      const thorough = r4(value, { profiles, level: 'thorough', engine: thoroughR4 });
      // The same is told, and at the thorough level perhaps more.
      const texts = new Set(thorough.issues.map((one) => JSON.stringify(one)));
      const lost = fast.issues.filter(
        (one) => one.code !== 'unchecked-rule' && !texts.has(JSON.stringify(one)),
      );
      expect(lost).toEqual([]);
    }),
    { numRuns: sampled(100, 300), seed: 20_261_128 },
  );
});

test('a null or a list in the place of any part: the fast level tells no rule that the thorough one does not', () => {
  const forms: readonly unknown[] = [null, [null], [[]], [null, null]];
  const lost = pathsOf(observation).flatMap((path) =>
    forms.flatMap((form) => {
      const value = replaced(observation, path, form);
      const told = (options: { level?: 'thorough'; engine?: typeof thoroughR4 }): string[] =>
        r4(value, { profiles, ...options })
          .issues.filter(({ code }) => code === 'broken-invariant')
          .map(({ rule, path: place }) => `${rule} at ${place.join('.')}`);
      const thorough = told({ level: 'thorough', engine: thoroughR4 });
      return told({}).filter((each) => !thorough.includes(each));
    }),
  );
  expect(lost).toEqual([]);
});
