import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { readMapping } from '../../../src/convert/prepare/read-mapping.ts';
import { csvMapping } from '../csv/suite.ts';
import { mergePatch } from '../merge-patch.ts';

const long: object = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../cases/csv/mappings/long.json'), 'utf8'),
);

/** Code, path and weight of the issues of a mapping. */
function found(base: object, patch: object): readonly unknown[] {
  const { issues } = prepareMapping(mergePatch(base, patch));
  return issues.map(({ code, path, severity }) => [code, path.join('.'), severity]);
}

const field = (target: object): object => ({ fields: { extra: target } });
const item = (target: object): object => ({
  items: [{ code: ['item'], value: 'value', map: { EXTRA: target } }],
});

describe('a mapping is checked before anything is read', () => {
  it.each<[string, object, readonly unknown[]]>([
    [
      'a region that is not there',
      field({ kind: 'note', region: 'cheek-malr' }),
      [['unknown-region', 'fields.extra.region', 'error']],
    ],
    [
      'a finding that is not there',
      field({ kind: 'finding', region: 'septum', finding: 'sniffles', words: 'presence' }),
      [['unknown-code', 'fields.extra.finding', 'error']],
    ],
    [
      'a method that is not there',
      field({ kind: 'region-state', region: 'septum', methods: ['sonar'], words: 'region' }),
      [['unknown-code', 'fields.extra.methods', 'error']],
    ],
    [
      'a paired region without a side',
      field({ kind: 'finding', region: 'ln-iia', finding: 'node-palpable', words: 'presence' }),
      [['missing-side', 'fields.extra.side', 'error']],
    ],
    [
      'a side that the region cannot have',
      field({ kind: 'note', region: 'septum', side: 'right' }),
      [['impossible-side', 'fields.extra.side', 'error']],
    ],
    [
      'a finding without a region',
      field({ kind: 'finding', finding: 'node-palpable', words: 'presence' }),
      [['missing-property', 'fields.extra.region', 'error']],
    ],
    [
      'normal without a method',
      field({ kind: 'region-state', region: 'septum', words: 'region' }),
      [['missing-method', 'fields.extra.methods', 'error']],
    ],
    [
      'a word table that is not there',
      field({ kind: 'finding', region: 'septum', finding: 'nasal-crusting', words: 'signs' }),
      [['unresolved-key', 'fields.extra.words', 'error']],
    ],
    [
      'a meaning of another kind',
      field({
        kind: 'finding',
        region: 'septum',
        finding: 'nasal-crusting',
        words: { WNL: 'normal' },
      }),
      [['invalid-value', 'fields.extra.words.WNL', 'error']],
    ],
    [
      'a result that the test does not have',
      field({ kind: 'function-test', test: 'weber', words: { N: 'normal' } }),
      [['invalid-value', 'fields.extra.words.N', 'error']],
    ],
    [
      'a grade of another scale',
      field({
        kind: 'scale-score',
        scale: 'hb',
        version: '1985',
        side: 'right',
        words: { I: 'goitre-1' },
      }),
      [['invalid-value', 'fields.extra.words.I', 'error']],
    ],
    [
      'a version that the scale does not have',
      field({ kind: 'scale-score', scale: 'goitre', version: '1960', words: { 0: 'goitre-0' } }),
      [['unknown-code', 'fields.extra.version', 'error']],
    ],
    [
      'a unit that the measure does not take',
      field({ kind: 'measurement', measure: 'mio', unit: 's' }),
      [['wrong-unit', 'fields.extra.unit', 'error']],
    ],
    [
      'a row that is no measure of its own',
      field({ kind: 'measurement', measure: 'trismus' }),
      [['unknown-code', 'fields.extra.measure', 'error']],
    ],
    [
      'a sensation without its modality',
      field({ kind: 'sensation', point: 'v2', side: 'left', words: { n: 'normal' } }),
      [['missing-property', 'fields.extra.modality', 'error']],
    ],
    [
      'an untested result without a reason',
      field({
        kind: 'sensation',
        point: 'v2',
        side: 'left',
        modality: 'pinprick',
        words: { x: 'not-tested' },
      }),
      [['invalid-value', 'fields.extra.words.x', 'error']],
    ],
    [
      'a reason that is not there',
      { noValue: { 'N/E': { state: 'not-examined', reason: 'busy' } } },
      [['unknown-code', 'noValue.N/E.reason', 'error']],
    ],
    [
      'a unit that is no unit',
      { units: { '"': 'inches' } },
      [['unknown-unit', 'units."', 'error']],
    ],
    [
      'a place that is none',
      { sides: { RE: { side: 'right', within: 'head' } } },
      [['unknown-region', 'sides.RE.within', 'error']],
    ],
    [
      'a protocol that is not there',
      { exam: { protocol: { id: 'quick' } } },
      [['unknown-code', 'exam.protocol.id', 'error']],
    ],
    [
      'a time zone that is none',
      { dates: { zone: 'Europe/Nowhere' } },
      [['invalid-value', 'dates.zone', 'error']],
    ],
    [
      'a date form that is none',
      { dates: { formats: ['DD/MM'] } },
      [['invalid-value', 'dates.formats.0', 'error']],
    ],
    [
      'two date forms for one text',
      { dates: { formats: ['DD/MM/YYYY', 'MM/DD/YYYY'] } },
      [['ambiguous-mapping', 'dates.formats.1', 'error']],
    ],
    [
      'two words that match each other',
      { ignoreCase: true, words: { region: { wnl: 'normal' } } },
      [['ambiguous-mapping', 'words.region.wnl', 'error']],
    ],
    [
      'a pattern that is none',
      {
        exam: {
          subject: {
            identifiers: [{ from: 'worker_no', system: 'https://v.example', pattern: '(' }],
          },
        },
      },
      [['invalid-value', 'exam.subject.identifiers', 'error']],
    ],
    [
      'a field with two uses',
      { layout: ['worker_no'] },
      [['ambiguous-mapping', 'layout.0', 'error']],
    ],
    [
      'nobody who was examined',
      { exam: { subject: { identifiers: null } } },
      [['missing-property', 'exam.subject', 'error']],
    ],
    [
      'nobody who examined',
      { exam: { examiner: { fixed: null } } },
      [['missing-property', 'exam.examiner', 'error']],
    ],
    [
      'no time of recording',
      { exam: { recorded: { value: null } } },
      [['missing-property', 'exam.recorded', 'error']],
    ],
  ])('%s', (_, patch, expected) => {
    expect(found(csvMapping, patch)).toEqual(expected);
    expect(prepareMapping(mergePatch(csvMapping, patch)).value).toBeUndefined();
  });

  it('items may take side and method from fields', () => {
    const target = { kind: 'region-state', region: 'cheek-malar', words: 'region' };
    expect(found(long, {})).toEqual([]);
    expect(found(long, item(target)).map((one) => (one as string[])[0])).toEqual([
      'missing-side',
      'missing-method',
    ]);
  });

  it("a field called left that is put on the right is a warning: some exports tell the viewer's side", () => {
    const patch = { fields: { pupil_L: { kind: 'note', region: 'pupil', side: 'right' } } };
    expect(found(csvMapping, patch)).toEqual([['side-conflict', 'fields.pupil_L.side', 'warning']]);
    expect(prepareMapping(mergePatch(csvMapping, patch)).value).toBeDefined();
  });

  it('offers the nearest code', () => {
    const { issues } = prepareMapping(
      mergePatch(csvMapping, field({ kind: 'note', region: 'cheek-malr', side: 'left' })),
    );
    expect(issues[0]?.expected).toBe('perhaps cheek-malar');
  });
});

describe('readMapping', () => {
  const text = JSON.stringify(csvMapping, undefined, 2);

  it('takes comments, and leaves comment marks in texts alone', () => {
    const commented = `// of the vineyard\n${text.replace('"title"', '/* what\nit is */ "title"')} // end`;
    expect(readMapping(commented).value?.mapping).toEqual(csvMapping);
    const { value } = readMapping(
      text.replace(
        'https://vineyard.example/workers',
        'https://v.example/*/ // x'.replaceAll(' ', ''),
      ),
    );
    expect(value?.mapping.exam.subject.identifiers?.[0]?.system).toBe('https://v.example/*///x');
  });

  it('takes a byte order mark', () => {
    expect(readMapping(`\uFEFF${text}`).value).toBeDefined();
  });

  it.each([
    ['a word that stands twice', '{"words": {"a": 1, "a": 2}}', 'duplicate-property'],
    ['a text that is no JSON', '{', 'not-json'],
    ['a comment that does not end', '{} /* ', 'not-json'],
    ['nothing', '', 'not-json'],
  ])('tells %s, with its place', (_, wrong, code) => {
    const { value, issues } = readMapping(wrong);
    expect(value).toBeUndefined();
    expect(issues[0]).toMatchObject({ code });
  });
});
