import assert from 'node:assert/strict';
import type { Bundle, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { exam as lesionExam } from '../../examples/exams/skin-lesion.ts';
import { type Exam, toBundleOrThrow } from '../../src/index.ts';
import {
  AssertionFailure,
  applyFault,
  assertConformsTo,
  assertHoldsExam,
  assertHoldsFinding,
  assertHoldsIssue,
  assertHoldsNothingAbout,
  assertHoldsStatement,
  conformsTo,
  type Matchers as FhirMatchers,
  holdsExam,
  holdsFinding,
  holdsNothingAbout,
  holdsStatement,
  matchers,
  sampleExam,
} from '../../src/testing/index.ts';
import { sampled } from '../sampled.ts';

declare module 'vitest' {
  // The form that the docstring of matchers gives; T is what vitest's own interface is called with.
  interface Matchers<T> extends FhirMatchers<T> {}
}

expect.extend({ ...matchers });

function bundleOf(exam: Exam): Bundle {
  return toBundleOrThrow(exam) as Bundle; // no version was asked for, so it is R4
}

const bundle = bundleOf(lesionExam);
const finding = lesionExam.statements.find(
  (statement) => statement.kind === 'finding' && statement.presence === 'present',
);
if (finding?.kind !== 'finding') throw new TypeError('the example holds no present finding');
const { region, side } = finding;

function isObservation(resource: { resourceType: string } | undefined): resource is Observation {
  return resource?.resourceType === 'Observation';
}

function observationOf(inBundle: Bundle, key: string): { at: number; resource: Observation } {
  const at = (inBundle.entry ?? []).findIndex(
    ({ resource }) =>
      isObservation(resource) &&
      resource.identifier?.some(({ value }) => value?.endsWith(`|${key}`)),
  );
  const resource = inBundle.entry?.[at]?.resource;
  if (!isObservation(resource)) throw new TypeError('no such observation');
  return { at, resource };
}

describe('conformance', () => {
  it('is met by every example exam in its own version', () => {
    for (const [, exam] of [...examples].slice(0, sampled(1, 99))) {
      for (const fhirVersion of ['R4', 'R4B', 'R5'] as const) {
        expect(toBundleOrThrow(exam, { fhirVersion })).toConformTo(fhirVersion);
      }
    }
  });

  it('fails with the FHIR path, the message and the code of each error', () => {
    const mutant = applyFault('no-observation-status', bundle, 1);
    if (mutant === undefined) throw new TypeError('the bundle has no place for the fault');
    const { pass, message } = conformsTo(mutant.resource);
    expect(pass).toBe(false);
    expect(message()).toMatch(/^ {2}error {2}entry\[\d+\]\.resource.*status.*\[[a-z-]+\]$/m);
    const broken = mutant.resource;
    expect(() => expect(broken).toConformTo()).toThrow('does not conform to FHIR R4');
    expect(broken).not.toConformTo();
  });

  it('refuses a version that does not exist, and data that is not a resource', () => {
    // @ts-expect-error a caller in JavaScript can send any version
    expect(() => conformsTo(bundle, 'constructor')).toThrow(TypeError);
    for (const odd of [undefined, null, 7, 'text', [], {}]) expect(odd).not.toConformTo();
  });
});

describe('statements', () => {
  it('are found by what the test names of them', () => {
    expect(bundle).toHoldFinding({ finding: finding.finding, region });
    expect(bundle).toHoldStatement({ kind: 'finding', key: finding.key, ...(side && { side }) });
    for (const statement of lesionExam.statements.slice(0, 16))
      expect(bundle).toHoldStatement(statement);
  });

  it('fail with the path of the nearest and what differs, but no value of it', () => {
    const { at } = observationOf(bundle, finding.key);
    const other = side === 'left' ? 'right' : 'left';
    const { pass, message } = holdsFinding(bundle, {
      finding: finding.finding,
      region,
      side: other,
    });
    expect(pass).toBe(false);
    expect(message()).toContain(`the bundle does not hold kind finding, presence present`);
    expect(message()).toContain(`entry[${at}].resource  finding differs in side`);
    expect(message()).not.toContain('Quelborn');
  });

  it('of one side are met by both sides, never the other way', () => {
    const brokenOff = examples.get('broken-off');
    const both = brokenOff?.statements.find((one) => 'side' in one && one.side === 'both');
    if (brokenOff === undefined || both === undefined) throw new TypeError('nothing on both sides');
    expect(bundleOf(brokenOff)).toHoldStatement({ key: both.key, side: 'left' });
    expect(holdsStatement(bundle, { key: finding.key, side: 'both' }).pass).toBe(side === 'both');
  });

  it('cannot be looked for without saying which', () => {
    expect(() => holdsStatement(bundle, {})).toThrow(TypeError);
  });

  it('are not known of what is not a bundle', () => {
    for (const odd of [undefined, null, 'x', [], { resourceType: 'Patient' }]) {
      expect(odd).not.toHoldStatement({ kind: 'finding' });
      expect(odd).not.toHoldNothingAbout({ region: 'temple' });
    }
  });
});

describe('silence', () => {
  it('holds where no statement names the place, its parts or both sides', () => {
    expect(bundle).toHoldNothingAbout({ region: 'septum' });
    expect(bundle).not.toHoldNothingAbout({ region });
    expect(holdsNothingAbout(bundle, { region }).message()).toMatch(/entry\[\d+\]\.resource {2}/);
    expect(bundle).not.toHoldNothingAbout({ region: 'face-neck' });
  });

  it('is not taken for granted where a part of the bundle could not be read', () => {
    const more = structuredClone(bundle);
    const { resource } = observationOf(more, finding.key);
    resource.extension = [{ url: 'https://clinic.example/more', valueString: 'septum' }];
    expect(more).not.toHoldNothingAbout({ region: 'septum' });
  });

  it('asks for a region that exists', () => {
    expect(() => holdsNothingAbout(bundle, { region: '__proto__' })).toThrow(TypeError);
  });
});

describe('a whole exam', () => {
  it('is held by its own bundle in any order, with what a server adds', () => {
    for (let seed = 1; seed <= sampled(4, 10); seed++) {
      const exam = sampleExam(seed, { size: 'edge' });
      const sent = bundleOf(exam);
      expect(sent).toHoldExam(exam);
      for (const { resource } of sent.entry ?? []) {
        if (resource) resource.meta = { versionId: '1', lastUpdated: '2025-01-01T00:00:00Z' };
      }
      expect(sent).toHoldExam(exam);
    }
  });

  it('is not held where a statement is lost, changed or added', () => {
    const { at } = observationOf(bundle, finding.key);
    const lost = structuredClone(bundle);
    lost.entry?.splice(at, 1);
    expect(holdsExam(lost, lesionExam).message()).toContain(
      `statements[${finding.key}]  is missing`,
    );

    const changed = structuredClone(bundle);
    observationOf(changed, finding.key).resource.note = [{ text: 'Other words' }];
    expect(holdsExam(changed, lesionExam).message()).toContain(`(entry[${at}].resource)`);

    const [, ...fewer] = lesionExam.statements;
    const { message } = holdsExam(bundle, { ...lesionExam, statements: fewer });
    expect(message()).toContain('was not expected');
  });

  it('of another id is not held', () => {
    expect(bundle).not.toHoldExam({ ...lesionExam, id: 'another' });
  });
});

describe('issues', () => {
  it('are found in an OperationOutcome, under paths as servers write them', () => {
    // Shape of a published example: https://hl7.org/fhir/R4/operationoutcome-example-validationfail.json.html
    const outcome = {
      resourceType: 'OperationOutcome',
      issue: [
        {
          severity: 'fatal',
          code: 'structure',
          expression: ['Bundle.entry[3].resource/*Observation/a1*/.status'],
        },
      ],
    };
    expect(outcome).toHoldIssue({ severity: 'error', code: 'structure' });
    expect(outcome).toHoldIssue({ path: 'entry[3].resource.status' });
    expect(outcome).not.toHoldIssue({ path: 'entry[4].resource.status' });
    expect(() => expect(outcome).toHoldIssue({ code: 'required' })).toThrow(
      'there is no issue required',
    );
  });

  it('are found in results and lists of this library', () => {
    const result = { issues: [{ severity: 'error', code: 'missing-side', path: ['a', 0] }] };
    expect(result).toHoldIssue({ code: 'missing-side', path: 'a[0]' });
    expect(result.issues).toHoldIssue({ severity: 'error' });
    for (const odd of [undefined, null, 'x', {}]) expect(odd).not.toHoldIssue({ code: 'x' });
  });
});

describe('without a runner', () => {
  it('the same functions throw, with the message of the verdict', () => {
    const place = { region: 'septum' };
    assertConformsTo(bundle);
    assertHoldsExam(bundle, lesionExam);
    assertHoldsFinding(bundle, { finding: finding.finding });
    assertHoldsStatement(bundle, { key: finding.key });
    assertHoldsNothingAbout(bundle, place);
    assertHoldsIssue([{ severity: 'error', code: 'x', path: [] }], { code: 'x' });
    const failing = [
      () => assertConformsTo({}),
      () => assertHoldsExam({}, lesionExam),
      () => assertHoldsFinding(bundle, { finding: finding.finding, region: 'septum' }),
      () => assertHoldsStatement(bundle, { key: 'none' }),
      () => assertHoldsNothingAbout(bundle, { region }),
      () => assertHoldsIssue([], { code: 'x' }),
    ];
    for (const fails of failing) {
      assert.throws(fails, (error) => error instanceof AssertionFailure && error.message !== '');
    }
  });
});
