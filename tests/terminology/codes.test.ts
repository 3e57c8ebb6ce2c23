import { describe, expect, test } from 'vitest';
import { readTables } from '../../src/generate/terminology/terminology.ts';
import { mappings, rows } from '../../src/generate/terminology/terminology-check.ts';
import hl7Extracts from '../../terminology/published/hl7.json' with { type: 'json' };
import loincExtracts from '../../terminology/published/loinc.json' with { type: 'json' };
import snomedExtracts from '../../terminology/published/snomed.json' with { type: 'json' };
import { passesMod10, passesVerhoeff } from './check-digits.ts';

interface Extract {
  readonly source: string;
  readonly system: string;
  readonly concepts: readonly { readonly code: string; readonly display?: string }[];
}

const tables = await readTables();
const snomed = rows(tables, 'snomed');
const loinc = rows(tables, 'loinc');
const hl7 = rows(tables, 'hl7');

/** The row of a published file, as cut out of it by src/generate/terminology/published-extracts.ts. */
function publishedRow(extracts: readonly Extract[], source: unknown, code: unknown) {
  return extracts.find((one) => one.source === source)?.concepts.find((row) => row.code === code);
}

describe('SNOMED CT', () => {
  test('the Verhoeff check takes the worked value 2363 and finds a wrong digit and a swap', () => {
    // Worked example of the Verhoeff algorithm: the check digit of 236 is 3.
    expect(['2363', '2364', '2633', '3263'].map(passesVerhoeff)).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  test('every id passes the Verhoeff check', () => {
    const ids = snomed.map((row) => String(row.id));
    expect(ids.filter((id) => !/^[1-9]\d{5,17}$/.test(id) || !passesVerhoeff(id))).toEqual([]);
  });

  test('every id stands in the published file named as its source, under that name', () => {
    const wrong = snomed.filter((row) => {
      return publishedRow(snomedExtracts, row.source, row.id)?.display !== row.fsn;
    });
    expect(wrong).toEqual([]);
  });

  test('the set gps-2020-09 is the Global Patient Set of September 2020 and nothing else', () => {
    const gps = 'hl7.terminology.r4@7.0.1 ValueSet-snomed-intl-gps.json';
    expect(snomedExtracts.find((one) => one.source === gps)?.version).toBe('20200930');
    expect(snomed.filter((row) => (row.set === 'gps-2020-09') !== (row.source === gps))).toEqual(
      [],
    );
  });

  test('a name without its semantic tag is marked as a synonym, and only outside the free set', () => {
    const tagged = / \([a-z /]+\)$/;
    const wrong = snomed.filter((row) => tagged.test(String(row.fsn)) === (row.synonym === true));
    expect(wrong).toEqual([]);
    expect(snomed.filter((row) => row.synonym === true && row.set !== 'outside')).toEqual([]);
  });

  test('a finding with a free code for a named disease says so', () => {
    // Names of diseases among the signs: all are marked, so that they are stated only where asserted.
    const fsn = new Map(snomed.map((row) => [row.id, String(row.fsn)]));
    const disease =
      /carcinoma|melanoma|neoplasm|palsy|neuralgia|itis\b|zoster|rosacea|vitiligo|acne/i;
    const unmarked = rows(tables, 'findings').filter((row) => {
      const own = mappings(row.maps).filter((map) => map.relation === 'equivalent');
      const named = own.some((map) => /\(disorder\)$/.test(fsn.get(map.code) ?? ''));
      return named && disease.test(String(row.display)) && row.disorder !== true;
    });
    expect(unmarked).toEqual([]);
  });
});

describe('LOINC', () => {
  test("the mod 10 check takes 12345-5 of the LOINC Users' Guide and no other digit", () => {
    // Worked example of the guide, from memory.
    const digits = Array.from({ length: 10 }, (_, digit) => `12345-${digit}`);
    expect(digits.filter(passesMod10)).toEqual(['12345-5']);
  });

  test('every code passes the mod 10 check', () => {
    expect(loinc.filter((row) => !passesMod10(String(row.code)))).toEqual([]);
  });

  test('every code stands in the published file named as its source, under that name', () => {
    const wrong = loinc.filter((row) => {
      const found = publishedRow(loincExtracts, row.source, row.code);
      return found === undefined || found.display !== row.display;
    });
    expect(wrong).toEqual([]);
  });
});

describe('HL7', () => {
  test('every code stands in its published code system with that display', () => {
    const extracts: readonly Extract[] = hl7Extracts;
    const wrong = hl7.filter((row) => {
      const own = extracts.find((one) => one.system === row.system);
      return publishedRow(extracts, own?.source, row.code)?.display !== row.display;
    });
    expect(wrong).toEqual([]);
  });
});

test('mappings lead to rows of snomed.json and loinc.json, and the figures by system are these', () => {
  const used = Object.keys(tables).flatMap((table) => mappings(rows(tables, table)));
  const known = {
    snomed: new Set(snomed.map((row) => row.id)),
    loinc: new Set(loinc.map((row) => row.code)),
  };
  const dangling = used.filter(({ system, code }) => {
    return !(system === 'loinc' ? known.loinc : known.snomed).has(code);
  });
  expect(dangling).toEqual([]);
  const figures = {
    snomed: snomed.length,
    'snomed in the free set': snomed.filter((row) => row.set === 'gps-2020-09').length,
    loinc: loinc.length,
    hl7: hl7.length,
    mappings: used.length,
  };
  console.info(`codes by system: ${JSON.stringify(figures)}`);
  expect(figures.snomed).toBeGreaterThan(0);
});
