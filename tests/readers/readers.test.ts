import { beforeAll, describe, expect, it } from 'vitest';
import { applyFault } from '../../src/testing/faults/apply-fault.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import type { FhirRelease } from '../reference/corpus.ts';
import { bundlesOf, exampleExams, seededCount } from '../reference/exams.ts';
import { ask, type Program, pythonReader, rustReader, whyNoRust } from './programs.ts';
import { canonical, type Leave } from './same.ts';

// Readers that others wrote, on other foundations than this library and the reference validator:
// fhir.resources (Python, models made with pydantic) and fhirbolt (Rust).

const versions = ['R4', 'R4B', 'R5'] as const;

// Forty seeded exams of the 300 that the reference suite takes, and as large a part of fewer.
const edge = Math.max(1, Math.round(seededCount / 30));
const small = edge * 3;

function* corpus(version: FhirRelease) {
  const seeded = [
    ...sampleExams(1, small, { size: 'small' }),
    ...sampleExams(1, edge, { size: 'edge' }),
  ];
  for (const one of exampleExams()) yield* bundlesOf(one, version);
  for (const exam of seeded) yield* bundlesOf({ name: exam.id, exam }, version);
}

interface Answer {
  readonly id: string;
  readonly error?: string;
}

describe.each(versions)('fhir.resources reads %s', (version) => {
  let reader: Program;
  beforeAll(async () => {
    reader = await pythonReader(version === 'R4' ? 'r4' : 'r4b-r5');
  });

  it('and writes every bundle as it was', async () => {
    const bundles = [...corpus(version)];
    const answers = await ask<Answer & { text: string }>(
      reader,
      bundles.map(({ id, text }) => ({ id, version, text })),
    );
    expect(answers.length).toBe(bundles.length);
    expect(bundles.length).toBe(4 * (exampleExams().length + small + edge));
    const changed = answers.filter(({ error, text }, at) => {
      // It keeps moments: it writes Z and -00:00 as +00:00, and fractions of seconds with six digits.
      const leave = { times: true };
      return (
        error !== undefined || canonical(text, leave) !== canonical(bundles[at]?.text ?? '', leave)
      );
    });
    expect(changed.map(({ id, error }) => ({ id, error }))).toEqual([]);
  });

  it('and refuses what is not a bundle of that version', async () => {
    const [first] = corpus(version);
    const faults = ['unknown-property', 'list-for-code', 'no-observation-status', 'date-in-words'];
    const answers = await ask<Answer>(
      reader,
      faults.map((id) => ({ id, version, text: applyFault(id, first?.bundle ?? {}, 1)?.text })),
    );
    expect(answers.filter(({ error }) => error === undefined)).toEqual([]);
  });
});

const noRust = whyNoRust();
if (noRust !== undefined) console.warn(`skipped: ${noRust}`);

describe.skipIf(noRust !== undefined).each(versions)('fhirbolt reads %s', (version) => {
  let reader: Program;
  beforeAll(async () => {
    reader = await rustReader();
  });

  it('and writes every bundle as it was, through JSON and through XML', async () => {
    const bundles = [...corpus(version)];
    type Written = Answer & { json: string; xml: string };
    const answers = await ask<Written>(
      reader,
      bundles.map(({ id, text }) => ({ id, version, format: 'json', text })),
    );
    expect(answers.length).toBe(bundles.length);
    const again = await ask<Written>(
      reader,
      answers.map(({ id, xml }) => ({ id, version, format: 'xml', text: xml })),
    );
    // Its XML reader trims the text between the tags of a narrative.
    const leave = { spaces: true };
    const changed = bundles.flatMap(({ id, text }, at) => {
      const sound = (answer: Written | undefined, allowed?: Leave) =>
        answer?.json !== undefined && canonical(answer.json, allowed) === canonical(text, allowed);
      return [
        ...(sound(answers[at]) ? [] : [{ id, way: 'json', error: answers[at]?.error }]),
        ...(sound(again[at], leave) ? [] : [{ id, way: 'xml', error: again[at]?.error }]),
      ];
    });
    expect(changed).toEqual([]);
  });

  it('and refuses what that version does not define', async () => {
    const [first] = corpus(version);
    const faults = ['unknown-property', 'unknown-property-of-data-type', 'value-of-unknown-type'];
    const answers = await ask<Answer>(
      reader,
      faults.map((id) => ({ id, version, text: applyFault(id, first?.bundle ?? {}, 1)?.text })),
    );
    expect(answers.filter(({ error }) => error === undefined)).toEqual([]);
  });
});
