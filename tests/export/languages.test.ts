import { readFile } from 'node:fs/promises';
import type { Bundle, DiagnosticReport, Observation, Resource } from 'fhir/r4.js';
import { describe, expect, test } from 'vitest';
import { toBundle } from '../../src/export/to-bundle.ts';
import {
  languageFaults,
  languageSource,
  readLanguages,
} from '../../src/generate/terminology/languages.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { english, inLanguage } from '../../src/terminology/languages/language.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';

const exam = sampleExam(1);

function resources(bundle: Bundle | undefined): Resource[] {
  return (bundle?.entry ?? []).flatMap(({ resource }) => resource ?? []);
}

/** Every coding of a bundle, in order. */
function codings(bundle: unknown): { system: string; code: string; display?: string }[] {
  const found: { system: string; code: string; display?: string }[] = [];
  JSON.stringify(bundle, (_, value) => {
    if (typeof value?.system === 'string' && typeof value.code === 'string') found.push(value);
    return value;
  });
  return found;
}

describe('the German file', async () => {
  const files = await readLanguages();

  test('translates every code of every table, every side and every text', () => {
    expect(files.map(({ language }) => language)).toContain('de');
    expect(files.flatMap(languageFaults)).toEqual([]);
  });

  test('is what the generated table was made from', async () => {
    for (const file of files) {
      const name = `../../src/terminology/tables/language-${file.language}.ts`;
      expect(await readFile(new URL(name, import.meta.url), 'utf8')).toBe(languageSource(file));
    }
  });

  test('a missing, an unknown and a blank word are faults', () => {
    const [file] = files;
    if (file === undefined) throw new Error('no file');
    const { general: _, ...sections } = file.displays.sections ?? {};
    const changed = { ...file.displays, sections: { ...sections, throat: 'Rachen', nose: ' ' } };
    expect(languageFaults({ ...file, displays: changed })).toEqual([
      'terminology/languages/de.json: displays.sections.general is missing: write it there',
      'terminology/languages/de.json: displays.sections.nose is blank or padded',
      'terminology/languages/de.json: displays.sections.throat belongs to no code: take it out',
    ]);
  });
});

describe('an export in German', () => {
  const inEnglish = toBundle(exam, { bundleType: 'document' }).value;
  const inGerman = toBundle(exam, { bundleType: 'document', language: german }).value;

  test('has the same codes, and its own displays for ours alone', () => {
    const [ours, theirs] = [codings(inGerman), codings(inEnglish)];
    expect(ours.map(({ system, code }) => [system, code])).toEqual(
      theirs.map(({ system, code }) => [system, code]),
    );
    const base = 'https://face-neck-fhir.example/fhir/';
    const changed = ours.filter(({ display }, at) => display !== theirs[at]?.display);
    expect(changed.length).toBeGreaterThan(100);
    expect(changed.filter(({ system }) => !system.startsWith(base))).toEqual([]);
  });

  test('says its language on every resource and every narrative', () => {
    expect(inGerman?.language).toBe('de');
    for (const resource of resources(inGerman)) expect(resource.language).toBe('de');
    const divs = JSON.stringify(inGerman).match(/"div":"<div [^>]*>/g) ?? [];
    expect(divs.length).toBeGreaterThan(50);
    expect(divs.filter((div) => !div.includes('lang=\\"de\\" xml:lang=\\"de\\"'))).toEqual([]);
    expect(JSON.stringify(inEnglish)).not.toContain('"language"');
  });

  test('names places, sides and answers in German', () => {
    const observations = resources(inGerman).filter(
      (one): one is Observation => one.resourceType === 'Observation',
    );
    const sited = observations.filter(({ bodySite }) => bodySite?.text?.endsWith(', links'));
    expect(sited.length).toBeGreaterThan(0);
    const values = observations.map(({ valueCodeableConcept: value }) => value?.text);
    expect(values).toContain('Vorhanden');
  });

  test('leaves the words of the examiner as they are', () => {
    const conclusion = (bundle: Bundle | undefined) =>
      resources(bundle).find((one): one is DiagnosticReport => 'conclusion' in one)?.conclusion;
    expect(conclusion(inGerman)).toBe(conclusion(inEnglish));
  });
});

test('another language needs only what it translates', () => {
  const french = { ...english, tag: 'fr', displays: { sections: { nose: 'Nez' } } };
  const catalogue = inLanguage(builtInCatalogue, french);
  expect(catalogue.sections.get('nose')?.display).toBe('Nez');
  expect(catalogue.sections.get('ears')?.display).toBe('Ears');
  expect(catalogue.sections.get('nose')?.maps).toEqual(builtInCatalogue.sections.get('nose')?.maps);
});
