import { describe, expect, it } from 'vitest';
import { type EnteredStatement, entered, issueText, orThrow, startExam } from '../../src/index.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { begin } from './begin.ts';

const draft = startExam(begin);
const lid = { kind: 'finding', finding: 'lid-turn.ectropion', presence: 'present' } as const;
const place = { region: 'lid-lower', side: 'left' } as const;
const lesion = { ...lid, finding: 'skin-lesion', region: 'temple', side: 'right' } as const;

function said(given: EnteredStatement): readonly object[] {
  return orThrow('enter', entered(draft, given)).exam.statements;
}

describe('what a form gives becomes the statement', () => {
  it('with the key that the builder makes', () => {
    expect(said({ ...lid, ...place })).toEqual([
      { ...lid, ...place, key: 'finding/lid-turn.ectropion/lid-lower/left' },
    ]);
  });

  it('an empty field is not given, and makes nothing absent or normal', () => {
    expect(said({ ...lid, ...place, note: '', certainty: null, methods: undefined })).toEqual(
      said({ ...lid, ...place }),
    );
    expect(entered(draft, { ...lid, presence: '', ...place }).ok).toBe(false);
    expect(entered(draft, { kind: 'region-state', state: '', ...place }).ok).toBe(false);
  });

  it('attributes, results and reasons in their shorter form', () => {
    const attributes = { 'lesion-border': ['irregular', 'ill-defined'], 'lesion-tender': false };
    expect(said({ ...lesion, attributes: { ...attributes, 'lesion-colour': '' } })).toMatchObject([
      {
        attributes: [
          { attribute: 'lesion-border', value: 'irregular' },
          { attribute: 'lesion-border', value: 'ill-defined' },
          { attribute: 'lesion-tender', value: false },
        ],
      },
    ]);
    const results = {
      'light-touch': 'normal',
      pinprick: { result: 'not-tested', reason: 'declined' },
      temperature: '',
    };
    expect(said({ kind: 'sensation', point: 'v1', side: 'left', results })).toMatchObject([
      {
        results: [
          { modality: 'light-touch', result: 'normal' },
          { modality: 'pinprick', result: 'not-tested', reason: { code: 'declined' } },
        ],
      },
    ]);
    const skipped = { kind: 'region-state', state: 'not-examined', region: 'neck' } as const;
    expect(said({ ...skipped, reason: 'declined' })).toMatchObject([
      { reason: { code: 'declined' } },
    ]);
  });

  it('every statement of seeded exams can be entered as it stands', () => {
    for (let seed = 1; seed <= 3; seed += 1) {
      const { statements, status, conclusion, history, ...start } = sampleExam(seed);
      const made = statements.reduce(
        (before, { ...one }) => orThrow('enter', entered(before, one)),
        startExam(start),
      );
      expect(made.exam.statements).toEqual(statements);
    }
  });
});

describe('what does not fit is an issue at its field', () => {
  const refused: readonly (readonly [string, EnteredStatement, string])[] = [
    [
      'a region that there is not',
      { ...lid, region: 'lid-lowr', side: 'left' },
      'error  region  the table regions does not hold this code (expected perhaps lid-lower) [unknown-region]',
    ],
    [
      'a sign that there is not',
      { ...lid, ...place, finding: 'lid-turn.ectropium' },
      'error  finding  the table findings does not hold this code (expected perhaps lid-turn.ectropion) [unknown-code]',
    ],
    [
      'a side that was left empty',
      { ...lid, region: 'lid-lower', side: '' },
      'error  side  the side is missing (expected right, left or both) [missing-side]',
    ],
    [
      'a side that the place has not',
      { ...lid, region: 'lid-lower', side: 'midline' },
      'error  side  this place cannot have that side (expected right, left or both) [impossible-side]',
    ],
    [
      'a value of an attribute',
      { ...lesion, attributes: { 'lesion-border': 'iregular' } },
      'error  attributes.lesion-border  this attribute takes a different value (expected perhaps irregular, of well-defined, irregular, ill-defined or raised-rolled) [wrong-type]',
    ],
    [
      'an attribute of another family',
      { ...lesion, attributes: { 'node-tender': true } },
      'error  attributes.node-tender  this sign does not have that attribute (expected an attribute of the family lesion) [unknown-code]',
    ],
    [
      'an attribute that is mistyped',
      { ...lesion, attributes: [{ attribute: 'lesion-boarder', value: 'x' }] },
      'error  attributes[0].attribute  the table attributes does not hold this code (expected perhaps lesion-border) [unknown-code]',
    ],
    [
      'a reason',
      { kind: 'region-state', state: 'not-examined', region: 'neck', reason: 'decline' },
      'error  reason  the table reasons does not hold this code (expected perhaps declined) [unknown-code]',
    ],
    [
      'a decimal comma',
      {
        kind: 'measurement',
        measure: 'mrd1',
        region: 'lid-upper',
        side: 'left',
        value: '4,5',
        unit: 'mm',
      },
      'error  value  the value does not have the required form (expected a decimal as text, such as 4.0) [invalid-value]',
    ],
    [
      'a figure that no lid has',
      {
        kind: 'measurement',
        measure: 'mrd1',
        region: 'lid-upper',
        side: 'left',
        value: '45',
        unit: 'mm',
      },
      'error  value  no human face or neck can have this figure (expected -12 to 15 mm) [implausible-figure]',
    ],
  ];

  it.each(refused)('%s', (_, given, line) => {
    const { ok, issues } = entered(draft, given);
    expect(ok).toBe(false);
    expect(issues.map(issueText)).toEqual([line]);
  });

  it('a sign where it is not expected is taken with a warning', () => {
    const outcome = entered(draft, { ...lid, region: 'thyroid' });
    expect(outcome.value?.exam.statements).toHaveLength(1);
    expect(outcome.issues).toMatchObject([
      { code: 'unexpected-region', severity: 'warning', path: ['region'] },
    ]);
  });
});
