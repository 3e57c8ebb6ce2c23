import type { Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { StatusField } from '../mapping/exam-fields.ts';
import type { ItemRecords, Mapping } from '../mapping/mapping.ts';
import { headNames, itemNames } from '../prepare/names.ts';
import {
  documentStatusWords,
  reportStatusWords,
  resultStatusWords,
  siteSideWords,
} from './tables.ts';

/**
 * The mapping with what HL7 v2 itself says filled in where the mapping says nothing: the meaning of
 * OBX-11 (table 0085), of OBR-25 (0123) or TXA-17 (0271) where one of them is the status of the exam,
 * and the sides of table 0163, and the NTE below an OBX as its note; set ids and the fields of MSH and of the batch count as layout.
 */
export function completeHl7v2(mapping: Mapping): Mapping {
  const used = usedNames(mapping);
  return {
    ...mapping,
    exam: { ...mapping.exam, status: withStatusWords(mapping.exam.status) },
    ...(mapping.items !== undefined && {
      items: mapping.items.map((items) => withComment(withResultStatus(items), used)),
    }),
    sides: { ...withoutWords(siteSideWords, mapping.sides), ...mapping.sides },
    layout: [...(mapping.layout ?? []), ...transportNames().filter((name) => !used.has(name))],
  };
}

/** Codes of table 0085 by which no value was given, or the one given does not hold. */
const neverStated = ['D', 'W', 'X', 'N', 'I', 'O'];

/** Meanings that a mapping cannot give to codes of HL7's own tables. */
export function hl7v2MappingIssues(mapping: Mapping): Issue[] {
  return (mapping.items ?? []).flatMap(({ status }, at) => {
    if (status?.from !== 'OBX-11') return [];
    return neverStated
      .filter((code) => Object.hasOwn(status.words, code) && status.words[code] === 'stated')
      .map((code) =>
        issue('contradiction', ['items', at, 'status', 'words', code], { reason: 'no-result' }),
      );
  });
}

function withStatusWords(status: StatusField): StatusField {
  if (status.words !== undefined) return status;
  if (status.from === 'OBR-25') return { ...status, words: reportStatusWords };
  return status.from === 'TXA-17' ? { ...status, words: documentStatusWords } : status;
}

function withResultStatus(items: ItemRecords): ItemRecords {
  const isObservation = items.kind === 'OBX' || items.value.startsWith('OBX-');
  if (items.status !== undefined || !isObservation) return items;
  return { ...items, status: { from: 'OBX-11', words: resultStatusWords } };
}

/** The default words that the mapping does not list itself, in whatever case. */
function withoutWords<Value>(
  defaults: { readonly [word: string]: Value },
  own: { readonly [word: string]: unknown } | undefined,
): { readonly [word: string]: Value } {
  const listed = new Set(Object.keys(own ?? {}).map((word) => word.trim().toUpperCase()));
  return Object.fromEntries(Object.entries(defaults).filter(([word]) => !listed.has(word)));
}

/** The comment below an OBX is the note of its statement. */
function withComment(items: ItemRecords, used: ReadonlySet<string>): ItemRecords {
  const isObservation = items.kind === 'OBX' || items.value.startsWith('OBX-');
  if (items.note !== undefined || !isObservation || used.has('NTE-3')) return items;
  return { ...items, note: 'NTE-3' };
}

function usedNames(mapping: Mapping): ReadonlySet<string> {
  return new Set([
    ...headNames(mapping.exam),
    ...(mapping.items ?? []).flatMap(itemNames),
    ...Object.keys(mapping.fields ?? {}),
    ...(mapping.layout ?? []),
    ...(mapping.text ?? []),
  ]);
}

/** Set ids, names of code systems, and the segments that carry the message. */
function transportNames(): string[] {
  const names = ['OBX-1', 'OBX-2', 'OBR-1', 'PID-1', 'PV1-1', 'NTE-1'];
  // Which code system a code is of, and in which version (CWE.3, .6 to .8), says nothing clinical.
  for (const part of [3, 6, 7, 8]) names.push(`OBX-3.${part}`, `OBX-20.${part}`);
  const segments: readonly (readonly [name: string, fields: number])[] = [
    ['MSH', 25],
    ['FHS', 14],
    ['BHS', 14],
    ['BTS', 3],
    ['FTS', 2],
  ];
  for (const [segment, fields] of segments) {
    for (let field = 1; field <= fields; field++) {
      const name = `${segment}-${field}`;
      names.push(name, `${name}.2`, `${name}.3`, `${name}.4`);
    }
  }
  return names;
}
