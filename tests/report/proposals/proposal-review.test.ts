import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import {
  confirmFindings,
  type Proposal,
  type ProposedFinding,
  proposeFindings,
} from '../../../src/convert/proposals/index.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import { findingChoices } from '../../../src/report/proposals/choices.ts';
import { germanProposalReviewWords, toProposalReview } from '../../../src/report/review/index.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { german } from '../../../src/terminology/languages/de.ts';
import { english } from '../../../src/terminology/languages/language.ts';
import { run } from '../../cli/in-process.ts';
import { examOf } from '../../convert/proposals/exam-of.ts';

const hostile = '</script><script>document.title=1</script><img src=x onerror=alert(1)> scar.';
const exam = examOf('LEFT EYE: Right ptosis and no ectropion.', hostile);
const { html, asked, left, issues } = toProposalReview([exam]);

function contentOf(page: string, tag: string): readonly string[] {
  return [...page.matchAll(new RegExp(`<${tag}[^>]*>([^]*?)</${tag}>`, 'g'))].map(
    ([, text = '']) => text,
  );
}

describe('page of proposals', () => {
  it('is HTML without errors, by the parser of the standard, in both languages', () => {
    const localized = toProposalReview([exam], {
      language: german,
      words: germanProposalReviewWords,
    });
    expect(localized.html).toContain('<html lang="de">');
    expect(localized.html).toContain('Vorschläge bestätigen');
    for (const page of [html, localized.html]) {
      const errors: string[] = [];
      parse(page, { onParseError: ({ code }) => errors.push(code) });
      expect(errors).toEqual([]);
    }
    expect({ asked, left, issues }).toEqual({ asked: 3, left: 0, issues: [] });
  });

  it('allows its own script and style by their hash, and nothing else', () => {
    const [policy = ''] = /default-src[^"]*/.exec(html) ?? [];
    const [, script = '', ...others] = contentOf(html, 'script');
    const [style = ''] = contentOf(html, 'style');
    const hash = (text: string): string => createHash('sha256').update(text).digest('base64');
    expect(others).toEqual([]);
    expect(policy.replaceAll('&apos;', "'").split('; ')).toEqual([
      "default-src 'none'",
      `style-src 'sha256-${hash(style)}'`,
      `script-src 'sha256-${hash(script)}'`,
      "base-uri 'none'",
      "form-action 'none'",
    ]);
    expect(script).not.toMatch(/innerHTML|outerHTML|\beval\b|https?:|fetch|import/);
    expect(html.includes('<img')).toBe(false);
    expect(html.replaceAll(/&quot;|&lt;/g, '')).not.toMatch(/<[^>]* (?:src|href|on[a-z]+)=/);
  });

  it('shows the sentence in its note, says what is open, and chooses nothing', () => {
    const [first = '', second = ''] = contentOf(html, 'fieldset');
    expect(first).toContain('<mark>Right <strong>ptosis</strong> and no ectropion.</mark>');
    expect(first).toContain('LEFT EYE:');
    expect(first).not.toContain('to be decided');
    expect(second).toContain('Region: <span class="asked">to be decided</span>');
    expect(second).toContain('Side: <span class="asked">to be decided</span>');
    expect(second).toContain('<strong>absent</strong>');
    const [main = ''] = contentOf(html, 'main');
    expect(main).toContain('type="radio"');
    expect(main).not.toMatch(/checked|selected/);
  });

  it('asks about nothing that was decided before, in whatever way', () => {
    const proposals = orThrow('propose', proposeFindings(exam));
    const by = { by: 'Tom Hawser', at: '2025-09-02T09:00:00+02:00' };
    const decided = proposals.map((one, at): Proposal => {
      if (at === 0) return { ...one, confirmed: by };
      return at === 1 ? { ...one, rejected: by } : one;
    });
    const next = toProposalReview([exam], { decided });
    expect(next.asked).toBe(1);
    const [data = ''] = contentOf(next.html, 'script');
    expect(JSON.parse(data).decided).toEqual(decided.slice(0, 2));
  });

  it('stops at what a person can do on one page, and says how much is left', () => {
    const page = toProposalReview([exam, { ...exam, id: 'letter-2' }], { most: 2 });
    expect([page.asked, page.left]).toEqual([3, 3]);
    expect(page.html).toContain('3 more proposals are not on this page.');
  });

  it('tells an exam and decisions that are none, and what a budget does not let through', () => {
    const none = toProposalReview([{} as never], { decided: [undefined as never] });
    expect(none.asked).toBe(0);
    expect(none.issues.length).toBeGreaterThan(1);
    const spent = toProposalReview([exam], { budget: { work: 1 } });
    expect(spent).toMatchObject({ asked: 0, issues: [{ code: 'too-large' }] });
  });
});

describe('what the page lets a person choose', () => {
  const { findings, places, regions } = findingChoices(builtInCatalogue, english);
  const [ptosis] = orThrow('propose', proposeFindings(exam));
  const confirmed = { by: 'Tom Hawser', at: '2025-09-02T09:00:00+02:00' };

  function issuesOf(statement: ProposedFinding): readonly unknown[] {
    const proposal = { ...ptosis, statement, confirmed } as Proposal; // one is made of the exam
    const { issues } = confirmFindings(exam, [proposal]);
    return issues.map(({ code, facts }) => [statement.finding, statement.region, code, facts]);
  }

  it('is what an exam takes: every sign at each place, on a side that the place has', () => {
    const refused = findings.flatMap(([finding, , list], at) => {
      const all = places[list] ?? [];
      const region = all[at % Math.max(1, all.length)];
      const { sides = [] } = regions[region ?? ''] ?? {};
      const side = sides[at % Math.max(1, sides.length)] as ProposedFinding['side']; // of the table of sides
      if (region === undefined || side === undefined) return [[finding, 'no place']];
      const presence = (['present', 'absent', 'indeterminate'] as const)[at % 3] ?? 'present';
      return issuesOf({ kind: 'finding', finding, region, side, presence });
    });
    expect(refused).toEqual([]);
  });

  it('need not be a side where the place wants none, and must be one where it does', () => {
    for (const [region, { required }] of Object.entries(regions)) {
      const statement = { kind: 'finding', finding: 'scar', region, presence: 'absent' } as const;
      const missing = issuesOf(statement).filter((one) =>
        JSON.stringify(one).includes('missing-side'),
      );
      expect([region, missing.length > 0]).toEqual([region, required]);
    }
  });
});

describe('convert --review-proposals', () => {
  const mapping = {
    format: 'face-neck-mapping/1',
    source: { syntax: 'csv' },
    exam: {
      id: { prefix: 'harbour', from: ['no'] },
      status: { value: 'final' },
      subject: { identifiers: [{ from: 'worker', system: 'https://harbour.example/workers' }] },
      performed: { start: 'day' },
      recorded: { value: '2024-03-01T08:00:00Z' },
      examiner: { fixed: { name: 'Harbour surgery' } },
      protocol: { id: 'full', version: '1.0.0' },
    },
    fields: { said: { kind: 'note' } },
    dates: { formats: ['YYYY-MM-DD'], zone: 'Europe/Lisbon' },
  };
  const table = 'no,worker,day,said\nK1,V1,2024-02-05,Right ptosis and no ectropion.\n';
  const args = ['convert', 'table.csv', '--mapping', 'mapping.json'];

  it('writes the page, in the language that is asked for, and without what is decided', async () => {
    const cwd = mkdtempSync(join(tmpdir(), 'proposals-'));
    try {
      writeFileSync(join(cwd, 'mapping.json'), JSON.stringify(mapping));
      writeFileSync(join(cwd, 'table.csv'), table);
      const lines = await run([...args, '--propose'], { cwd });
      const proposals = lines.out
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line) as Proposal);
      expect(proposals).toHaveLength(2);
      const rejected = { by: 'Tom Hawser', at: '2025-09-02T09:00:00+02:00' };
      const file = join(cwd, 'said.ndjson');
      const decided = proposals.map((one, at) =>
        JSON.stringify(at === 0 ? { ...one, rejected } : one),
      );
      writeFileSync(file, `${decided.join('\n')}\n`);
      const page = await run([...args, '--review-proposals', '--language', 'de'], { cwd });
      const next = await run([...args, '--review-proposals', '--confirmed', 'said.ndjson'], {
        cwd,
      });
      expect(page.out).toContain('<html lang="de">');
      expect(contentOf(page.out, 'fieldset')).toHaveLength(proposals.length);
      expect(contentOf(next.out, 'fieldset')).toHaveLength(proposals.length - 1);
    } finally {
      rmSync(cwd, { recursive: true });
    }
  });
});
