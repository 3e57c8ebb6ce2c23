import type { FormOption } from '../form.ts';
import {
  codingAt,
  elementWhere,
  filledBy,
  having,
  isAmong,
  literal,
  onlyWhere,
  type Template,
} from './annotation.ts';

/** Answers of one question, and where in a response the one that was given stands, as a Coding. */
export interface Ask {
  /** FHIRPath from the item that the template stands at. */
  readonly path: string;
  readonly options: readonly FormOption[];
}

/**
 * One template of what the same resource is for each answer of a question: what all have stands in it,
 * the rest on the condition that an answer was given for which it is so.
 *
 * @param values by answer, in the order of `ask.options`; undefined where an answer leaves it out
 */
export function merged(values: readonly (Template | undefined)[], ask: Ask): Template {
  const template: Template = {};
  for (const name of new Set(values.flatMap((value) => Object.keys(value ?? {})))) {
    putMember(
      template,
      name,
      values.map((value) => value?.[name]),
      ask,
    );
  }
  return template;
}

function putMember(template: Template, name: string, members: readonly unknown[], ask: Ask): void {
  const [first] = members;
  const some = members.find((member) => member !== undefined);
  if (members.every((member) => isSame(member, first))) template[name] = first;
  else if (Array.isArray(some)) {
    const lists = members.map((member) => (Array.isArray(member) ? member : []));
    template[name] = isAlike(lists) ? [mergedElements(lists, ask)] : mergedList(lists, ask);
  } else if (typeof some === 'object') {
    template[name] = merged(members.map(asTemplate), ask);
  } else template[`_${name}`] = filledBy(mergedText(members, ask));
}

function asTemplate(member: unknown): Template | undefined {
  // What is no list and no primitive in FHIR JSON is an object.
  return member as Template | undefined;
}

/** One component each, about the same thing, with another answer. */
function isAlike(lists: readonly (readonly unknown[])[]): boolean {
  const codes = lists.map(([one]) => asTemplate(one)?.['code']);
  return lists.every((list) => list.length === 1) && typeof codes[0] === 'object'
    ? codes.every((code) => isSame(code, codes[0]))
    : false;
}

function mergedElements(lists: readonly (readonly unknown[])[], ask: Ask): Template {
  return merged(
    lists.map(([one]) => asTemplate(one)),
    ask,
  );
}

/**
 * Those that all answers have, and that of the answer itself; then what only some have, the first of
 * each answer as one element, the second as another.
 */
export function mergedList(lists: readonly (readonly unknown[])[], ask: Ask): unknown[] {
  const { path, options } = ask;
  const isOwn = (element: unknown, at: number): boolean => {
    const option = options[at];
    return option !== undefined && isSame(element, codingOf(option));
  };
  const own = options.flatMap(({ code }, at) =>
    lists[at]?.some((element) => isOwn(element, at)) ? [code] : [],
  );
  const isCommon = (element: unknown): boolean =>
    lists.every((list, at) => list.some((one) => isSame(one, element) && !isOwn(one, at)));
  const common = (lists[0] ?? []).filter(isCommon);
  const rest = lists.map((list, at) =>
    list.filter((element) => !isOwn(element, at) && !common.some((one) => isSame(one, element))),
  );
  const columns = rest.reduce((most, { length }) => Math.max(most, length), 0);
  return [
    ...(own.length === 0 ? [] : [ownCoding(path, own, own.length === options.length)]),
    ...common,
    ...Array.from({ length: columns }, (_, column) => {
      const given = options.flatMap((option, at) => {
        const element = rest[at]?.[column];
        // Elements of the lists that are merged are codings and concepts.
        return element === undefined ? [] : [{ option, element: element as Template }];
      });
      return elementOf(path, given);
    }),
  ];
}

function ownCoding(path: string, codes: readonly string[], isAlways: boolean): Template {
  if (isAlways) return codingAt(path);
  return { ...onlyWhere(having(path, codes)), ...codingAt('') };
}

/** One element for the answers that have one at this place. */
function elementOf(
  path: string,
  given: readonly { readonly option: FormOption; readonly element: Template }[],
): Template {
  const where = having(
    path,
    given.map(({ option: { code } }) => code),
  );
  const elements = given.map(({ element }) => element);
  const [first] = elements;
  if (first !== undefined && elements.every((element) => isSame(element, first))) {
    return elementWhere(where, first);
  }
  const options = given.map(({ option }) => option);
  const differing = merged(elements, { path: '', options });
  return { ...onlyWhere(where), ...mapMembers(differing, allFilled) };
}

/**
 * Below a list within an element that is there on a condition, engines keep what they fill in alone:
 * what never changes is filled in too.
 */
export function allFilled(member: unknown): unknown {
  if (Array.isArray(member)) return member.map(allFilled);
  if (typeof member !== 'object' || member === null) return member;
  const filled = Object.entries(member).map(([name, one]): [string, unknown] => {
    if (name === 'extension' || name.startsWith('_')) return [name, one];
    if (typeof one === 'object') return [name, allFilled(one)];
    return [`_${name}`, filledBy(literal(one))];
  });
  return Object.fromEntries(filled);
}

function mapMembers(template: Template, change: (member: unknown) => unknown): Template {
  return Object.fromEntries(Object.entries(template).map(([name, one]) => [name, change(one)]));
}

/** An expression for a primitive that differs from answer to answer. */
function mergedText(members: readonly unknown[], { path, options }: Ask): string {
  const isDisplay = options.every(
    ({ display }, at) => members[at] === undefined || members[at] === display,
  );
  const codes = options.filter((_, at) => members[at] !== undefined).map(({ code }) => code);
  if (isDisplay) {
    if (codes.length < options.length) return `${having(path, codes)}.display`;
    return path === '' ? 'display' : `${path}.display`;
  }
  const byText = new Map<unknown, string[]>();
  options.forEach(({ code }, at) => {
    const member = members[at];
    if (member !== undefined) byText.set(member, [...(byText.get(member) ?? []), code]);
  });
  let expression = '{}';
  for (const [text, of] of byText) {
    expression = `iif(${isAmong(path, of)}, ${literal(text)}, ${expression})`;
  }
  return expression;
}

/** What renderers put into a response for an answer. */
export function codingOf({ system, code, display }: FormOption): Template {
  return { system, code, display };
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
