import { choiceName, isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';

/** An item of a Questionnaire, ready to be asked about answers. */
export interface FormItem {
  readonly item: JsonObject;
  readonly type: string;
  /** Its place among its siblings. */
  readonly position: number;
  readonly below: FormItems;
}

/** The items at one place of a form, by linkId; worked out when first asked for. */
export interface FormItems {
  readonly items: readonly FormItem[];
  readonly byLink: ReadonlyMap<string, FormItem>;
}

/** The items that stand in a Questionnaire or in an item of one. */
export function formItems(holder: JsonObject): FormItems {
  let found: FormItems | undefined;
  const read = (): FormItems => {
    found ??= readItems(holder);
    return found;
  };
  return {
    get items() {
      return read().items;
    },
    get byLink() {
      return read().byLink;
    },
  };
}

function readItems(holder: JsonObject): FormItems {
  const items = objectsOf(holder['item']).map(
    (item, position): FormItem => ({
      item,
      type: textOf(item['type']) ?? '',
      position,
      below: formItems(item),
    }),
  );
  const byLink = new Map<string, FormItem>();
  for (const each of items) {
    const link = textOf(each.item['linkId']);
    // That no two have the same is que-2.
    if (link !== undefined && !byLink.has(link)) byLink.set(link, each);
  }
  return { items, byLink };
}

/** The answers that a form offers to choose from, as {@link answerKey} tells them apart. */
export function optionsOf({ item }: FormItem): ReadonlySet<string> {
  return new Set(objectsOf(item['answerOption']).flatMap((option) => answerKey(option) ?? []));
}

/** The types of the answers that a form offers, as they end a property: `Coding`. */
export function optionTypes({ item }: FormItem): ReadonlySet<string> {
  return new Set(
    objectsOf(item['answerOption']).flatMap((option) => {
      const name = choiceName(option, 'value');
      return name === undefined ? [] : [name.slice('value'.length)];
    }),
  );
}

/** What makes two answers the same: type and value; of a code system and code, of a reference its target. */
export function answerKey(holder: JsonObject): string | undefined {
  const name = choiceName(holder, 'value');
  const value = name === undefined ? undefined : holder[name];
  if (value === undefined) return undefined;
  if (!isObject(value)) return `${name} ${String(value)}`;
  const parts = name === 'valueReference' ? [value['reference']] : [value['system'], value['code']];
  return [name, ...parts.map((part) => textOf(part) ?? '')].join(' ');
}
