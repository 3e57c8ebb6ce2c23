import { issue } from '../../issues/issue.ts';
import type { Key } from '../../model/primitive.ts';
import { keyOfResource } from '../foreign/key.ts';
import { partNameOf, type Reading } from '../reading.ts';
import { lookAt, lookAtList, peek } from './element.ts';
import type { Entry } from './entries.ts';
import type { Parts } from './parts.ts';
import { targetName, targetOf } from './reference.ts';

/**
 * The entries in the order that counts: that of the bundle, or, for a search set, which has none, the
 * observations as the report leads to them before all others.
 */
export function inOrder(
  reading: Reading,
  report: Entry | undefined,
  bundleType: unknown,
): readonly Entry[] {
  const { all } = reading.entries;
  if (bundleType !== 'searchset' || report === undefined) return all;
  return [...new Set([...reachedFrom(reading, report), ...all])];
}

/**
 * The observations that are statements of the exam, by key: those that it identifies, and those
 * without such an identifier that its report leads to, or all of them where there is no report.
 */
export function statementsOf(
  reading: Reading,
  report: Entry | undefined,
  parts: Parts,
  own: boolean,
): ReadonlyMap<Key, Entry> {
  const statements = new Map(parts.statements);
  const others =
    report === undefined ? reading.entries.ofType('Observation') : reachedFrom(reading, report);
  for (const entry of others) {
    if (partNameOf(reading, entry.resource) !== undefined || isOfAnother(reading, entry)) continue;
    const key = keyOfResource(entry);
    if (!statements.has(key)) statements.set(key, entry);
  }
  if (own) return statements;
  for (const entry of conditionsOf(reading, report)) {
    const key = keyOfResource(entry);
    if (!statements.has(key)) statements.set(key, entry);
  }
  return statements;
}

/**
 * Conditions of a bundle of others: all of them, or, beside a report, which cannot lead to one, those
 * of its visit.
 */
function conditionsOf(reading: Reading, report: Entry | undefined): readonly Entry[] {
  const all = reading.entries.ofType('Condition');
  if (report === undefined) return all;
  const visit = visitOf(reading, report);
  return all.filter((entry) => {
    if (visit !== undefined && visitOf(reading, entry) === visit) return true;
    reading.reasons.set(entry.resource.json, 'it is not of the visit of the report');
    reading.issues.push(
      issue('not-in-exam', entry.path, { reason: 'other-visit' }, { severity: 'information' }),
    );
    return false;
  });
}

function visitOf(reading: Reading, entry: Entry): string | undefined {
  const reference = lookAt(entry.resource, 'encounter');
  const target = reference && targetOf(reading, reference, entry);
  return target === undefined ? undefined : targetName(target);
}

/** Observations that the report leads to, through groups as well, each once and in their order. */
export function reachedFrom(reading: Reading, report: Entry): Entry[] {
  const found = new Set<Entry>();
  const waiting: [Entry, string][] = [[report, 'result']];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [from, name] = next;
    if (found.has(from)) continue;
    const members = lookAtList(from.resource, name).flatMap((reference) => {
      const target = targetOf(reading, reference, from);
      return typeof target === 'object' && target.type === 'Observation' ? [target] : [];
    });
    if (from.type === 'Observation') found.add(from);
    const fresh = members.filter((member) => !found.has(member));
    // The last one waiting is taken first.
    for (const member of fresh.reverse()) waiting.push([member, 'hasMember']);
  }
  return [...found];
}

/** Identified as a part of another exam. */
function isOfAnother({ systems }: Reading, { resource }: Entry): boolean {
  const list = peek(resource, 'identifier');
  return (
    Array.isArray(list) &&
    list.some((entry: unknown) => {
      const { system } = (entry ?? {}) as Record<string, unknown>; // read as unknown alone
      return system === systems.statement;
    })
  );
}
