import { type RuleTitleId, ruleTitles } from './english/rules.ts';
import type { FactTypes, Sentence } from './facts.ts';
import { englishForms, englishKinds, type Form, type FormWord, type JsonKind } from './forms.ts';

/** What a language needs to put facts into sentences. */
export interface Wording {
  readonly forms: Readonly<Record<FormWord, string>>;
  readonly kinds: Readonly<Record<JsonKind, string>>;
  readonly ruleTitles: Readonly<Record<RuleTitleId, string>>;
  /** Between the last two of several: `a, b or c`. */
  readonly or: string;
  /** `{codes} or one of {count} others`. */
  readonly others: (listed: string, count: number) => string;
  readonly wholeNumber: (minimum: number, maximum: number) => string;
  readonly structure: (type: string) => string;
}

export const englishWording: Wording = {
  forms: englishForms,
  kinds: englishKinds,
  ruleTitles,
  or: 'or',
  others: (listed, count) => `${listed} or one of ${count} others`,
  wholeNumber: (minimum, maximum) => `a whole number from ${minimum} to ${maximum}`,
  structure: (type) => `${/^[AEIOU]/i.test(type) ? 'an' : 'a'} ${type}`,
};

/** A list of codes longer than this is cut. */
const mostListed = 12;

type Facts = Readonly<Record<string, unknown>>;

/** A sentence with its facts, and what is expected, where the sentence says it. */
export function rendered(
  sentence: Sentence,
  facts: Facts,
  wording: Wording,
): { readonly message: string; readonly expected?: string } {
  if (typeof sentence === 'string') return { message: filled(sentence, facts, wording) };
  const [message, ...alternatives] = sentence;
  const chosen = alternatives.find((text) => namesIn(text).every((name) => isThere(facts[name])));
  return {
    message: filled(message, facts, wording),
    ...(chosen !== undefined && { expected: filled(chosen, facts, wording) }),
  };
}

const placeholder = /\{([a-zA-Z]+)\??\}/g;

/** Names of the facts in a sentence. */
export function namesIn(text: string): string[] {
  return [...text.matchAll(placeholder)].map(([, name = '']) => name);
}

function isThere(fact: unknown): boolean {
  return fact !== undefined && !(Array.isArray(fact) && fact.length === 0);
}

function filled(text: string, facts: Facts, wording: Wording): string {
  return text.replace(placeholder, (_, name: keyof FactTypes) =>
    factText(name, facts[name], wording),
  );
}

function factText(name: keyof FactTypes, fact: unknown, wording: Wording): string {
  // The types of the facts say what stands under each name.
  if (name === 'form') return formText(fact as Form, wording);
  if (name === 'ruleId') return wording.ruleTitles[fact as RuleTitleId];
  if (name === 'found') return wording.kinds[fact as JsonKind];
  if (name === 'names') return (fact as readonly string[]).join(', ');
  return Array.isArray(fact) ? listText(fact, wording) : String(fact);
}

function formText(form: Form, wording: Wording): string {
  if (typeof form === 'string') return wording.forms[form];
  if ('oneOf' in form) return listText(form.oneOf, wording, form.others);
  if ('anyOf' in form)
    return listText(
      form.anyOf.map((word) => wording.forms[word]),
      wording,
    );
  if ('type' in form) return wording.structure(form.type);
  return wording.wholeNumber(form.minimum, form.maximum);
}

/** `a`, `a or b`, `a, b or c`; a long list is cut, with the number of those left out. */
function listText(values: readonly unknown[], wording: Wording, more = 0): string {
  const left = more + Math.max(0, values.length - mostListed);
  if (left > 0) return wording.others(values.slice(0, mostListed).join(', '), left);
  return values.length < 2
    ? values.join('')
    : `${values.slice(0, -1).join(', ')} ${wording.or} ${values.at(-1)}`;
}
