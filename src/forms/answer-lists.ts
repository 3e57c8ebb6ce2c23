import type { ValueSet } from 'fhir/r4.js';
import type { FormItem, FormOption } from './form.ts';

/** When a list was put together, which FHIR asks for. Fixed: the same form is the same text at any time. */
const timestamp = '2025-01-01T00:00:00Z';

/** The answers that several items of a form offer, each list once. */
export interface AnswerLists {
  /** Value sets to be contained in the form, with their answers as expansion. */
  readonly contained: readonly ValueSet[];
  /** Where the answers of an item stand, `#answers-1`; undefined where no other item has them. */
  readonly referenceOf: (options: readonly FormOption[]) => string | undefined;
}

/** @see https://hl7.org/fhir/R4/questionnaire-definitions.html#Questionnaire.item.answerValueSet */
export function answerLists(items: readonly FormItem[]): AnswerLists {
  const times = new Map<string, number>();
  const lists = new Map<string, readonly FormOption[]>();
  const count = (below: readonly FormItem[]): void => {
    for (const { options, items: inner = [] } of below) {
      if (options !== undefined && options.length > 0) {
        const key = keyOf(options);
        times.set(key, (times.get(key) ?? 0) + 1);
        lists.set(key, options);
      }
      count(inner);
    }
  };
  count(items);
  const ids = new Map<string, string>();
  const contained = [...lists].flatMap(([key, options]): ValueSet[] => {
    if ((times.get(key) ?? 0) < 2) return [];
    const number = ids.size + 1;
    const id = `answers-${number}`;
    ids.set(key, id);
    const contains = options.map(({ system, code, display }) => ({ system, code, display }));
    const name = `Answers${number}`; // vsd-0
    const expansion = { timestamp, contains };
    return [{ resourceType: 'ValueSet', id, name, status: 'active', expansion }];
  });
  return {
    contained,
    referenceOf: (options) => {
      const id = ids.get(keyOf(options));
      return id === undefined ? undefined : `#${id}`;
    },
  };
}

/** What a renderer sees of a list; the same for two questions whose answers say the same there. */
function keyOf(options: readonly FormOption[]): string {
  return JSON.stringify(options.map(({ system, code, display }) => [system, code, display]));
}
