import { stat } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { isLoincCode, isSnomedId } from '../../src/terminology/published/check-digits.ts';
import { freeSet } from '../../src/terminology/published/free-set.ts';
import { standardSystem } from '../../src/terminology/system-names.ts';
import snomedExtracts from '../../terminology/published/snomed.json' with { type: 'json' };
import { passesMod10, passesVerhoeff } from './check-digits.ts';

// The whole set is compared with the published file in tests/published/free-set.test.ts.
describe('look-up of the Global Patient Set 2020-09', () => {
  const GPS = 'hl7.terminology.r4@7.0.1 ValueSet-snomed-intl-gps.json';

  test('holds the ids of our tables that the published file holds', () => {
    const free = snomedExtracts.find(({ source }) => source === GPS)?.concepts ?? [];
    expect(free.length).toBeGreaterThan(200);
    expect(free.filter(({ code }) => !freeSet.has(code))).toEqual([]);
  });

  test('holds none of the ids that the published file does not hold', () => {
    const outside = snomedExtracts.filter(({ source }) => source !== GPS);
    const ids = outside.flatMap(({ concepts }) => concepts.map(({ code }) => code));
    expect(ids.length).toBeGreaterThan(10);
    expect(ids.filter((id) => freeSet.has(id))).toEqual([]);
  });

  test('takes an id as it is written in the file and in no other form', () => {
    expect(freeSet.has('11934000')).toBe(true);
    const others = [
      '11934001',
      '011934000',
      ' 11934000',
      '1.1934e7',
      '11934000.0',
      '',
      '__proto__',
    ];
    expect(others.filter((text) => freeSet.has(text))).toEqual([]);
  });

  test('is at most 120 KB', async () => {
    const table = new URL('../../src/terminology/tables/free-set-ids.ts', import.meta.url);
    expect((await stat(table)).size).toBeLessThan(120 * 1024);
  });
});

describe('check digits', () => {
  // The tests have their own two sums, worked out in another way; see check-digits.ts beside this.
  test('of SNOMED CT ids, for every last digit of every id of the tables', () => {
    const ids = snomedExtracts.flatMap(({ concepts }) => concepts.map(({ code }) => code));
    for (const id of ids) {
      for (let digit = 0; digit < 10; digit++) {
        const changed = `${id.slice(0, -1)}${digit}`;
        expect(isSnomedId(changed), changed).toBe(passesVerhoeff(changed));
      }
    }
  });

  test('of LOINC codes, for every body of one to five digits in steps', () => {
    for (let body = 1; body < 100_000; body += 37) {
      for (let digit = 0; digit < 10; digit++) {
        const code = `${body}-${digit}`;
        expect(isLoincCode(code), code).toBe(passesMod10(code));
      }
    }
  });

  test('refuse what has another form', () => {
    const ids = ['12345', '1234567890123456789', '0123456', '12a456', '', '11934000\n'];
    expect(ids.filter(isSnomedId)).toEqual([]);
    expect(['10199', '10199-', 'LP1-0', '10199-88', '123456-5'].filter(isLoincCode)).toEqual([]);
  });
});

test('a code system is known by its other names, and a stranger is not', () => {
  // URIs and object identifiers as HL7 lists them: https://hl7.org/fhir/R4/snomedct.html and loinc.html.
  const snomed = ['http://snomed.info/sct', 'urn:oid:2.16.840.1.113883.6.96'];
  const loinc = ['http://loinc.org', 'urn:oid:2.16.840.1.113883.6.1', 'https://loinc.org/'];
  const other = [
    'http://unitsofmeasure.org',
    'https://vineyard.example/snomed.info/sct',
    'https://notsnomed.info/sct',
    'urn:oid:2.16.840.1.113883.6.961',
    'urn:oid:2.16.840.1.113883.6.90',
  ];
  expect(snomed.map(standardSystem)).toEqual(['snomed', 'snomed']);
  expect(loinc.map(standardSystem)).toEqual(['loinc', 'loinc', 'loinc']);
  expect(other.map(standardSystem)).toEqual(other.map(() => undefined));
});
