import { append } from '../../data/append.ts';
import { isPlainObject } from '../../data/plain-data.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { builtInTables } from '../built-in.ts';
import { english } from './language.ts';
import { isLanguageTag } from './language-tag.ts';

/**
 * What is wrong with a language that did not pass the compiler: an export would write its texts as
 * they are. A table may lack displays, which stay in English; a text that is there is one.
 */
export function languageIssues(language: unknown, path: Path): Issue[] {
  if (!isPlainObject(language)) return [issue('wrong-type', path, { reason: 'not-an-object' })];
  const { displays } = language;
  const issues = [
    ...(typeof language['tag'] === 'string' && isLanguageTag(language['tag'])
      ? []
      : [issue('invalid-value', [...path, 'tag'], { reason: 'language-tag' })]),
    ...textsIssues(language['sides'], Object.keys(english.sides), [...path, 'sides']),
    ...textsIssues(language['texts'], Object.keys(english.texts), [...path, 'texts']),
  ];
  if (!isPlainObject(displays)) {
    return [...issues, issue('wrong-type', [...path, 'displays'], { reason: 'not-an-object' })];
  }
  for (const [table, words] of Object.entries(displays)) {
    const at = [...path, 'displays', table];
    if (!Object.hasOwn(builtInTables, table)) {
      issues.push(issue('unknown-code', at, { reason: 'table-name' }));
    } else if (words !== undefined) {
      append(issues, textsIssues(words, isPlainObject(words) ? Object.keys(words) : [], at));
    }
  }
  return issues;
}

/** An object with a text under each of these names. */
function textsIssues(texts: unknown, names: readonly string[], path: Path): Issue[] {
  if (!isPlainObject(texts)) return [issue('wrong-type', path, { reason: 'not-an-object' })];
  return names.flatMap((name) => {
    const text = texts[name];
    if (typeof text !== 'string') {
      return [issue('wrong-type', [...path, name], { reason: 'not-text' })];
    }
    return text.trim() === '' ? [issue('empty-value', [...path, name], { reason: 'text' })] : [];
  });
}
