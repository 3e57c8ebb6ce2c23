import { describe, expect, it } from 'vitest';
import { toBundle } from '../../src/export/to-bundle.ts';
import type { Issue } from '../../src/issues/issue.ts';
import { pathText } from '../../src/issues/path.ts';
import { toLetter } from '../../src/letters/to-letter.ts';
import { toHtml } from '../../src/report/to-html.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';

const exam = sampleExam(8, { size: 'small' });
const coding = { system: 'https://quay.example/codes', code: 'a' };

/** Options that a program without types could pass, with the code and place of what is said. */
const unfit: readonly (readonly [string, object, string, string])[] = [
  ['a version that there is not', { fhirVersion: 'R9' }, 'unknown-code', 'fhirVersion'],
  ['a type of bundle that there is not', { bundleType: 'batch' }, 'unknown-code', 'bundleType'],
  ['text for a flag', { profiles: 'yes' }, 'wrong-type', 'profiles'],
  ['nothing for a flag', { narrative: null }, 'wrong-type', 'narrative'],
  [
    'a mode that there is not',
    { masterData: { device: 'x' } },
    'unknown-code',
    'masterData.device',
  ],
  ['a base with a space', { canonicalBase: 'https://a b' }, 'invalid-value', 'canonicalBase'],
  ['a system that is no URI', { identity: { exam: 'x' } }, 'invalid-value', 'identity.exam'],
  ['labels that are no list', { filing: { tags: coding } }, 'wrong-type', 'filing.tags'],
  [
    'a label without a code',
    { filing: { security: [{ system: coding.system }] } },
    'missing-property',
    'filing.security[0].code',
  ],
  [
    'a label with more than a coding has',
    { filing: { tags: [{ ...coding, colour: 'red' }] } },
    'unknown-property',
    'filing.tags[0].colour',
  ],
  ['a catalogue of nothing', { catalogue: {} }, 'wrong-type', 'catalogue'],
  ['a map of nothing', { codes: {} }, 'wrong-type', 'codes'],
  ['half a pair', { canonicalBase: 'https://a/\ud800' }, 'invalid-unicode', 'canonicalBase'],
];

/** Languages, likewise. */
const languages: readonly (readonly [string, unknown, string, string])[] = [
  ['a text for it', 'de', 'wrong-type', 'language'],
  ['a tag with a space', { ...german, tag: 'de de' }, 'invalid-value', 'language.tag'],
  ['no texts', { ...german, texts: undefined }, 'wrong-type', 'language.texts'],
  [
    'an empty text',
    { ...german, texts: { ...german.texts, noConclusion: ' ' } },
    'empty-value',
    'language.texts.noConclusion',
  ],
  ['no word for a side', { ...german, sides: {} }, 'wrong-type', 'language.sides.left'],
  [
    'a number for a display',
    { ...german, displays: { regions: { forehead: 5 } } },
    'wrong-type',
    'language.displays.regions.forehead',
  ],
  [
    'a table that there is not',
    { ...german, displays: { places: {} } },
    'unknown-code',
    'language.displays.places',
  ],
];

const saidOf = (issues: readonly Issue[]) =>
  issues.map(({ code, path }) => `${code} ${pathText(path)}`);

describe('options of an export', () => {
  it.each(unfit)('with %s are refused', (_, options, code, path) => {
    const { value, issues } = toBundle(exam, options);
    expect(value).toBeUndefined();
    expect(saidOf(issues)).toContain(`${code} ${path}`);
  });

  it.each(languages)(
    'with %s for a language are refused, here and on pages',
    (_, given, code, path) => {
      const language = given as never; // a caller without types can pass anything
      const { issues } = toBundle(exam, { language });
      expect(saidOf(issues)).toContain(`${code} ${path}`);
      const letter = toLetter(exam, 'patient', { language });
      expect(saidOf(letter.issues)).toContain(`${code} ${path}`);
      expect(() => toHtml(exam, { language })).toThrow('cannot write a page');
    },
  );

  it('that are sound are taken whole', () => {
    const { issues } = toBundle(exam, {
      language: german,
      filing: { reportCategory: coding, tags: [coding], security: [{ ...coding, display: 'A' }] },
      masterData: { patient: 'own' },
      identity: { exam: 'urn:oid:1.2.3' },
      canonicalBase: 'https://quay.example/fhir',
    });
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
