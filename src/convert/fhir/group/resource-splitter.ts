import { issue } from '../../issue.ts';
import { lineSplitterOf } from '../../json/lines.ts';
import { isFault, parseJson } from '../../json/parse.ts';
import type { RawUnit, Splitter } from '../../record/record.ts';
import { groupsOf } from './groups.ts';
import { type OwnSystems, type Piece, pieceOf } from './piece.ts';
import { plainHead, unitOf } from './unit.ts';

/**
 * What lines may hold in memory, in characters, each line counted with what is known of it. Which
 * resources belong together is known only when all have been read.
 */
export const MOST_HELD = 512 * 1024 * 1024;
const PER_LINE = 1000;

export interface ResourceLines {
  readonly systems: OwnSystems;
  /** Address of the server, for references that begin with it. */
  readonly base?: string | undefined;
  /** Default: {@link MOST_HELD}. */
  readonly most?: number;
}

/**
 * Lines that hold a resource each, put together to exams at the end of the input. A line that is no
 * resource is a unit of its own. Where there is more than may be held, every line is set aside alone,
 * since an exam of which a part is missing would say less than was found.
 */
export function resourceSplitter(rules: ResourceLines): Splitter {
  const { most = MOST_HELD } = rules;
  const lines = lineSplitterOf();
  let pieces: Piece[] = [];
  let held = 0;
  const take = function* (units: Iterable<RawUnit>): Generator<RawUnit> {
    for (const unit of units) {
      held += unit.raw.length + PER_LINE;
      const piece = pieceIn(unit, rules);
      if ('raw' in piece) yield piece;
      else if (held <= most) pieces.push(piece);
      else {
        for (const before of pieces) yield tooLarge(before, most);
        pieces = [];
        yield tooLarge(piece, most);
      }
    }
  };
  return {
    push: (text) => [...take(lines.push(text))],
    end: function* () {
      yield* take(lines.end());
      const groups = groupsOf(onceEach(pieces));
      if (groups === undefined) for (const piece of pieces) yield tooLarge(piece, most);
      else for (const group of groups) yield unitOf(group, plainHead);
      pieces = [];
    },
  };
}

/** The resource of a line, or the line as a unit that says why it is none. */
function pieceIn({ raw, at }: RawUnit, { systems, base }: ResourceLines): Piece | RawUnit {
  const line = 'line' in at ? at.line : 1;
  const node = parseJson(raw);
  if (isFault(node)) {
    const reason = node.fault === 'duplicate' ? 'json-name' : 'json';
    return { raw, at, issues: [issue('malformed-record', [], { reason }, { source: at })] };
  }
  const bare = pieceOf(node, { text: '', line }, systems);
  if (bare === undefined || bare.type === 'Bundle') {
    const reason = { reason: 'resource-line' } as const;
    return { raw, at, issues: [issue('malformed-record', [], reason, { source: at })] };
  }
  const fullUrl =
    base === undefined || bare.name === undefined ? undefined : `${base}/${bare.name}`;
  const address = fullUrl === undefined ? '' : `"fullUrl":${JSON.stringify(fullUrl)},`;
  const text = `{${address}"resource":${raw}}`;
  return { ...bare, text, ...(fullUrl !== undefined && { fullUrl }) };
}

/** Without lines that repeat another one to the letter: an export can hold a resource in several files. */
function onceEach(pieces: readonly Piece[]): readonly Piece[] {
  const known = new Map<string, Set<string>>();
  return pieces.filter(({ name, text }) => {
    if (name === undefined) return true;
    const texts = known.get(name) ?? new Set();
    known.set(name, texts);
    if (texts.has(text)) return false;
    texts.add(text);
    return true;
  });
}

function tooLarge(piece: Piece, maximum: number): RawUnit {
  const at = { line: piece.line };
  const found = issue('too-large', [], { reason: 'resources', maximum }, { source: at });
  return { ...unitOf([piece], plainHead), issues: [found] };
}
