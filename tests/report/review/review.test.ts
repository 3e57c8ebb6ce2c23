import { createHash } from 'node:crypto';
import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { toReview } from '../../../src/report/review/index.ts';
import { run } from '../../cli/in-process.ts';

const table = [
  'exam no;Patient;MRD1 R (mm);MRD1;<script>document.title=1</script>;Ptosis R',
  'E1;V07;4,5;4;"</script><img src=x onerror=alert(1)>";yes',
  'E2;V08;3,5;4;b;odd',
].join('\n');

function contentOf(html: string, tag: string): readonly string[] {
  return [...html.matchAll(new RegExp(`<${tag}[^>]*>([^]*?)</${tag}>`, 'g'))].map(
    ([, text = '']) => text,
  );
}

describe('review page', () => {
  const { html, fields } = toReview(table, { values: true });

  it('is HTML without errors, by the parser of the standard', () => {
    const errors: string[] = [];
    parse(html, { onParseError: ({ code }) => errors.push(code) });
    expect(errors).toEqual([]);
    expect(fields).toBe(6);
  });

  it('allows its own script and style by their hash, and nothing else', () => {
    const [policy = ''] = /default-src[^"]*/.exec(html) ?? [];
    const [, script = ''] = contentOf(html, 'script');
    const [style = ''] = contentOf(html, 'style');
    const hash = (text: string): string => createHash('sha256').update(text).digest('base64');
    expect(policy.replaceAll('&apos;', "'").split('; ')).toEqual([
      "default-src 'none'",
      `style-src 'sha256-${hash(style)}'`,
      `script-src 'sha256-${hash(script)}'`,
      "base-uri 'none'",
      "form-action 'none'",
    ]);
    expect(script).not.toMatch(/innerHTML|outerHTML|\beval\b|https?:|fetch|import/);
    expect(toReview('a;b\n1;2\n').html).not.toMatch(/ (?:src|href|action|on[a-z]+)=/);
  });

  it('has no element that a name or value of the export made', () => {
    expect(contentOf(html, 'script')).toHaveLength(2);
    expect(html.includes('<img')).toBe(false);
    expect(html.includes('&lt;script&gt;document.title=1&lt;/script&gt;')).toBe(true);
  });

  it('shows and holds no value unless that was asked for', () => {
    const plain = toReview(table).html;
    const held = (page: string, values: readonly string[]): readonly string[] =>
      values.filter((value) => page.includes(value));
    expect(held(plain, ['4,5', 'V07', 'onerror=alert', '"odd"'])).toEqual([]);
    expect(held(html, ['4,5', 'V07', 'onerror=alert', '"odd"'])).toEqual([
      ...['4,5', 'onerror=alert', '"odd"'],
    ]);
  });

  it('is told what it could not read', () => {
    expect(toReview('').fields).toBe(0);
    const long = toReview(table, { budget: { characters: 10 } });
    expect(long).toMatchObject({ fields: 0, issues: [{ code: 'too-large' }] });
  });

  it('comes from the command line', async () => {
    const cwd = new URL('../../../examples/convert', import.meta.url).pathname;
    const { code, out, err } = await run(['convert', 'vineyard.csv', '--review'], { cwd });
    expect({ code, err, start: out.slice(0, 15) }).toEqual({
      ...{ code: 0, err: '', start: '<!DOCTYPE html>' },
    });
  });
});
