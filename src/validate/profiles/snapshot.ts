import { append } from '../../data/append.ts';
import type { Definitions } from '../elements/definitions.ts';
import { isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import { structureBase, withoutVersion } from './structure.ts';

/** Finds a StructureDefinition by its canonical URL without version. */
export type FindStructure = (url: string) => JsonObject | undefined;

export interface Snapshot {
  readonly elements: readonly JsonObject[];
  /** Canonical URLs of definitions that it takes and that were not given. */
  readonly missing: readonly string[];
}

/** Definitions on the way from one to its last base; what is further away counts as missing. */
export const mostBases = 30;

/**
 * The elements of a StructureDefinition: its snapshot, or the elements of its base with its
 * differential over them. HL7's own types need not be given, because every resource is held to them
 * anyhow: of one that is not, only the elements that the differential names stand here.
 * @see https://hl7.org/fhir/R4/profiling.html#snapshot
 */
export function snapshotOf(
  structure: JsonObject,
  find: FindStructure,
  definitions: Definitions,
  open: readonly string[] = [],
): Snapshot {
  const given = isObject(structure['snapshot']) ? objectsOf(structure['snapshot']['element']) : [];
  if (given.length > 0) return { elements: given, missing: [] };
  const differential = isObject(structure['differential'])
    ? objectsOf(structure['differential']['element'])
    : [];
  const type = textOf(structure['type'])?.replace(structureBase, '');
  if (differential.length === 0 || type === undefined) return { elements: [], missing: [] };
  const missing: string[] = [];
  const build = new Builder(definitions, type, (url) => {
    const found = find(url);
    if (found === undefined || open.includes(url) || open.length === mostBases) return undefined;
    const inner = snapshotOf(found, find, definitions, [...open, url]);
    append(missing, inner.missing);
    return inner.elements;
  });
  const base = withoutVersion(textOf(structure['baseDefinition']) ?? structureBase + type);
  const elements = build.baseElements(base);
  // The type itself is held anyhow; a profile of it, also one of HL7's such as vitalsigns, is not.
  if (elements === undefined && base !== structureBase + type) missing.push(base);
  build.start(elements ?? []);
  for (const element of differential) build.apply(element);
  return { elements: build.elements(), missing };
}

/** A differential is put over its base one element at a time, in the order in which it stands. */
class Builder {
  private readonly byId = new Map<string, JsonObject>();
  /** Ids of all of them, in the order in which they stand. */
  private order: string[] = [];
  /** Ids that have others below them, whether or not they stand there themselves. */
  private readonly parents = new Set<string>();
  private readonly definitions: Definitions;
  private readonly type: string;
  /** Ids of choices of which the differential names a type alone, such as `valueQuantity`. */
  private readonly narrowed = new Set<string>();
  readonly baseElements: (url: string) => readonly JsonObject[] | undefined;

  constructor(
    definitions: Definitions,
    type: string,
    baseElements: (url: string) => readonly JsonObject[] | undefined,
  ) {
    this.definitions = definitions;
    this.type = type;
    this.baseElements = baseElements;
  }

  start(base: readonly JsonObject[]): void {
    const given = base.map((element): [string, JsonObject] => [
      textOf(element['id']) ?? '',
      element,
    ]);
    const root = { id: this.type, path: this.type, min: 0, max: '*' };
    const value = this.extensionValue('Extension.value[x]', 'Extension.value[x]');
    const own = this.type === 'Extension' ? [['Extension.value[x]', value] as const] : [];
    const isWhole = given.some(([id]) => id === this.type);
    const elements = isWhole ? given : [[this.type, root] as const, ...own, ...given];
    for (const [id, element] of elements) {
      if (!this.byId.has(id)) this.place(id, this.order.length);
      this.byId.set(id, element);
    }
  }

  private place(id: string, at: number): void {
    if (at === this.order.length) this.order.push(id);
    else this.order.splice(at, 0, id);
    for (let dot = id.lastIndexOf('.'); dot > 0; dot = id.lastIndexOf('.', dot - 1)) {
      const parent = id.slice(0, dot);
      if (this.parents.has(parent)) return;
      this.parents.add(parent);
    }
  }

  /** What an extension can hold is read from its definition, also where that leaves it to the base. */
  private extensionValue(id: string, path: string): JsonObject {
    const types = [...(this.definitions.types.get('Extension')?.properties ?? [])].flatMap(
      ([name, { choice, type }]) =>
        choice === undefined || name.startsWith('_') ? [] : [{ code: type }],
    );
    return { id, path, min: 0, max: '1', type: types };
  }

  elements(): JsonObject[] {
    return this.order.flatMap((id): JsonObject[] => {
      const element = this.byId.get(id);
      return element === undefined ? [] : [element];
    });
  }

  apply(element: JsonObject): void {
    const id = this.idOf(element);
    if (id === undefined) return;
    const before = this.byId.get(id) ?? this.made(id);
    this.byId.set(id, overlaid(before, element, id));
  }

  /** The id, of elements without one by path and name of the slice; choices by their full name. */
  private idOf(element: JsonObject): string | undefined {
    const path = textOf(element['path']);
    const slice = textOf(element['sliceName']);
    const id = textOf(element['id']) ?? (path && slice ? `${path}:${slice}` : path);
    if (id === undefined) return undefined;
    const [root = '', ...steps] = id.split('.');
    let known = root;
    for (const step of steps) known = `${known}.${this.stepOf(known, step)}`;
    return known;
  }

  /**
   * `valueQuantity` stands for the slice of `value[x]` of that type, and leaves no other, as in the
   * snapshots that HL7 publishes.
   */
  private stepOf(parent: string, step: string): string {
    if (step.includes(':') || step.endsWith('[x]') || this.byId.has(`${parent}.${step}`))
      return step;
    for (let end = step.length - 1; end > 0; end--) {
      if (!/[A-Z]/.test(step.charAt(end))) continue;
      const stem = `${step.slice(0, end)}[x]`;
      if (this.byId.has(`${parent}.${stem}`) || this.isChoice(parent, step, stem)) {
        this.narrowed.add(`${parent}.${stem}`);
        return `${stem}:${step}`;
      }
    }
    return step;
  }

  private isChoice(parent: string, step: string, stem: string): boolean {
    const property = this.typeAt(pathOf(parent))?.properties.get(step);
    return property?.choice !== undefined && `${property.choice.name}[x]` === stem;
  }

  /** What the tables know of the type that an element has. */
  private typeAt(path: string): ReturnType<Definitions['types']['get']> {
    const [root = '', ...steps] = path.split('.');
    let type = this.definitions.types.get(root);
    for (const step of steps) {
      const property = type?.properties.get(step);
      type = property && this.definitions.types.get(property.type);
    }
    return type;
  }

  /** An element that the base does not list: a slice, or one below a data type. */
  private made(id: string): JsonObject {
    const step = id.slice(id.lastIndexOf('.') + 1);
    const parent = id.slice(0, Math.max(0, id.lastIndexOf('.')));
    if (parent !== '' && !this.byId.has(parent)) this.insert(parent, this.made(parent));
    const made = step.includes(':') ? this.madeSlice(id) : this.madeChild(id, parent, step);
    this.insert(id, made);
    return made;
  }

  private madeSlice(id: string): JsonObject {
    const end = Math.max(id.lastIndexOf(':'), id.lastIndexOf('/'));
    const sliced = id.slice(0, end);
    const before = this.byId.get(sliced) ?? this.made(sliced);
    if (before['slicing'] === undefined && sliced.endsWith('[x]')) {
      const rules = this.narrowed.has(sliced) ? 'closed' : 'open';
      const slicing = { discriminator: [{ type: 'type', path: '$this' }], rules };
      this.byId.set(sliced, { ...before, slicing });
    }
    const { slicing: _, ...rest } = before;
    const name = id.slice(id.lastIndexOf(':') + 1);
    const type = sliced.endsWith('[x]') ? typeOfChoice(name, sliced) : undefined;
    const own = type && objectsOf(rest['type']).find(({ code }) => sameName(code, type));
    return {
      ...rest,
      id,
      sliceName: name,
      min: 0,
      ...(type && { type: [own ?? { code: this.typeName(type) }] }),
    };
  }

  /** `Quantity` of itself, `String` as `string`. */
  private typeName(type: string): string {
    const small = type.charAt(0).toLowerCase() + type.slice(1);
    return this.definitions.types.get(type) === undefined ? small : type;
  }

  private madeChild(id: string, parent: string, step: string): JsonObject {
    this.unfold(parent);
    const own = this.byId.get(id);
    if (own !== undefined) return own;
    const holder = this.byId.get(parent);
    const path = `${textOf(holder?.['path']) ?? parent}.${step}`;
    if (/[.]extension[.]value\[x\]$/.test(path)) return this.extensionValue(id, path);
    return { id, path, min: 0, max: '*' };
  }

  /** The elements below one that the base does not go into: of its slice, or of its type. */
  private unfold(parent: string): void {
    if (this.parents.has(parent)) return;
    const step = parent.slice(parent.lastIndexOf('.') + 1);
    const colon = step.indexOf(':');
    const sliced = colon === -1 ? undefined : parent.slice(0, parent.length - step.length + colon);
    const from = sliced === undefined ? [] : this.below(sliced);
    const elements = from.length > 0 ? from : this.ofType(parent);
    const path = textOf(this.byId.get(parent)?.['path']) ?? pathOf(parent);
    for (const { rest, element } of elements) {
      const id = parent + rest;
      this.insert(id, { ...element, id, path: path + pathOf(rest) });
    }
  }

  private below(parent: string): { rest: string; element: JsonObject }[] {
    if (!this.parents.has(parent)) return [];
    const start = `${parent}.`;
    return this.order.flatMap((id) => {
      const element = id.startsWith(start) ? this.byId.get(id) : undefined;
      return element === undefined ? [] : [{ rest: id.slice(parent.length), element }];
    });
  }

  private ofType(parent: string): { rest: string; element: JsonObject }[] {
    const [type, other] = objectsOf(this.byId.get(parent)?.['type']);
    const code = textOf(type?.['code']);
    if (type === undefined || code === undefined || other !== undefined) return [];
    const [profile] = objectsOrTexts(type['profile']);
    const url = withoutVersion(profile ?? structureBase + code);
    const [root, ...elements] = this.baseElements(url) ?? [];
    const start = textOf(root?.['id'])?.length ?? 0;
    return elements.map((element) => {
      const id = textOf(element['id']) ?? '';
      return { rest: id.slice(start), element };
    });
  }

  /** Puts an element after all that stands at or below its parent or its slicing. */
  private insert(id: string, element: JsonObject): void {
    if (this.byId.has(id)) return;
    const [end] = id.match(/[.:/][^.:/]*$/) ?? [''];
    const group = id.slice(0, id.length - end.length);
    const isOfGroup = (key: string): boolean =>
      key.startsWith(group) && (key === group || '.:/'.includes(key.charAt(group.length)));
    let last = this.order.length - 1;
    while (last >= 0 && !isOfGroup(this.order[last] ?? '')) last -= 1;
    this.place(id, last === -1 ? this.order.length : last + 1);
    this.byId.set(id, element);
  }
}

function objectsOrTexts(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];
}

/** An id without the names of slices. */
function pathOf(id: string): string {
  return id.replace(/:[^.]*/g, '');
}

function typeOfChoice(name: string, sliced: string): string | undefined {
  const stem = sliced.slice(sliced.lastIndexOf('.') + 1, -3);
  return name.startsWith(stem) && name.length > stem.length ? name.slice(stem.length) : undefined;
}

function sameName(code: unknown, type: string): boolean {
  return typeof code === 'string' && code.toLowerCase() === type.toLowerCase();
}

/** What the differential says in the place of what the base says; rules are added to those it has. */
function overlaid(base: JsonObject, { constraint, ...own }: JsonObject, id: string): JsonObject {
  const merged: Record<string, unknown> = { ...base, ...own, id, path: base['path'] };
  if (hasValueOf(own, 'fixed')) dropValues(merged, base, 'pattern');
  const keys = new Set(objectsOf(constraint).map(({ key }) => key));
  const kept = objectsOf(base['constraint']).filter(({ key }) => !keys.has(key));
  if (constraint !== undefined || kept.length > 0) {
    merged['constraint'] = [...kept, ...objectsOf(constraint)];
  }
  return merged;
}

function hasValueOf(element: JsonObject, prefix: string): boolean {
  return Object.keys(element).some((name) => isValueOf(name, prefix));
}

function isValueOf(name: string, prefix: string): boolean {
  return name.startsWith(prefix) && /^[A-Z]/.test(name.slice(prefix.length));
}

function dropValues(merged: Record<string, unknown>, base: JsonObject, prefix: string): void {
  for (const name of Object.keys(base)) if (isValueOf(name, prefix)) delete merged[name];
}
