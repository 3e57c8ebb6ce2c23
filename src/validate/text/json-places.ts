import { type Path, pathPointer } from '../../issues/path.ts';

/** A step of the paths that are looked for. */
interface Wanted {
  readonly below: Map<string | number, Wanted>;
  at: number;
}

interface Cursor {
  readonly text: string;
  at: number;
}

/**
 * Where in a JSON text the values of some paths begin, or the nearest ones around them. The text must
 * have been read before without a fault. One pass, whatever the number of paths.
 */
export function placesInJson(text: string, paths: readonly Path[]): (path: Path) => number {
  const root: Wanted = { below: new Map(), at: 0 };
  for (const path of paths) {
    let node = root;
    for (const step of path) {
      let next = node.below.get(step);
      if (next === undefined) {
        next = { below: new Map(), at: -1 };
        node.below.set(step, next);
      }
      node = next;
    }
  }
  const cursor = { text, at: 0 };
  visit(cursor, root);
  const known = new Map(paths.map((path) => [pathPointer(path), nearest(root, path)]));
  return (path) => known.get(pathPointer(path)) ?? root.at;
}

function nearest(root: Wanted, path: Path): number {
  let { at } = root;
  let node: Wanted | undefined = root;
  for (const step of path) {
    node = node.below.get(step);
    if (node === undefined || node.at === -1) break;
    at = node.at;
  }
  return at;
}

/** Reads one value, noting the places of what is wanted in it. */
function visit(cursor: Cursor, wanted: Wanted): void {
  skipSpace(cursor);
  wanted.at = cursor.at;
  const opening = cursor.text[cursor.at];
  if (wanted.below.size === 0 || (opening !== '{' && opening !== '[')) {
    skipValue(cursor);
    return;
  }
  cursor.at += 1;
  for (let index = 0; ; index++) {
    skipSpace(cursor);
    const mark = cursor.text[cursor.at];
    if (mark === undefined) return;
    if (mark === '}' || mark === ']') {
      cursor.at += 1;
      return;
    }
    if (mark === ',') {
      cursor.at += 1;
      skipSpace(cursor);
    }
    const step = opening === '{' ? readName(cursor) : index;
    const next = wanted.below.get(step);
    if (next === undefined) skipValue(cursor);
    else visit(cursor, next);
  }
}

function readName(cursor: Cursor): string {
  const start = cursor.at;
  skipString(cursor);
  // The text was read before, so that this is a string.
  const name = JSON.parse(cursor.text.slice(start, cursor.at)) as string;
  skipSpace(cursor);
  cursor.at += 1;
  return name;
}

const scalar = /[^,\]}\s]*/y;
const mark = /["[\]{}]/g;

/** Past a value; its strings are passed over whole, so that brackets in them count nothing. */
function skipValue(cursor: Cursor): void {
  const { text } = cursor;
  skipSpace(cursor);
  const first = text[cursor.at];
  if (first === '"') {
    skipString(cursor);
    return;
  }
  if (first !== '{' && first !== '[') {
    scalar.lastIndex = cursor.at;
    cursor.at += scalar.exec(text)?.[0].length ?? 0;
    return;
  }
  let depth = 0;
  do {
    mark.lastIndex = cursor.at;
    const found = mark.exec(text);
    cursor.at = found?.index ?? text.length;
    if (found?.[0] === '"') {
      skipString(cursor);
    } else {
      cursor.at += 1;
      depth += /[[{]/.test(found?.[0] ?? '') ? 1 : -1;
    }
  } while (depth > 0);
}

function skipString(cursor: Cursor): void {
  const { text } = cursor;
  let end = text.indexOf('"', cursor.at + 1);
  while (end !== -1 && backslashesBefore(text, end) % 2 === 1) end = text.indexOf('"', end + 1);
  cursor.at = end === -1 ? text.length : end + 1;
}

function backslashesBefore(text: string, at: number): number {
  let count = 0;
  while (text.charCodeAt(at - 1 - count) === backslash) count += 1;
  return count;
}

const backslash = 0x5c;

function skipSpace(cursor: Cursor): void {
  const { text } = cursor;
  while (/[ \t\r\n]/.test(text[cursor.at] ?? '')) cursor.at += 1;
}
