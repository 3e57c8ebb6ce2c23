import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { issueCodes, issueTypes } from '../../src/issues/codes.ts';
import { answers } from '../../src/issues/english/answers.ts';
import { clinic } from '../../src/issues/english/clinic.ts';
import { conversion } from '../../src/issues/english/conversion.ts';
import { record } from '../../src/issues/english/record.ts';
import { validation } from '../../src/issues/english/validation.ts';
import type { Sentence, SentenceTable, UnknownFacts } from '../../src/issues/facts.ts';
import { germanIssues } from '../../src/issues/german/index.ts';
import { type Issue, issue, issueMessage, issueTextIn } from '../../src/issues/issue.ts';
import { namesIn } from '../../src/issues/render.ts';

const english: readonly SentenceTable[] = [record, validation, conversion, answers, clinic];

/** The compiler refuses a sentence with a name in braces that is not a fact. */
const unknownFacts: [
  UnknownFacts<typeof record>,
  UnknownFacts<typeof validation>,
  UnknownFacts<typeof conversion>,
  UnknownFacts<typeof answers>,
  UnknownFacts<typeof clinic>,
][] = [];

interface Row {
  readonly table: number;
  readonly code: string;
  readonly reason: string;
  readonly sentence: Sentence;
}

function rowsOf(tables: readonly SentenceTable[]): Row[] {
  return tables.flatMap((table, at) =>
    Object.entries(table).flatMap(([code, reasons]) =>
      Object.entries(reasons).map(([reason, sentence]) => ({ table: at, code, reason, sentence })),
    ),
  );
}

function factsOf(sentence: Sentence): string[] {
  const texts = typeof sentence === 'string' ? [sentence] : sentence;
  return [...new Set(texts.flatMap(namesIn))].sort();
}

const src = resolve(import.meta.dirname, '../../src');
const sources = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter(
    (file) =>
      file.endsWith('.ts') &&
      !/^issues[\\/](?:english|german|codes)|compiled|generate|testing/.test(file),
  )
  .map((file) => readFileSync(join(src, file), 'utf8'))
  .join('\n');

/** Words that the source has as text, or as keys of objects. */
const words = new Set(
  [...sources.matchAll(/'([a-z0-9-]+)'|\b([a-z0-9]+): /g)].map(([, text, key]) => text ?? key),
);

describe('the sentences of issues', () => {
  it('have facts that all have a type', () => {
    expect(unknownFacts).toEqual([]);
  });

  it('are of every code and of no other', () => {
    const codes = new Set(rowsOf(english).map(({ code }) => code));
    expect([...codes].sort()).toEqual(Object.keys(issueCodes).sort());
  });

  it('belong to codes and reasons that the source raises', () => {
    expect(Object.keys(issueCodes).filter((code) => !words.has(code))).toEqual([]);
    const unraised = rowsOf(english).filter(({ reason }) => !words.has(reason));
    expect(unraised.map(({ code, reason }) => `${code} ${reason}`)).toEqual([]);
  });

  it('say the same wherever two areas raise the same code for the same reason', () => {
    const seen = new Map<string, Row>();
    const different = rowsOf(english).filter((row) => {
      const name = `${row.code} ${row.reason}`;
      const before = seen.get(name);
      seen.set(name, row);
      return before && JSON.stringify(before.sentence) !== JSON.stringify(row.sentence);
    });
    expect(different.map(({ code, reason }) => `${code} ${reason}`)).toEqual([]);
  });

  it('have the same facts in German, and as many alternatives', () => {
    const german = rowsOf(germanIssues.sentences);
    const shapes = (rows: readonly Row[]): unknown[] =>
      rows.map(({ table, code, reason, sentence }) => ({
        table,
        code,
        reason,
        facts: factsOf(sentence),
        parts: typeof sentence === 'string' ? 1 : sentence.length,
      }));
    expect(shapes(german)).toEqual(shapes(rowsOf(english)));
  });

  it('are English in a plain form', () => {
    const odd =
      /\bcan not\b|(?<!there )\b(?:is|are) no\b|\bthat is no\b|\bof this name\b|\bstands there\b|\banother \w+ than\b/;
    const texts = rowsOf(english).map(({ sentence }) => String(sentence));
    expect(texts.filter((text) => odd.test(text))).toEqual([]);
  });
});

describe('an issue with facts', () => {
  const found = issue('too-large', ['notes', 0], { reason: 'text', maximum: 200 });

  it('gives its facts their types by code and reason', () => {
    const told: Issue = found;
    if (told.code !== 'too-large' || told.facts.reason !== 'text') throw new Error('another issue');
    const { maximum } = told.facts;
    expect(Number(maximum) + 1).toBe(201);
  });

  it('says itself in another language from its facts alone', () => {
    expect(issueMessage(found)).toEqual({
      message: 'the text is too long',
      expected: 'at most 200 characters',
    });
    const sent: Issue = JSON.parse(JSON.stringify({ ...found, message: '', expected: undefined }));
    expect(issueMessage(sent, germanIssues)).toEqual({
      message: 'der Text ist zu lang',
      expected: 'höchstens 200 Zeichen',
    });
    expect(issueTextIn(sent, germanIssues)).toBe(
      'Fehler  notes[0]  der Text ist zu lang (erwartet: höchstens 200 Zeichen) [too-large]',
    );
  });

  it('chooses the first hint whose facts are there, and none where they are all missing', () => {
    const near = issue('unknown-code', [], { reason: 'table', table: 'findings', near: 'naevus' });
    const far = issue('unknown-code', [], { reason: 'table', table: 'findings', near: undefined });
    expect([near.expected, far.expected]).toEqual([
      'perhaps naevus',
      'a code of the table findings',
    ]);
    expect(Object.keys(far.facts)).toEqual(['reason', 'table']);
    expect(issue('unknown-property', [], { reason: 'object' })).not.toHaveProperty('expected');
  });

  it('cuts long lists and says how many are left out', () => {
    const codes = Array.from({ length: 15 }, (_, at) => `c${at}`);
    expect(issue('missing-side', [], { reason: 'missing', codes }).expected).toBe(
      'c0, c1, c2, c3, c4, c5, c6, c7, c8, c9, c10, c11 or one of 3 others',
    );
  });

  // https://hl7.org/fhir/R4/valueset-issue-type.html
  it('never leaves as the catch-all type of HL7', () => {
    expect(Object.values(issueTypes)).not.toContain('invalid');
  });
});
