import { decodeBytes } from '../../convert/bulk/input/decode-unit.ts';
import type { Line } from '../../convert/bulk/input/line-splitter.ts';
import { issue as conversionIssue } from '../../convert/issue.ts';
import { isPlainObject } from '../../data/plain-data.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { toJson } from '../../fhir/json/to-json.ts';
import { hasErrors, type Issue, issue } from '../../issues/issue.ts';

/** A record as a line gives it. */
export interface LineRecord {
  /** The caller's name for it, as it came; none where it has none. */
  readonly head: { readonly id?: unknown };
  /** The document as text. */
  readonly text: string;
  /** Why the line gives no document; `text` is the line then. */
  readonly issues: readonly Issue[];
}

/** What an earlier worker kept back: it is handed on as it is. */
export interface KeptBackBefore {
  readonly handedOn: string;
}

/**
 * The record of a line: a document itself, `{"id": ..., "raw": "its text"}`, or an answer of an
 * earlier worker, `{"id": ..., "result": document}`.
 */
export function recordOf({ text: bytes, cut }: Line): LineRecord | KeptBackBefore {
  const { text, problem } = decodeBytes(bytes, 'utf-8');
  const refused = (found: Issue): LineRecord => ({ head: {}, text, issues: [found] });
  if (cut) return refused(conversionIssue('too-large', [], { reason: 'line' }));
  if (problem !== undefined)
    return refused(issue('undeclared-encoding', [], { reason: 'not-utf-8' }));
  const line = parsed(text);
  const isDocument =
    !isPlainObject(line) || 'resourceType' in line || 'format' in line || !namesOne(line);
  if (isDocument) return { head: {}, text, issues: [] };
  if ('quarantine' in line) return { handedOn: text };
  const head = 'id' in line ? { id: line['id'] } : {};
  const raw = line['raw'];
  if ('result' in line) return { head, ...resultIn(text) };
  if (typeof raw === 'string') return { head, text: raw, issues: [] };
  return { head, text, issues: [issue('wrong-type', ['raw'], { reason: 'not-text' })] };
}

/** The value of a line of JSON; what is wrong with one that is none, its document is told. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function namesOne(line: Readonly<Record<string, unknown>>): boolean {
  return ['raw', 'result', 'quarantine'].some((name) => Object.hasOwn(line, name));
}

/** Read anew, since numbers have to keep their decimals. */
function resultIn(text: string): Omit<LineRecord, 'head'> {
  const { value, issues } = fromJson(text);
  if (hasErrors(issues) || !isPlainObject(value)) return { text, issues };
  return { text: toJson(value['result']), issues: [] };
}
