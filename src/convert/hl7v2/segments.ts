import type { Issue } from '../../issues/issue.ts';
import { type ConversionCode, type ConversionFacts, issue } from '../issue.ts';
import { type Delimiters, delimitersOf } from './delimiters.ts';
import { withoutFrame } from './split.ts';

/** One segment. `fields[n]` is field n as it stands, still escaped; `fields[0]` is the name. */
export interface Segment {
  readonly name: string;
  /** Place in its unit, from 1. */
  readonly index: number;
  readonly fields: readonly string[];
  /** The whole segment, where `fields` does not hold all of it. */
  readonly overlong?: string;
}

export interface Message {
  readonly delimiters: Delimiters;
  /** In input order, the envelope around the message included. */
  readonly segments: readonly Segment[];
  readonly header: Segment;
  readonly headerLine: string;
}

export interface ReadMessage {
  readonly message?: Message;
  readonly issues: readonly Issue[];
}

/** Most segments of one message: an exam of every region and side has some hundreds. */
const MOST_SEGMENTS = 100_000;
/** Most fields of one segment; the longest published ones have about fifty. */
const MOST_FIELDS = 1000;

/** Cuts the text of one message into segments and fields. Knows no meaning of any field. */
export function readSegments(raw: string): ReadMessage {
  const lines = raw.split(/\r\n|\r|\n/, MOST_SEGMENTS + 1).map(withoutFrame);
  if (lines.length > MOST_SEGMENTS) {
    return refused('too-large', { reason: 'segments', maximum: MOST_SEGMENTS });
  }
  const head = lines.find((line) => line.startsWith('MSH'));
  if (head === undefined) {
    return refused('stray-text', { reason: 'message' });
  }
  const delimiters = delimitersOf(head);
  if (delimiters === undefined) {
    return refused('wrong-delimiters', { reason: 'msh' });
  }
  const issues: Issue[] = [];
  const segments = joined(lines, delimiters.field, issues).map((text, at) =>
    readSegment(text, delimiters.field, at + 1, issues),
  );
  const header = segments.find((segment) => segment.name === 'MSH');
  return { ...(header && { message: { delimiters, segments, header, headerLine: head } }), issues };
}

function refused<Code extends ConversionCode>(
  code: Code,
  facts: ConversionFacts<Code>,
): ReadMessage {
  return { issues: [issue(code, [], facts)] };
}

/** A line that does not begin like a segment is the rest of a field that a line break cut. */
function joined(lines: readonly string[], separator: string, issues: Issue[]): string[] {
  const rows: string[] = [];
  for (const line of lines) {
    const above = rows.at(-1);
    if (startsSegment(line, separator)) rows.push(line);
    else if (line.trim() !== '' && above !== undefined) {
      rows[rows.length - 1] = `${above}\n${line}`;
      issues.push(
        issue(
          'broken-line',
          [],
          { reason: 'joined' },
          {
            severity: 'warning',
            source: { segment: above.slice(0, 3), segmentIndex: rows.length },
          },
        ),
      );
    } else if (line.trim() !== '') rows.push(line);
  }
  return rows;
}

function startsSegment(line: string, separator: string): boolean {
  return (
    /^[A-Za-z][A-Za-z0-9]{2}$/.test(line.slice(0, 3)) && ['', separator].includes(line.charAt(3))
  );
}

function readSegment(text: string, separator: string, index: number, issues: Issue[]): Segment {
  const name = text.slice(0, 3);
  const pieces = text.split(separator, MOST_FIELDS + 1);
  // MSH-1 is the separator itself, so the first piece after the name is MSH-2.
  const fields = ['MSH', 'FHS', 'BHS'].includes(name)
    ? [name, separator, ...pieces.slice(1)]
    : pieces;
  if (pieces.length <= MOST_FIELDS) return { name, index, fields };
  issues.push(
    issue(
      'too-large',
      [],
      { reason: 'fields', maximum: MOST_FIELDS },
      {
        severity: 'warning',
        source: { segment: name, segmentIndex: index },
      },
    ),
  );
  return { name, index, fields, overlong: text };
}
