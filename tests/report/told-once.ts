import type { DefaultTreeAdapterTypes } from 'parse5';
import { parse } from 'parse5';
import type { Exam } from '../../src/index.ts';
import { englishWords, germanWords, toHtml } from '../../src/report/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { english, inLanguage } from '../../src/terminology/language.ts';
import { german } from '../../src/terminology/languages/de.ts';

type Node = DefaultTreeAdapterTypes.ChildNode | DefaultTreeAdapterTypes.Document;

/** A language, and a word by which each of its negatives is known when it is read alone. */
export const tongues = {
  english: {
    language: english,
    words: englishWords,
    denies: /\b(no|not|none|never)\b/i,
  },
  german: {
    language: german,
    words: germanWords,
    denies: /\b(kein|keine|keinen|nicht)\b/i,
  },
} as const;

export type Tongue = keyof typeof tongues;

/** Lines and cells of a page with the keys of the statements that they tell. */
export function toldTexts(html: string): ReadonlyMap<string, readonly string[]> {
  const texts = new Map<string, string[]>();
  visit(parse(html));
  return texts;

  function visit(node: Node): void {
    if ('attrs' in node) {
      const keys = node.attrs.find(({ name }) => name === 'data-of')?.value.split(' ') ?? [];
      for (const key of keys) texts.set(key, [...(texts.get(key) ?? []), textOf(node)]);
    }
    if ('childNodes' in node) node.childNodes.forEach(visit);
  }
}

function textOf(node: Node): string {
  if (node.nodeName === '#text' && 'value' in node) return node.value;
  return 'childNodes' in node ? node.childNodes.map(textOf).join('') : '';
}

export interface Misread {
  readonly key: string;
  readonly texts: readonly string[];
  readonly why: 'not told once' | 'reads as there';
}

/**
 * Statements that a page does not tell exactly once, and signs that are not there whose line has no
 * word that denies before the place, or begins with the sign as if it were there.
 */
export function misreadIn(exam: Exam, tongue: Tongue): readonly Misread[] {
  const { language, words, denies } = tongues[tongue];
  const catalogue = inLanguage(builtInCatalogue, language);
  const told = toldTexts(toHtml(exam, { language, words }));
  return exam.statements.flatMap((statement): Misread[] => {
    const texts = told.get(statement.key) ?? [];
    if (texts.length !== 1) return [{ key: statement.key, texts, why: 'not told once' }];
    if (statement.kind !== 'finding' || statement.presence !== 'absent') return [];
    const [text = ''] = texts;
    const [said = ''] = text.replace(words.asSeenThen, '').split(/ – |: (?=[^:]*$)/);
    const name = catalogue.findings.get(statement.finding)?.display ?? '';
    const reads = !denies.test(said) || (text.startsWith(name) && !denies.test(name));
    return reads ? [{ key: statement.key, texts, why: 'reads as there' }] : [];
  });
}
