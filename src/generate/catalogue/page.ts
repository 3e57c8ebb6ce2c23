import { rules } from '../../checks/rules.ts';
import { type Content, element, joined } from '../../report/html.ts';
import { anchorOf, type Fact, factsOf } from './facts.ts';
import { evidenceWords, germanOf, rowsOf, wordsOf } from './tables.ts';

/** The tables of the page, in order: file of /terminology and heading. */
const tables: readonly (readonly [table: string, heading: string])[] = [
  ['regions', 'Regions'],
  ['findings', 'Signs'],
  ['attributes', 'Attributes of signs'],
  ['test-points', 'Points and tests'],
  ['modalities', 'Modalities of sensation'],
  ['sensation-results', 'Results of sensation'],
  ['test-results', 'Results and grades of tests'],
  ['measures', 'Measures'],
  ['measure-conditions', 'Conditions of measures'],
  ['scales', 'Scales'],
  ['symptoms', 'Complaints'],
  ['reasons', 'Reasons'],
  ['methods', 'Methods'],
  ['instruments', 'Instruments'],
  ['conditions', 'Conditions of the exam'],
  ['services', 'Services of a plan'],
  ['sections', 'Parts of the body'],
  ['protocols', 'Protocols'],
];

const style = `:root{color-scheme:light dark;--paper:#fff;--ink:#1a1a1a;--link:#0b4aa8}
@media (prefers-color-scheme:dark){:root{--paper:#121212;--ink:#ededed;--link:#9ec5ff}}
body{background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,sans-serif;margin:0 auto;max-width:60rem;padding:1rem}
a{color:var(--link)}
nav ul{columns:3 12rem;list-style:none;padding:0}
article{border-top:1px solid;padding:.5rem 0}
article:target{outline:3px solid var(--link);outline-offset:3px}
h2{display:inline;font-size:1.2rem}h3{margin:0;font-size:1rem}code{font-size:.95em}
dl{display:grid;grid-template-columns:12rem 1fr;margin:.25rem 0 0}dd{margin:0}
summary{padding:.5rem 0}
a:focus-visible,summary:focus-visible{outline:2px solid var(--link)}
@media (max-width:40rem){dl{display:block}dd{margin:0 0 .25rem 1rem}}`;

/**
 * The page of everything that has a code: complete in itself, without script, and it loads nothing.
 * Each entry has an anchor of its table and code: `catalogue.html#findings-lid-turn.ectropion`.
 */
export function cataloguePage(): string {
  const title = 'Regions, signs, tests, measures and rules';
  const parts = tables.map(([table, heading]) => {
    const german = germanOf(table);
    const words = wordsOf(table);
    const entries = rowsOf(table).map((row) => {
      const { en = [], de = [], short = [] } = words.get(row.code) ?? {};
      const called: readonly Fact[] = [
        ['German', german.get(row.code) ?? ''],
        ['also called', [...short, ...en].join(', ')],
        ['also called in German', de.join(', ')],
      ];
      return entry(table, row.code, row.display, [...called, ...factsOf(table, row)]);
    });
    return part(table, heading, entries);
  });
  const ruleEntries = rules.map((rule) =>
    entry('rules', rule.id, rule.title, [
      ['kind', rule.kind],
      ['version', rule.version],
      ['severity', rule.severity],
      ['source', `${rule.source} (${evidenceWords[rule.evidence]})`],
    ]),
  );
  const all = [...tables, ['rules', 'Rules of the checks'] as const];
  const links = all.map(([table, heading]) =>
    element('li', {}, element('a', { href: `#${table}` }, heading)),
  );
  const page = element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      element('meta', {
        'http-equiv': 'Content-Security-Policy',
        content: "default-src 'none'; style-src 'unsafe-inline'",
      }),
      element('title', {}, title),
      // Our own text, without anything that HTML would read in it.
      element('style', {}, { markup: style }),
    ),
    element(
      'body',
      {},
      element(
        'header',
        {},
        element('h1', {}, title),
        element(
          'p',
          {},
          'The search of the browser finds codes, names and words. Codes and limits have the sources that ' +
            'their entries name; local rules and licences come first. LOINC codes come under the notice of the package.',
        ),
      ),
      element('nav', { 'aria-label': 'Tables' }, element('ul', {}, ...links)),
      element('main', {}, ...parts, part('rules', 'Rules of the checks', ruleEntries)),
    ),
  );
  return `<!DOCTYPE html>\n${page.markup}\n`;
}

function part(table: string, heading: string, entries: readonly Content[]): Content {
  return element(
    'details',
    { id: table, open: '' },
    element('summary', {}, element('h2', {}, `${heading} (${entries.length})`)),
    joined(...entries),
  );
}

function entry(table: string, code: string, display: string, facts: readonly Fact[]): Content {
  const id = anchorOf(table, code);
  return element(
    'article',
    { id },
    element('h3', {}, element('a', { href: `#${id}` }, element('code', {}, code)), ` ${display}`),
    element(
      'dl',
      {},
      ...facts
        .filter(([, said]) => said !== '')
        .map(([name, said]) => [element('dt', {}, name), element('dd', {}, said)]),
    ),
  );
}
