import type { Exam } from '../../model/exam.ts';
import type { ReadBundle } from '../../read/read-bundle.ts';
import type { Fate, LedgerEntry } from '../exams/ledger.ts';
import type { JsonNode } from '../json/parse.ts';
import type { BundleText } from './read-unit.ts';

/** An element of a bundle that holds a value, with what became of it. */
export interface BundleField extends LedgerEntry {
  readonly text: string;
}

/** Where the walk stands: what is known of all that lies below. */
interface Below {
  readonly name: string;
  readonly pointer: string;
  readonly fate: Fate;
  readonly statement?: string;
}

/**
 * Every value of a bundle with its fate: that of the statement that was read from its resource, or that of
 * what the reader left over. What is left over is in no exam, so that it counts as set aside.
 */
export function fieldsOf({ node, placeOf }: BundleText, read: ReadBundle): BundleField[] {
  const fateBelow = read.outcome.ok ? fatesOf(read, read.outcome.value) : undefined;
  const fields: BundleField[] = [];
  const walk = (one: JsonNode, above: Below): void => {
    const here = fateBelow?.(above) ?? above;
    for (const { step, inner, name } of partsOf(one, here.name)) {
      walk(inner, { ...here, name, pointer: `${here.pointer}/${step}` });
    }
    if (one.kind === 'text' || one.kind === 'null') fields.push(fieldOf(one, here, placeOf(one)));
  };
  const fate = read.outcome.ok ? 'coded' : 'quarantined';
  walk(node, { name: 'Bundle', pointer: '', fate });
  return fields;
}

interface Part {
  readonly step: string | number;
  readonly inner: JsonNode;
  readonly name: string;
}

function partsOf(node: JsonNode, name: string): Part[] {
  if (node.kind === 'array') return node.nodes.map((inner, step) => ({ step, inner, name }));
  if (node.kind !== 'object') return [];
  const type = node.entries.find((entry) => entry.name === 'resourceType')?.node;
  const own = type?.kind === 'text' && isName(type.text) ? type.text : name;
  return node.entries.map((entry) => ({
    step: entry.name,
    inner: entry.node,
    name: `${own}.${entry.name}`,
  }));
}

function fieldOf(
  node: JsonNode,
  { name, fate, statement }: Below,
  at: BundleField['at'],
): BundleField {
  const text = node.kind === 'text' ? node.text : '';
  if (text.trim() === '' && fate !== 'quarantined') return { name, at, text, fate: 'blank' };
  return { name, at, text, fate, ...(statement !== undefined && { statement }) };
}

/** What becomes of what lies at a place, from what is known of the place above it. */
function fatesOf({ outcome, places }: ReadBundle, exam: Exam): (above: Below) => Below {
  const left = new Map(outcome.remainder.map(({ path, kind }) => [pointerOf(path), kind] as const));
  const owners = ownersOf(exam, places);
  const kinds = new Map(exam.statements.map(({ key, kind }) => [key, kind] as const));
  const ownerAt = (above: Below): string | undefined => {
    const part = componentKey(above);
    return owners.get(above.pointer) ?? (part !== undefined && kinds.has(part) ? part : undefined);
  };
  return (above) => {
    const { statement: _, ...rest } = above;
    const kind = left.get(above.pointer);
    if (kind !== undefined) {
      return { ...rest, fate: kind === 'bookkeeping' ? 'administrative' : 'quarantined' };
    }
    if (above.fate === 'quarantined' || above.fate === 'administrative') return above;
    const own = ownerAt(above);
    if (own === undefined) return above;
    return { ...above, statement: own, fate: kinds.get(own) === 'note' ? 'verbatim' : 'coded' };
  };
}

function pointerOf(path: readonly (string | number)[]): string {
  return path.map((step) => `/${step}`).join('');
}

/** Key of the statement that was read from a resource, by where it stands; the first of several. */
function ownersOf(exam: Exam, places: ReadBundle['places']): ReadonlyMap<string, string> {
  const owners = new Map<string, string>();
  for (const { key } of exam.statements) {
    const path = places?.origins.get(key);
    const pointer = path && pointerOf(path);
    if (pointer !== undefined && !owners.has(pointer)) owners.set(pointer, key);
  }
  if (exam.statements.some(({ key }) => key === CONCLUSION) && places !== undefined) {
    owners.set(`${pointerOf(places.home)}/conclusion`, CONCLUSION);
  }
  return owners;
}

/** Key under which the reader keeps the words of a conclusion without a level of concern. */
const CONCLUSION = 'report/conclusion';

/** Key of the statement that a component makes, which begins with that of its resource. */
function componentKey({ pointer, statement }: Below): string | undefined {
  const [, at] = /\/component\/(\d+)$/.exec(pointer) ?? [];
  if (at === undefined || statement === undefined) return undefined;
  return `${statement.replace(/\/component\..*$/, '')}/component.${at}`;
}

function isName(text: string): boolean {
  return /^[A-Za-z]+$/.test(text);
}
