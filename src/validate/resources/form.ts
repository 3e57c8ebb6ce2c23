import { choiceName, isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';

/** An item of a Questionnaire, ready to be asked about answers. */
export interface FormItem {
  readonly item: JsonObject;
  readonly type: string;
  /** Its place among its siblings. */
  readonly position: number;
  readonly below: FormItems;
  /** Answers of the value set that the form contains for it; undefined where they are not all there. */
  readonly contained: ReadonlySet<string> | undefined;
}

/** The items at one place of a form, by linkId; worked out when first asked for. */
export interface FormItems {
  readonly items: readonly FormItem[];
  readonly byLink: ReadonlyMap<string, FormItem>;
}

/** By reference, the answers of the value sets that a form contains. */
type ContainedSets = ReadonlyMap<string, ReadonlySet<string>>;

/** The items that stand in a Questionnaire. */
export function formItems(form: JsonObject): FormItems {
  return itemsIn(form, containedSets(form));
}

function itemsIn(holder: JsonObject, sets: ContainedSets): FormItems {
  let found: FormItems | undefined;
  const read = (): FormItems => {
    found ??= readItems(holder, sets);
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

function containedSets(form: JsonObject): ContainedSets {
  return new Map(
    objectsOf(form['contained']).flatMap((set) => {
      const codings = set['resourceType'] === 'ValueSet' ? wholeExpansion(set) : undefined;
      const keys = codings?.flatMap((valueCoding) => answerKey({ valueCoding }) ?? []);
      return keys === undefined ? [] : [[`#${textOf(set['id'])}`, new Set(keys)]];
    }),
  );
}

/** What a value set was expanded to, where that is a plain list and all of it. */
function wholeExpansion({ expansion }: JsonObject): readonly JsonObject[] | undefined {
  if (!isObject(expansion)) return undefined;
  const codings = objectsOf(expansion['contains']);
  const { total = codings.length, offset = 0 } = expansion;
  const isPlain = codings.every(({ contains, abstract }) => !contains && abstract !== true);
  const isWhole = total === codings.length && offset === 0 && expansion['next'] === undefined;
  return codings.length > 0 && isPlain && isWhole ? codings : undefined;
}

function readItems(holder: JsonObject, sets: ContainedSets): FormItems {
  const items = objectsOf(holder['item']).map(
    (item, position): FormItem => ({
      item,
      type: textOf(item['type']) ?? '',
      position,
      below: itemsIn(item, sets),
      contained: sets.get(textOf(item['answerValueSet']) ?? ''),
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
export function optionsOf({ item, contained }: FormItem): ReadonlySet<string> {
  if (contained !== undefined) return contained;
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
