import { describe, expect, it } from 'vitest';
import type { Exam } from '../../src/index.ts';
import { parseExam } from '../../src/index.ts';
import { englishWords, germanWords, toHtml } from '../../src/report/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { structure } from './reading/structure.ts';
import { savedExample, savedExamples } from './saved-examples.ts';

/** Texts that pages have been broken with. Sources: OWASP cross-site scripting cheat sheets, from memory. */
const hostile = [
  '<script>alert(1)</script>',
  '</style><script>x</script>',
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  '<!-- -->',
  '--><b>',
  ']]><x/>',
  '&lt;script&gt;',
  '&#60;b&#62;',
  '<svg/onload=alert(1)>',
  'javascript:alert(1)',
  '</bdi></li></ul><h1>',
  '\u202eevil\u202c \u2066isolate',
  '{{constructor.constructor("x")()}}',
  '<a href="https://example.invalid">x</a>',
  'a'.repeat(1_000_000),
];

describe('toHtml', () => {
  it.each(savedExamples)(
    '%s: complete in itself, without script or address of anything outside',
    (_, exam) => {
      const html = toHtml(exam);
      expect(structure(html).filter((tag) => tag.startsWith('not a tag'))).toEqual([]);
      expect(html).not.toMatch(/<script|\son[a-z]+=|\s(src|action|srcset)=|url\(|@import/i);
      // Links lead to another place of the page.
      expect(html).not.toMatch(/\shref="(?!#(sign|mark)-\d+")/);
      expect(html.match(/<h1/g)).toHaveLength(1);
      expect(html).toContain('Silence is not a normal finding.');
    },
  );

  it('answers first how much it worries, what to do, what is abnormal and what was not examined', () => {
    const html = toHtml(savedExample('broken-off'));
    const order = [
      'conclusion',
      'plan',
      'abnormal',
      'not-examined',
      'map',
      'negatives',
      'gaps',
    ].map((id) => html.indexOf(`id="${id}"`));
    expect(order.every((at) => at > 0)).toBe(true);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('shows no conclusion of a withdrawn record, and says that it is withdrawn', () => {
    const exam = savedExample('yearly-check');
    const html = toHtml({ ...exam, status: 'entered-in-error' });
    expect(html).toContain('Withdrawn: entered in error, do not use');
    expect(html).not.toContain('id="conclusion"');
  });

  it('keeps its structure whatever the texts say', () => {
    const exam = savedExample('neck-lump');
    const words = (text: string): Exam => ({
      ...exam,
      subject: { ...exam.subject, name: { family: text } },
      statements: exam.statements.map((statement) =>
        statement.kind === 'note' ? { ...statement, text } : { ...statement, note: text },
      ),
      ...(exam.conclusion && { conclusion: { ...exam.conclusion, text, worries: [text] } }),
    });
    const usual = structure(toHtml(words('plain')));
    for (const text of hostile.slice(0, -1)) {
      expect(parseExam(words(text)).issues, text).toEqual([]);
      expect(structure(toHtml(words(text))), text).toEqual(usual);
    }
  });

  it('takes a note of a million characters', () => {
    const exam = savedExample('broken-off');
    const text = hostile.at(-1) ?? '';
    const long: Exam = { ...exam, statements: [{ key: 'n', kind: 'note', text }] };
    expect(toHtml(long)).toContain(text);
  });

  it('shows prompts only with a chosen rule set, and with their cautions', () => {
    const exam = savedExample('drooping-lid');
    expect(toHtml(exam)).not.toContain('id="prompts"');
    const html = toHtml(exam, { checks: { ruleSets: ['horner-signs'] } });
    expect(html).toContain('id="prompts"');
    expect(html).toContain('It names no disease as present');
  });

  it('compares with the last exam where one is given', () => {
    const exam = savedExample('skin-lesion');
    const html = toHtml(exam, { checks: { prior: { ...exam, id: 'before' } } });
    expect(html).not.toContain('No earlier examination was given');
  });

  it.each(savedExamples)('%s: has a style for each class, but for names of kinds', (_, exam) => {
    const html = toHtml(exam);
    const [style = ''] = html.match(/<style>[\s\S]*?<\/style>/) ?? [];
    const styled = new Set([...style.matchAll(/\.([a-z][\w-]*)/g)].map(([, name]) => name));
    const classes = [...html.matchAll(/ class="([^"]*)"/g)].flatMap(([, names = '']) =>
      names.split(' '),
    );
    // The last of them look like their neighbours.
    const plain = /^(?:(?:record|strip|status|concern|view)-.+|of|fine|start|no-prior)$/;
    expect(classes.filter((name) => !styled.has(name) && !plain.test(name))).toEqual([]);
  });

  it.each(savedExamples)('%s: German in every word of the page itself', (_, exam) => {
    const plain: Exam = { ...exam, statements: [] };
    const options = { checks: { prior: { ...plain, id: 'before' } } };
    const html = toHtml(plain, { ...options, language: german, words: germanWords });
    expect(structure(html)).toEqual(structure(toHtml(plain, options)));
    const text = html.replaceAll(/<style>[\s\S]*?<\/style>|<bdi>[^<]*<\/bdi>|<[^>]*>/g, '\n');
    const same = new Set(leaves(germanWords));
    const left = leaves(englishWords).filter(
      (word) => !same.has(word) && text.split('\n').includes(word),
    );
    expect(html).toContain('<html lang="de">');
    expect(left).toEqual([]);
  });
});

function leaves(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(leaves) : [];
}
