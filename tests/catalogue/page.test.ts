import { readFileSync } from 'node:fs';
import { type DefaultTreeAdapterMap, parse } from 'parse5';
import { expect, it } from 'vitest';
import { rules } from '../../src/checks/rules.ts';
import { cataloguePage } from '../../src/generate/catalogue/page.ts';

const page = cataloguePage();

type Node = DefaultTreeAdapterMap['node'];

/** What stands under a name in the elements of the page, as the parser of the HTML standard reads it. */
function attributes(name: string): readonly string[] {
  const found: string[] = [];
  const walk = (node: Node): void => {
    if ('attrs' in node) {
      for (const one of node.attrs) if (one.name === name) found.push(one.value);
    }
    if ('childNodes' in node) node.childNodes.forEach(walk);
  };
  walk(parse(page));
  return found;
}

const ids = attributes('id');

it('has an entry for every row of every table, and every rule', () => {
  const rows = [
    'regions',
    'findings',
    'attributes',
    'test-points',
    'measures',
    'scales',
    'symptoms',
    'reasons',
    'protocols',
    'methods',
  ].flatMap((table) => {
    const { concepts }: { concepts: readonly { code: string }[] } = JSON.parse(
      readFileSync(new URL(`../../terminology/${table}.json`, import.meta.url), 'utf8'),
    );
    return concepts.map(({ code }) => `${table}-${code}`);
  });
  expect(rows.length).toBeGreaterThan(600);
  const known = new Set(ids);
  expect(rows.filter((id) => !known.has(id))).toEqual([]);
  expect(rules.filter(({ id }) => !known.has(`rules-${id}`))).toEqual([]);
});

it('has no anchor twice and no link that leads nowhere', () => {
  expect(new Set(ids).size).toBe(ids.length);
  const known = new Set(ids.map((id) => `#${id}`));
  expect(attributes('href').filter((href) => !known.has(href))).toEqual([]);
});

it('loads nothing and runs nothing', () => {
  expect(attributes('src')).toEqual([]);
  expect(page).not.toMatch(/<script|<link|url\(|@import/i);
});

it('says what a sign is called, where it is, how it is described and where that comes from', () => {
  const at = page.indexOf('id="findings-lid-turn.ectropion"');
  const entry = page.slice(at, page.indexOf('</article>', at));
  for (const said of ['Ektropium', 'href="#regions-lid-lower"', 'SNOMED CT', '<dt>source</dt>']) {
    expect(entry).toContain(said);
  }
  const lesion = page.slice(page.indexOf('id="findings-skin-lesion"'));
  expect(lesion.slice(0, lesion.indexOf('</article>'))).toContain('#attributes-lesion-border');
  const lid = page.slice(page.indexOf('id="measures-mrd1"'));
  expect(lid.slice(0, lid.indexOf('</article>'))).toContain('-12 to 15 mm');
});
