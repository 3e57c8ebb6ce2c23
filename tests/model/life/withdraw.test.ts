import { describe, expect, it } from 'vitest';
import {
  absent,
  amendExam,
  appendExam,
  correctExam,
  type Exam,
  finishExamOrThrow,
  fromBundle,
  measured,
  orThrow,
  present,
  signExam,
  startExam,
  state,
  toBundle,
} from '../../../src/index.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import { toHtml } from '../../../src/report/index.ts';
import * as r4 from '../../../src/validate/versions/r4.ts';
import * as r4b from '../../../src/validate/versions/r4b.ts';
import * as r5 from '../../../src/validate/versions/r5.ts';
import { clinic } from '../../clinic.ts';
import { begin } from '../begin.ts';

const lid = { region: 'lid-upper', side: 'left' } as const;
let draft = startExam(begin);
draft = present(draft, 'naevus', { region: 'temple', side: 'right' }, { key: 'mole' });
draft = absent(draft, 'lid-position.ptosis', lid, { key: 'no-ptosis' });
draft = measured(draft, 'mrd1', lid, '4.0', 'mm', { key: 'margin' });
draft = state(draft, { key: 'words', kind: 'note', text: 'Seen on the quay' });
const signed = orThrow(
  'sign',
  signExam(finishExamOrThrow(draft, 'draft'), { by: 'doctor', at: '2025-05-05T10:00:00+02:00' }),
);
const step = { by: 'doctor', at: '2025-05-05T11:00:00+02:00', reason: 'Ticked by mistake' };
const [mole, , margin, words] = signed.statements;
const withdrawn = correctExam(signed, { ...step, changes: { withdraw: ['mole'] } });
const corrected = withdrawn.value as Exam;

function keysOf(exam: Exam | undefined): string[] | undefined {
  return exam?.statements.map(({ key }) => key);
}

describe('a statement that should not have been made', () => {
  it('is withdrawn with who, when and why', () => {
    expect(withdrawn.issues).toEqual([]);
    expect(keysOf(corrected)).toEqual(['no-ptosis', 'margin', 'words']);
    expect(corrected.status).toBe('corrected');
    expect(corrected.history?.at(-1)).toEqual({
      action: 'correct',
      by: 'doctor',
      at: '2025-05-05T11:00:00+02:00',
      reason: 'Ticked by mistake',
      version: 2,
      withdrawn: ['mole'],
    });
    expect(keysOf(signed)).toHaveLength(4);
  });

  const versions = [
    ['R4', r4.validateBundle],
    ['R4B', r4b.validateBundle],
    ['R5', r5.validateBundle],
  ] as const;
  it.each(versions)('leaves as what the step removed, and comes back, in %s', (version, check) => {
    for (const bundleType of ['collection', 'document', 'transaction'] as const) {
      const sent = toBundle(corrected, {
        ...clinic,
        fhirVersion: version,
        bundleType,
        previous: signed,
      });
      expect(sent.issues).toEqual([]);
      expect(check(sent.value)).toMatchObject({ valid: true });
      expect(fromBundle(sent.value, clinic)).toMatchObject({ value: corrected, issues: [] });
      expect(JSON.stringify(sent.value)).toContain('"role":"removal"');
    }
  });

  it('is taken back from a receiver, or else it is told that it is not', () => {
    const bundleType = 'transaction';
    const sent = toBundle(corrected, { ...clinic, bundleType, previous: signed }).value;
    const inError = (sent?.entry ?? []).filter(({ resource }) => {
      const text = JSON.stringify(resource);
      return text.includes('"status":"entered-in-error"') && text.includes('"value":"E-1|mole"');
    });
    expect(inError).toHaveLength(1);
    const untold = toBundle(corrected, { ...clinic, bundleType }).issues;
    expect(untold.map(({ code, path, facts }) => [code, path, facts])).toEqual([
      ['not-exported', ['history', 1, 'withdrawn'], { reason: 'withdrawn' }],
    ]);
  });

  it('can be stated again by a later step, and not beside its withdrawal', () => {
    const again = amendExam(corrected, {
      ...step,
      at: '2025-05-05T12:00:00+02:00',
      changes: { statements: mole === undefined ? [] : [mole] },
    });
    expect(keysOf(again.value)).toContain('mole');
    const { history } = corrected;
    const both = parseExam({ ...signed, status: 'corrected', recorded: step.at, history });
    expect(both.issues.map(({ code, path }) => [code, path])).toEqual([
      ['contradiction', ['history', 1, 'withdrawn', 0]],
    ]);
  });

  it('is one that the exam has, is not stated anew in the same step, and not in an addition', () => {
    const told = (outcome: ReturnType<typeof correctExam>): unknown =>
      outcome.issues.map(({ code, path }) => [code, path]);
    const wrong = { withdraw: ['mole', 'nobody'], statements: mole ? [mole] : [] };
    expect(told(correctExam(signed, { ...step, changes: wrong }))).toEqual([
      ['contradiction', ['withdraw', 0]],
      ['unresolved-key', ['withdraw', 1]],
    ]);
    expect(told(appendExam(signed, { ...step, changes: { withdraw: ['mole'] } }))).toEqual([
      ['contradiction', ['withdraw']],
    ]);
    const about = present(draft, 'naevus', { region: 'nose', side: 'midline' }, { key: 'other' });
    const measuredMole = measured(
      about,
      'lesion-max',
      { region: 'nose', side: 'midline' },
      '4',
      'mm',
      {
        about: 'other',
      },
    );
    const exam = finishExamOrThrow(measuredMole, 'final');
    expect(told(correctExam(exam, { ...step, changes: { withdraw: ['other'] } }))).toEqual([
      ['unresolved-key', ['statements', 4, 'about']],
    ]);
  });
});

describe('a form that is sent anew without some statements', () => {
  const changed = { ...margin, value: '5.0' } as typeof margin;
  const whole = [changed, words].flatMap((one) => one ?? []);

  it('is told each of them, and they are kept', () => {
    const { value, issues } = correctExam(signed, { ...step, changes: { statements: whole } });
    expect(issues.map(({ code, severity, statement }) => [code, severity, statement])).toEqual([
      ['lacking-statement', 'warning', 'mole'],
      ['lacking-statement', 'warning', 'no-ptosis'],
    ]);
    expect(keysOf(value)).toEqual(keysOf(signed));
  });

  it('chooses that they are kept or withdrawn', () => {
    const keep = { statements: whole, lacking: 'keep' } as const;
    expect(correctExam(signed, { ...step, changes: keep })).toMatchObject({ issues: [] });
    const out = correctExam(signed, {
      ...step,
      changes: { statements: whole, lacking: 'withdraw' },
    });
    expect(keysOf(out.value)).toEqual(['margin', 'words']);
    expect(out.value?.history?.at(-1)).toMatchObject({
      changed: ['margin'],
      withdrawn: ['mole', 'no-ptosis'],
    });
  });

  it('is not a whole form where it holds changes alone', () => {
    const statements = changed === undefined ? [] : [changed];
    expect(correctExam(signed, { ...step, changes: { statements } }).issues).toEqual([]);
  });
});

it('the page of a corrected exam shows what stood there and what does', () => {
  const statements = [{ ...margin, value: '5.0' } as NonNullable<typeof margin>];
  const changes = { statements, withdraw: ['mole'] };
  const exam = orThrow('correct', correctExam(signed, { ...step, changes }));
  const [, section = ''] = toHtml(exam, { versionBefore: signed }).split('id="corrected"');
  const [part = ''] = section.split('</section>');
  expect(part).toContain('Ticked by mistake');
  expect(part).toMatch(/Margin reflex distance.*4\.0 mm.*5\.0 mm/s);
  expect(part).toMatch(/Naevus \(mole\).*withdrawn/s);
  expect(toHtml(signed)).not.toContain('id="corrected"');
  // Without the version before, the page still says what was changed.
  expect(toHtml(exam)).toMatch(/Margin reflex distance.*5\.0 mm.*mole.*withdrawn/s);
});
