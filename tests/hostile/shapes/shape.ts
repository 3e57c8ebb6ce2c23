/** One public function under one hostile shape of input. */
export interface Shape {
  readonly entry: string;
  readonly name: string;
  /** Makes an input of about so many bytes, and gives the call that is measured. */
  readonly prepare: (bytes: number) => () => unknown;
}

/** Items until their JSON is as long as asked; the first one is taken as the measure. */
export function many<Item>(bytes: number, make: (at: number) => Item): Item[] {
  const each = JSON.stringify(make(0)).length + 1;
  return Array.from({ length: Math.max(1, Math.floor(bytes / each)) }, (_, at) => make(at));
}

/** A text of parts until it is as long as asked. */
export function text(bytes: number, make: (at: number) => string): string {
  return many(bytes, make).join('');
}

/** A list in a list in a list, one level for each two bytes. */
export function nested(bytes: number, wrap: (inner: unknown) => unknown = (inner) => [inner]) {
  const each = JSON.stringify(wrap(0)).length - 1;
  let value: unknown = 'inside';
  for (let level = 0; level < bytes / each; level++) value = wrap(value);
  return value;
}

/** Long texts that make a careless expression or comparison go back. */
export const characters: readonly (readonly [string, string])[] = [
  ['one letter', 'a'],
  ['spaces', ' a'],
  ['quotes and backslashes', '"\\'],
  ['ampersands', '&'],
  ['control characters', '\u0001'],
  ['halves of pairs', '\uD800'],
  ['digits', '9'],
  ['line ends', '\r\n'],
];
