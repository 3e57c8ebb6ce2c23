/**
 * The part of FHIRPath that rules of profiles are written in, as a tree.
 * @see https://hl7.org/fhirpath/N1/grammar.html
 */
export type Node =
  | { readonly is: 'literal'; readonly value: string | number | boolean; readonly date?: true }
  | { readonly is: 'empty' | 'this' | 'index' }
  | { readonly is: 'variable' | 'name'; readonly name: string }
  | { readonly is: 'call'; readonly name: string; readonly args: readonly Node[] }
  | { readonly is: 'dot'; readonly left: Node; readonly right: Node }
  | { readonly is: 'at'; readonly left: Node; readonly at: Node }
  | { readonly is: 'type'; readonly op: 'is' | 'as'; readonly left: Node; readonly type: string }
  | { readonly is: 'minus'; readonly of: Node }
  | { readonly is: 'binary'; readonly op: string; readonly left: Node; readonly right: Node };

interface Token {
  readonly kind: 'string' | 'number' | 'date' | 'name' | 'variable' | 'sign';
  readonly text: string;
}

const tokens =
  /\s+|\/\/[^\n]*|\/\*[\s\S]*?\*\/|(?<string>'(?:[^'\\]|\\.)*')|(?<date>@T?\d[\dT:.+\-Z]*)|(?<number>\d+(?:\.\d+)?)|(?<variable>%(?:[A-Za-z_][\w-]*|`[^`]*`|'[^']*'))|(?<name>\$?[A-Za-z_]\w*|`(?:[^`\\]|\\.)*`|"[^"]*")|(?<sign><=|>=|!=|!~|[-+*/|&=~<>.,()[\]{}])/uy;

function tokensOf(text: string): Token[] {
  const found: Token[] = [];
  tokens.lastIndex = 0;
  while (tokens.lastIndex < text.length) {
    const match = tokens.exec(text);
    if (match === null) throw new SyntaxError('no FHIRPath');
    for (const [kind, part] of Object.entries(match.groups ?? {})) {
      if (part !== undefined) found.push({ kind: kind as Token['kind'], text: part }); // names of the groups
    }
  }
  return found;
}

/** From loose to tight, as in the grammar. */
const levels: readonly (readonly string[])[] = [
  ['implies'],
  ['or', 'xor'],
  ['and'],
  ['in', 'contains'],
  ['=', '~', '!=', '!~'],
  ['<=', '<', '>', '>='],
  ['|'],
  ['is', 'as'],
  ['+', '-', '&'],
  ['*', '/', 'div', 'mod'],
];

/** Deeper than any published rule; the parser calls itself. */
const deepest = 60;

/** @throws SyntaxError for a text that is not FHIRPath, or uses what is not held here */
export function parse(text: string): Node {
  const list = tokensOf(text);
  let at = 0;
  let depth = 0;
  const peek = (): string | undefined => (list[at]?.kind === 'string' ? undefined : list[at]?.text);
  const take = (wanted?: string): Token => {
    const token = list[at];
    if (token === undefined || (wanted !== undefined && token.text !== wanted)) {
      throw new SyntaxError(`expected ${wanted ?? 'more'}`);
    }
    at++;
    return token;
  };
  const expression = (level = 0): Node => {
    if (level === 0 && ++depth > deepest) throw new SyntaxError('too deep');
    let left = level < levels.length ? expression(level + 1) : unary();
    for (;;) {
      const op = peek();
      if (op === undefined || level >= levels.length || !levels[level]?.includes(op)) break;
      take();
      left =
        op === 'is' || op === 'as'
          ? { is: 'type', op, left, type: typeName() }
          : { is: 'binary', op, left, right: expression(level + 1) };
    }
    if (level === 0) depth--;
    return left;
  };
  const unary = (): Node => {
    const sign = peek();
    if (sign === '-' || sign === '+') {
      take();
      const of = unary();
      return sign === '-' ? { is: 'minus', of } : of;
    }
    let left = term();
    for (;;) {
      if (peek() === '.') {
        take();
        left = { is: 'dot', left, right: invocation() };
      } else if (peek() === '[') {
        take();
        left = { is: 'at', left, at: expression() };
        take(']');
      } else return left;
    }
  };
  const term = (): Node => {
    const token = list[at];
    if (token === undefined) throw new SyntaxError('expected more');
    if (token.kind === 'string') return { is: 'literal', value: unquoted(take().text) };
    if (token.kind === 'number') return number();
    if (token.kind === 'date') return { is: 'literal', value: take().text.slice(1), date: true };
    if (token.kind === 'variable') return { is: 'variable', name: bare(take().text.slice(1)) };
    if (token.text === '(') {
      take();
      const inner = expression();
      take(')');
      return inner;
    }
    if (token.text === '{') {
      take();
      take('}');
      return { is: 'empty' };
    }
    return invocation();
  };
  const number = (): Node => {
    const value = Number(take().text);
    // Quantities are not held here.
    if (list[at]?.kind === 'string') throw new SyntaxError('a quantity');
    return { is: 'literal', value };
  };
  const invocation = (): Node => {
    const token = take();
    if (token.kind !== 'name') throw new SyntaxError('expected a name');
    if (token.text === 'true' || token.text === 'false') {
      return { is: 'literal', value: token.text === 'true' };
    }
    if (token.text === '$this') return { is: 'this' };
    if (token.text === '$index') return { is: 'index' };
    if (token.text.startsWith('$')) throw new SyntaxError(token.text);
    const name = bare(token.text);
    return peek() === '(' ? { is: 'call', name, args: callArguments() } : { is: 'name', name };
  };
  const callArguments = (): Node[] => {
    take('(');
    const args: Node[] = [];
    while (peek() !== ')') {
      args.push(expression());
      if (peek() === ',') take();
    }
    take(')');
    return args;
  };
  const typeName = (): string => {
    let name = bare(take().text);
    while (peek() === '.') {
      take();
      name = bare(take().text);
    }
    return name;
  };
  const whole = expression();
  if (at < list.length) throw new SyntaxError('more than an expression');
  return whole;
}

function bare(text: string): string {
  return /^[`"']/.test(text) ? text.slice(1, -1) : text;
}

const escapes: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', f: '\f' };

function unquoted(text: string): string {
  return text
    .slice(1, -1)
    .replace(/\\(?:u([0-9a-fA-F]{4})|(.))/gs, (_, code: string | undefined, sign: string) =>
      code === undefined ? (escapes[sign] ?? sign) : String.fromCharCode(Number.parseInt(code, 16)),
    );
}
