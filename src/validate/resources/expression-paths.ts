import { type Node, parse } from '../profiles/rules/parse.ts';
import { report, type Scope } from '../walk/scope.ts';
import { isAbstract, isType, type Reach, typesUnder } from './element-paths.ts';

/** The page that says what FHIRPath means in FHIR. */
const page = 'https://hl7.org/fhir/R4/fhirpath.html';

/** Functions that give some of what they stand on; their arguments are criteria on it. */
const passing: ReadonlySet<string> = new Set(
  'where first last single tail skip take distinct trace intersect exclude'.split(' '),
);
/** Others whose argument is taken at what they stand on. */
const criteria: ReadonlySet<string> = new Set('exists all select repeat'.split(' '));

/**
 * Holds a FHIRPath expression of a definition to the types that it starts from. What this reader of
 * FHIRPath does not take, an engine judges by its form; without one it is told as unchecked.
 * @param from types that the expression starts from
 * @param place where the expression stands below the resource
 * @returns the types that it leads to
 */
export function checkExpression(
  expression: string,
  from: Reach,
  scope: Scope,
  place: readonly (string | number)[],
): Reach {
  const tree = treeOf(expression);
  if (tree === undefined) {
    if (scope.engine?.parses(expression) === false) {
      report(scope, 'invalid-value', { reason: 'fhirpath' }, { rule: page }, place);
    } else {
      const why = 'the expression uses FHIRPath that is not held here';
      scope.unchecked.push({ rule: page, path: [...scope.path, ...place], why });
    }
    return 'open';
  }
  const walk: Walk = { scope, astray: false };
  const found = reach(tree, { from, start: true }, walk);
  if (!walk.astray) return found;
  report(scope, 'invalid-value', { reason: 'element-path' }, { rule: page }, place);
  return 'open';
}

function treeOf(expression: string): Node | undefined {
  try {
    return parse(expression);
  } catch {
    return undefined;
  }
}

interface Walk {
  readonly scope: Scope;
  /** A step leads to no element of any type that it can start from. */
  astray: boolean;
}

interface At {
  readonly from: Reach;
  /** Nothing stands before it, so that it can be the name of the type that it starts from. */
  readonly start: boolean;
}

function reach(node: Node, at: At, walk: Walk): Reach {
  switch (node.is) {
    case 'this':
      return at.from;
    case 'name':
      return step(node.name, at, walk);
    case 'dot':
      return reach(node.right, { from: reach(node.left, at, walk), start: false }, walk);
    case 'at':
      return reach(node.left, at, walk);
    case 'type':
      reach(node.left, at, walk);
      return node.op === 'as' ? [node.type] : 'open';
    case 'call':
      return called(node.name, node.args, at, walk);
    case 'binary': {
      const left = reach(node.left, at, walk);
      const right = reach(node.right, at, walk);
      if (node.op !== '|' || left === 'open' || right === 'open') return 'open';
      return [...new Set([...left, ...right])];
    }
    default:
      return 'open';
  }
}

function step(name: string, { from, start }: At, walk: Walk): Reach {
  if (from === 'open') return 'open';
  if (start && /^[A-Z]/.test(name) && isType(name, walk.scope)) {
    if (from.includes(name)) return [name];
    // A type above the one that it starts from; or one below it, which only the data tells.
    if (isAbstract(name) || from.some(isAbstract)) return 'open';
    walk.astray = true;
    return 'open';
  }
  const found = typesUnder(from, name, walk.scope);
  if (found !== 'unknown') return found;
  walk.astray = true;
  return 'open';
}

function called(name: string, args: readonly Node[], at: At, walk: Walk): Reach {
  const [first] = args;
  if ((name === 'ofType' || name === 'as') && first !== undefined) return typeNamed(first);
  if (name === 'extension') return ['Extension'];
  if (!passing.has(name) && !criteria.has(name)) return 'open';
  const inner = { from: at.from, start: false };
  const [given] = args.map((each) => reach(each, inner, walk));
  if (name === 'select') return given ?? 'open';
  return passing.has(name) ? at.from : 'open';
}

/** `Quantity`, or `FHIR.Quantity`. */
function typeNamed(node: Node): Reach {
  if (node.is === 'name') return [node.name];
  return node.is === 'dot' && node.right.is === 'name' ? [node.right.name] : 'open';
}
