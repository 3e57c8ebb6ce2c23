import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { readTables } from '../../src/generate/terminology/terminology.ts';
import { snomedConcepts } from '../../src/terminology/tables/snomed.ts';

const notice = await readFile(new URL('../../NOTICE', import.meta.url), 'utf8');
const tables = await readTables();

/**
 * What a `source` of the tables can be, and the part of NOTICE that credits it. Figures and facts of
 * medicine belong to nobody; their sources are named beside each row, and NOTICE says so once.
 */
const credits: readonly (readonly [source: RegExp, part: string])[] = [
  [/openEHR/, 'openEHR'],
  [/^hl7\.terminology|^hl7\.fhir\.r[45]/, 'FHIR'],
  [/SNOMED CT|snomed-intl-gps/, 'SNOMED CT'],
  [/ucum/i, 'UCUM'],
  [
    /^hl7\.fhir\.us\.|esante\.gouv\.fr|digitalhealth\.gov\.ng|\(Thailand\)/,
    'HL7 implementation guides',
  ],
  [
    /^(?:Concept|Name|Code|Word)s? of this library|[Cc]ommon practice|from memory/,
    'Clinical facts',
  ],
];

/** A work of medicine: an author or body with a year, a number in a register, or pages of a kind. */
const fact =
  /\b(?:19|20)\d\d\b|PMC\d+|PubMed \d+|Medscape \d+|doi 10\.|iovs \d+|\b(?:pages?|handbooks|tables|guidelines?|anatomy|[Rr]eview|Journal|chapter|study|JAMA|NICE|WHO|DC\/TMD|IASP)\b/;

/** Every text under the name `source`, at any depth. */
function sourcesIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, member]) =>
    name === 'source' && typeof member === 'string' ? [member] : sourcesIn(member),
  );
}

const sources = [...new Set(sourcesIn(tables))];

/** Headings of NOTICE: lines of a few words with nothing before them. */
const parts = [...notice.matchAll(/\n\n([A-Za-z][^\n]{2,40})\n(?=[A-Z])/g)].map(([, name]) => name);

describe('every source of the tables', () => {
  test.each(sources)('%s is credited', (source) => {
    const named = credits.filter(([form]) => form.test(source)).map(([, part]) => part);
    if (named.length === 0) expect(source).toMatch(fact);
    for (const part of named.length === 0 ? ['Clinical facts'] : named) {
      expect(parts).toContain(part);
    }
  });

  test('there are sources of each kind, so that no line of this test is idle', () => {
    const idle = credits.filter(([form]) => !sources.some((source) => form.test(source)));
    expect(idle.map(([, part]) => part)).toEqual([]);
  });
});

// https://ckm.openehr.org: archetypes say "Creative Commons Attribution-ShareAlike"; from memory.
test('share-alike sources are named with their licence and where they were used', () => {
  const part = notice.slice(notice.indexOf('\nopenEHR\n'));
  expect(part).toMatch(/Attribution-ShareAlike/);
  expect(part).toMatch(/\/terminology whose source names an openEHR archetype/);
});

test('of concepts outside the free set the package holds ids and no name', () => {
  const outside = snomedConcepts.filter(({ set }) => set === 'outside');
  expect(outside.length).toBeGreaterThan(0);
  expect(outside.filter((concept) => 'fsn' in concept)).toEqual([]);
  // NOTICE gives their number in words.
  expect(outside).toHaveLength(13);
  expect(notice).toContain('Thirteen further identifiers');
});
