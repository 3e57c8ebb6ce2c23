import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { codesFromCsv } from '../../src/convert/code-map/from-csv.ts';
import { hasErrors, type Issue } from '../../src/issues/issue.ts';
import { pathText } from '../../src/issues/path.ts';
import cases from '../cases/terminology/code-maps.json' with { type: 'json' };

function summary({ code, severity, path, source, expected }: Issue): unknown[] {
  const line = source !== undefined && 'line' in source ? source.line : null;
  return [code, severity, pathText(path), line, expected ?? null];
}

describe('a code map as CSV', () => {
  test.each(cases)('$description', ({ csv, issues }) => {
    const outcome = codesFromCsv(csv);
    expect(outcome.issues.map(summary)).toEqual(issues);
    expect(outcome.value === undefined).toBe(hasErrors(outcome.issues));
  });

  test('chains weaken the relation: equivalent and wider is wider, wider and narrower is related', () => {
    const rows = [
      'findings,naevus,https://harbour.example/codes,A,equivalent',
      'https://harbour.example/codes,A,https://vineyard.example/codes,B,wider',
      'https://vineyard.example/codes,B,https://valley.example/codes,C,narrower',
    ];
    const { value } = codesFromCsv(['source,code,system,target,relation', ...rows].join('\n'));
    expect(value?.entries.get('findings|naevus')?.codings).toEqual([
      { system: 'https://harbour.example/codes', code: 'A', relation: 'equivalent' },
      { system: 'https://vineyard.example/codes', code: 'B', relation: 'wider' },
      { system: 'https://valley.example/codes', code: 'C', relation: 'relatedto' },
    ]);
  });

  test('semicolons, quotes, headings in any case and order, CRLF', () => {
    const text =
      'Relation;Target;System;Code;Source;Display\r\nwider;"A;1";https://harbour.example/codes;naevus;findings;"a ""mole"""\r\n';
    const { value, issues } = codesFromCsv(text, { delimiter: ';' });
    expect(issues).toEqual([]);
    expect([...(value?.entries.keys() ?? [])]).toEqual(['findings|naevus']);
    expect(value?.entries.get('findings|naevus')?.codings[0]).toMatchObject({
      code: 'A;1',
      display: 'a "mole"',
    });
  });

  test('no text makes it throw', () => {
    const cell = fc.constantFrom('findings', 'naevus', 'wider', 'replace', 'http://loinc.org', '"');
    const text = fc.array(fc.oneof(cell, fc.constantFrom(',', '\n'), fc.string()));
    fc.assert(
      fc.property(text, (parts) => {
        const all = `source,code,system,target,relation\n${parts.join('')}`;
        const { value, issues } = codesFromCsv(all);
        expect(value !== undefined || issues.length > 0).toBe(true);
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
