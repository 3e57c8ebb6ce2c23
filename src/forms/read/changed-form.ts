import { isPlainObject } from '../../data/plain-data.ts';
import type { Path } from '../../issues/path.ts';
import type { FormDescription, FormItem } from '../form.ts';
import { UNIT_EXTENSION } from '../questionnaire-items.ts';
import type { Reading } from './reading.ts';

type Members = Readonly<Record<string, unknown>>;

/**
 * What a clinic made of the form. Items that it left out or added, and other words, change nothing of
 * what the answers to the others mean; another unit, another type or an answer that is chosen
 * beforehand does.
 * @returns linkIds that it added
 */
export function changedForm(
  reading: Reading,
  form: FormDescription,
  questionnaire: Members,
): ReadonlySet<string> {
  const known = new Map<string, FormItem>();
  const learn = (items: readonly FormItem[]): void => {
    for (const item of items) {
      known.set(item.linkId, item);
      learn(item.items ?? []);
    }
  };
  learn(form.items);
  const added = new Set<string>();
  const sets = questionnaire['language'] === form.language ? setsOf(questionnaire) : undefined;
  const look = (items: unknown): void => {
    if (!Array.isArray(items)) return;
    for (const one of items) {
      if (!isPlainObject(one)) continue;
      const { linkId } = one;
      if (typeof linkId === 'string') {
        const item = known.get(linkId);
        if (item === undefined) added.add(linkId);
        else compare(reading, item, one, sets);
      }
      look(one['item']);
    }
  };
  look(questionnaire['item']);
  return added;
}

/** Of the value sets that a form contains, by reference: the displays of each code. */
type Sets = ReadonlyMap<string, Displays>;
type Displays = ReadonlyMap<string, ReadonlySet<unknown>>;

function setsOf({ contained }: Members): Sets {
  return new Map(
    listOf(contained).flatMap(({ resourceType, id, expansion }) =>
      resourceType === 'ValueSet' && typeof id === 'string' && isPlainObject(expansion)
        ? [[`#${id}`, displaysOf(listOf(expansion['contains']))]]
        : [],
    ),
  );
}

function displaysOf(codings: readonly unknown[]): Displays {
  const displays = new Map<string, Set<unknown>>();
  for (const coding of codings) {
    if (!isPlainObject(coding)) continue;
    const { code, display } = coding;
    if (typeof code !== 'string') continue;
    const known = displays.get(code);
    if (known === undefined) displays.set(code, new Set([display]));
    else known.add(display);
  }
  return displays;
}

/** @param sets undefined where the form speaks another language, so that no words are compared */
function compare(reading: Reading, item: FormItem, given: Members, sets: Sets | undefined): void {
  const path: Path = [item.linkId];
  const type = given['type'] === 'coding' ? 'choice' : given['type'];
  const changed = (property: string): void => {
    reading.report('contradiction', path, { reason: 'form-changed', property });
  };
  if (type !== item.type) changed('type');
  if ((given['repeats'] ?? false) !== (item.repeats ?? false)) changed('repeats');
  if (item.unit !== undefined && unitOf(given) !== item.unit) changed('unit');
  if (item.value === undefined && hasChoice(given)) changed('initial');
  if (sets !== undefined && (given['text'] !== item.text || saysOther(item, given, sets))) {
    reading.warn('display-mismatch', path, { reason: 'form-text' });
  }
}

function unitOf({ extension }: Members): unknown {
  const units = listOf(extension).filter(({ url }) => url === UNIT_EXTENSION);
  const [only, another] = units;
  const coding = only?.['valueCoding'];
  return another === undefined && isPlainObject(coding) ? coding['code'] : undefined;
}

/** An answer that stands there before anybody has given it. */
function hasChoice({ initial, answerOption }: Members): boolean {
  return (
    listOf(initial).length > 0 ||
    listOf(answerOption).some(({ initialSelected }) => initialSelected === true)
  );
}

function saysOther(
  { options = [] }: FormItem,
  { answerOption, answerValueSet }: Members,
  sets: Sets,
): boolean {
  const here = displaysOf(listOf(answerOption).map(({ valueCoding }) => valueCoding));
  const there = typeof answerValueSet === 'string' ? sets.get(answerValueSet) : undefined;
  return options.some(({ code, display }) =>
    [here, there].some((displays) =>
      [...(displays?.get(code) ?? [])].some((one) => one !== display),
    ),
  );
}

function listOf(list: unknown): readonly Members[] {
  return Array.isArray(list) ? list.filter(isPlainObject) : [];
}
