import { describe, expect, it } from 'vitest';
import { toBundleOrThrow, toJson } from '../../src/index.ts';
import { applyFault, faultIds, faults, type Mutant } from '../../src/testing/faults/apply-fault.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';
import { faultsExams } from './faults-exam.ts';

const bundles = (['R4', 'R4B', 'R5'] as const).flatMap((version) =>
  (['collection', 'transaction', 'document'] as const).flatMap((bundleType) =>
    faultsExams.slice(0, 2).map(({ exam }) => {
      const bundle = toBundleOrThrow(exam, { ...clinic, fhirVersion: version, bundleType });
      return { version, bundle, text: toJson(bundle) };
    }),
  ),
);

/** Some in R4 and R5, where all would take long. */
const few = bundles.filter(({ version }, at) => version !== 'R4B' && at % sampled(6, 2) === 0);

/** Faults that cannot be made without touching a second place. */
const ofTwoEntries = [
  'reference-to-contained-of-other',
  'groups-in-a-circle',
  'document-by-name-only',
];
/** Faults of the list of entries itself. */
const ofTheList = ['composition-not-first', 'document-without-composition', 'no-entry-list'];

describe('catalogue of faults', () => {
  it('has at least 80 kinds, each under a name of its own', () => {
    expect(faultIds.length).toBeGreaterThanOrEqual(80);
    expect(faultIds.length).toBe(faults.length);
    expect(faultIds.filter((id) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toEqual([]);
  });

  it('names for each what is wrong, the rule that it breaks and where that is written', () => {
    const place =
      /^https:\/\/(hl7\.org\/fhir\/R[45]\/[a-z0-9-]+\.html|terminology\.hl7\.org\/[A-Za-z0-9-]+\.html|www\.rfc-editor\.org\/rfc\/rfc8259)/;
    const bare = faults.filter(
      ({ rule, title }) => rule.key === '' || title === '' || !place.test(rule.url),
    );
    expect(bare.map(({ id }) => id)).toEqual([]);
  });

  it('expects what an OperationOutcome can say', () => {
    // Of the required list of OperationOutcome.issue.code:
    // https://hl7.org/fhir/R4/valueset-issue-type.html
    const codes =
      'invalid structure required value invariant code-invalid not-found duplicate business-rule extension informational';
    const others = faults.filter(({ expected }) => !codes.split(' ').includes(expected.code));
    expect(others.map(({ id }) => id)).toEqual([]);
  });
});

describe('every fault', () => {
  it('finds a place in each version that it is a fault of', () => {
    const lost = faults.flatMap(({ id, versions }) =>
      versions
        .filter((version) =>
          bundles.every((one) => one.version !== version || !applyFault(id, one.bundle, 7)),
        )
        .map((version) => `${version} ${id}`),
    );
    expect(lost).toEqual([]);
  });

  it('is in a copy: the bundle stays as it was', () => {
    for (const { bundle, text } of few) {
      for (const id of faultIds) {
        const mutant = applyFault(id, bundle, 7);
        if (mutant !== undefined) expect(mutant.text, id).not.toBe(text);
      }
      expect(toJson(bundle)).toBe(text);
    }
  });

  it('is the same for the same seed', () => {
    for (const { bundle } of bundles.slice(0, 2)) {
      for (const id of faultIds) {
        expect(applyFault(id, bundle, 11)?.text, id).toBe(applyFault(id, bundle, 11)?.text);
      }
    }
  });

  it('stands where its path says, and nowhere else', () => {
    const scattered = few.flatMap(({ bundle }) =>
      faultIds
        .filter((id) => !ofTheList.includes(id))
        .map((id) => ({ id, further: further(bundle, applyFault(id, bundle, 3)) }))
        .filter(({ id, further }) => further.length > (ofTwoEntries.includes(id) ? 1 : 0)),
    );
    expect(scattered).toEqual([]);
  });
});

/** What differs besides the property or entry that the path leads into. */
function further(bundle: object, mutant: Mutant | undefined): string[] {
  if (mutant?.path === undefined) return [];
  const [root = '', entry] = mutant.path;
  const own = root === 'entry' ? `entry/${entry}` : root;
  return changes(bundle, mutant.resource).filter((name) => name !== own);
}

/** Names of the properties of a bundle, and of its entries, that are not alike in both. */
function changes(before: object, after: object | undefined): string[] {
  const left = parts(before);
  const right = parts(after ?? {});
  return [...new Set([...left.keys(), ...right.keys()])].filter(
    (name) => left.get(name) !== right.get(name),
  );
}

function parts(bundle: object): Map<string, string> {
  return new Map(
    Object.entries(bundle).flatMap(([property, value]): [string, string][] =>
      property === 'entry' && Array.isArray(value)
        ? value.map((entry, at) => [`entry/${at}`, JSON.stringify(entry)])
        : [[property, JSON.stringify(value)]],
    ),
  );
}

describe('applyFault', () => {
  it('keeps decimals as they were written', () => {
    const text = bundles
      .map(({ bundle }) => applyFault('unknown-property', bundle, 1)?.text)
      .find((one) => one?.includes('"unit":"mm"'));
    expect(text).toContain('"value":4.0,');
  });

  it('gives no object where only a text can have the fault', () => {
    const [one] = bundles;
    const mutant = applyFault('duplicate-property', one?.bundle ?? {}, 1);
    expect(Object.keys(mutant ?? {})).toEqual(['text']);
  });

  it('refuses the name of no fault', () => {
    expect(() => applyFault('toString', {}, 1)).toThrow(TypeError);
  });

  it('has no place in a bundle without entries', () => {
    const empty = { resourceType: 'Bundle', type: 'collection' };
    expect(applyFault('no-observation-status', empty, 1)).toBeUndefined();
  });
});
