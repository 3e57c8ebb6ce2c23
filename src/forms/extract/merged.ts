import type { FormOption } from '../form.ts';
import {
  codingAt,
  elementWhere,
  filledBy,
  having,
  onlyWhere,
  quoted,
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

/** Elements in the order in which the answers have them, each where it belongs to. */
export function mergedList(lists: readonly (readonly unknown[])[], ask: Ask): unknown[] {
  const found: { readonly element: unknown; readonly codes: string[]; isAnswer: boolean }[] = [];
  lists.forEach((list, at) => {
    const option = ask.options[at];
    if (option === undefined) return;
    for (const element of list) {
      const isAnswer = isSame(element, codingOf(option));
      const known = found.find((one) =>
        isAnswer ? one.isAnswer : !one.isAnswer && isSame(one.element, element),
      );
      if (known === undefined) found.push({ element, codes: [option.code], isAnswer });
      else known.codes.push(option.code);
    }
  });
  return found.map(({ element, codes, isAnswer }) => {
    const isAlways = codes.length === ask.options.length;
    if (isAnswer) {
      return isAlways
        ? codingAt(ask.path)
        : { ...onlyWhere(having(ask.path, codes)), ...codingAt('') };
    }
    // Elements of the lists that are merged are codings and concepts.
    return isAlways ? element : elementWhere(having(ask.path, codes), element as object);
  });
}

/** An expression for a primitive that differs from answer to answer. */
function mergedText(members: readonly unknown[], { path, options }: Ask): string {
  const isDisplay = options.every(
    ({ display }, at) => members[at] === undefined || members[at] === display,
  );
  const codes = options.filter((_, at) => members[at] !== undefined).map(({ code }) => code);
  if (isDisplay) {
    return `${codes.length === options.length ? path : having(path, codes)}.display`;
  }
  const byText = new Map<unknown, string[]>();
  options.forEach(({ code }, at) => {
    const member = members[at];
    if (member !== undefined) byText.set(member, [...(byText.get(member) ?? []), code]);
  });
  let expression = '{}';
  for (const [text, of] of byText) {
    const literal = typeof text === 'string' ? quoted(text) : String(text);
    expression = `iif(${having(path, of)}.exists(), ${literal}, ${expression})`;
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
