import type { DefaultTreeAdapterTypes } from 'parse5';
import { parse } from 'parse5';
import type { Exam, Statement, Symptom } from '../../../src/index.ts';
import { englishWords, germanWords, toHtml } from '../../../src/report/index.ts';
import { createNegator } from '../../../src/report/words/negatives.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { german } from '../../../src/terminology/languages/de.ts';
import { english, inLanguage } from '../../../src/terminology/languages/language.ts';

type Node = DefaultTreeAdapterTypes.ChildNode | DefaultTreeAdapterTypes.Document;

/** A language, and a word by which each of its negatives is known when it is read alone. */
export const tongues = {
  english: {
    language: english,
    words: englishWords,
    denies: /\b(no|not|none|never)\b/i,
    answersNot: /^(not sure|declined|not asked)/i,
  },
  german: {
    language: german,
    words: germanWords,
    denies: /\b(kein|keine|keinen|nicht)\b/i,
    answersNot: /^(auf frage nicht sicher|antwort abgelehnt|nicht gefragt)/i,
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
  const text = 'childNodes' in node ? node.childNodes.map(textOf).join('') : '';
  // What stands below a line, as its note, begins a new one.
  return node.nodeName === 'div' ? `\n${text}` : text;
}

export interface Misread {
  readonly key: string;
  readonly texts: readonly string[];
  readonly why: 'not told once' | 'reads as there';
}

/**
 * Statements that a page does not tell exactly once, and signs and complaints that are not there whose
 * line, or of complaints any part of it between semicolons, has no word that denies before the place, or begins with
 * the sign as if it were there.
 */
export function misreadIn(exam: Exam, tongue: Tongue): readonly Misread[] {
  const { language, words, denies, answersNot } = tongues[tongue];
  const catalogue = inLanguage(builtInCatalogue, language);
  const told = toldTexts(toHtml(exam, { language, words }));
  const negated = createNegator(words.denials, words.notFound);
  return exam.statements.flatMap((statement): Misread[] => {
    const texts = told.get(statement.key) ?? [];
    if (texts.length !== 1) return [{ key: statement.key, texts, why: 'not told once' }];
    return readsAsThere(statement, texts[0] ?? '')
      ? [{ key: statement.key, texts, why: 'reads as there' }]
      : [];
  });

  function readsAsThere(statement: Statement, text: string): boolean {
    const [line = ''] = text.replace(words.asSeenThen, '').replace(/^: /, '').split('\n');
    if (statement.kind === 'symptom' && statement.answer !== 'yes') {
      // Behind the last bracket stands who told it, and the course.
      const parts = line.split(/ \((?=[^(]*$)/)[0]?.split('; ') ?? [];
      const own = hasCourse(statement) ? parts.slice(0, 1) : parts;
      return own.some((part) => !denies.test(part) && !answersNot.test(part));
    }
    if (statement.kind !== 'finding' || statement.presence !== 'absent') return false;
    const [said = ''] = line.split(/ – |: (?=[^:]*$)/);
    const name = catalogue.findings.get(statement.finding)?.display ?? '';
    // Several signs share a line where the places are the same: each has its own words in it.
    const absence = negated(statement.finding, name);
    const own = denies.test(said) && denies.test(absence) && line.includes(absence);
    return !own || (line.startsWith(name) && !denies.test(name));
  }
}

/** A complaint with its course has a line of its own. */
function hasCourse({ onset, duration, durationText, course, severity, trigger }: Symptom): boolean {
  return [onset, duration, durationText, course, severity, trigger].some(
    (one) => one !== undefined,
  );
}
