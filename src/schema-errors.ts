import { type Issue, type IssueCode, issue } from './issue.ts';
import { nearest } from './nearest.ts';
import { pathFromPointer, pathPointer } from './path.ts';
import {
  expectedText,
  kindOf,
  readableName,
  receivedText,
  type SchemaNode,
} from './schema-words.ts';

/** An error of a compiled validator (ajv with `verbose`); nothing else of the library reads one. */
export interface SchemaError {
  readonly instancePath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly parentSchema?: Readonly<Record<string, unknown>>;
  readonly data?: unknown;
}

/** A compiled validator: the errors of a call stand on the function until its next call. */
export interface SchemaValidator {
  (data: unknown): boolean;
  errors?: readonly SchemaError[] | null;
}

export interface SchemaErrorOptions {
  /** What a definition of the schema accepts, in words: `Decimal` is "a decimal such as 4.0". */
  readonly words: ReadonlyMap<string, string>;
  readonly includeValues: boolean;
  /** A reading of its own for some errors; `undefined` leaves an error to the usual one. */
  readonly special?: (error: SchemaError) => Issue | undefined;
}

interface Fault {
  readonly code: IssueCode;
  readonly message: string;
  /** Below the path of the error: the name of a missing or unknown property. */
  readonly below?: string;
  readonly expected?: string | undefined;
  /** Left out where there is no value. */
  readonly value?: unknown;
}

type Reader = (error: SchemaError, schema: SchemaNode, options: SchemaErrorOptions) => Fault;

/** One issue for each fault: of several errors at one place the most basic one is kept. */
export function schemaErrorIssues(
  errors: readonly SchemaError[],
  options: SchemaErrorOptions,
): Issue[] {
  const found = new Map<string, Issue>();
  for (const error of errors) {
    const made = options.special?.(error) ?? usualIssue(error, options);
    if (made === undefined) continue;
    const place = pathPointer(made.path);
    const before = found.get(place);
    if (before === undefined || rank(made.code) < rank(before.code)) found.set(place, made);
  }
  return [...found.values()];
}

function usualIssue(error: SchemaError, options: SchemaErrorOptions): Issue | undefined {
  const read = readers.get(error.keyword);
  if (read === undefined) return undefined;
  const fault = read(error, error.parentSchema ?? {}, options);
  const at = pathFromPointer(error.instancePath);
  return issue(fault.code, fault.below === undefined ? at : [...at, fault.below], fault.message, {
    expected: fault.expected,
    received: options.includeValues && 'value' in fault ? receivedText(fault.value) : undefined,
  });
}

const basicFirst: readonly IssueCode[] = ['wrong-type', 'missing-property', 'empty-value'];

function rank(code: IssueCode): number {
  const place = basicFirst.indexOf(code);
  return place === -1 ? basicFirst.length : place;
}

/** By keyword of JSON Schema. `if` and `oneOf` are absent: what failed inside them is told by itself. */
const readers: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  [
    'type',
    ({ data }, schema, { words }) => ({
      code: 'wrong-type',
      message: `value is ${kindOf(data)}`,
      expected: expectedText(schema, words),
      value: data,
    }),
  ],
  [
    'required',
    ({ params }, schema, { words }) => {
      const name = String(params['missingProperty']);
      const node =
        schema.discriminator?.propertyName === name
          ? { enum: schema['x-tags'] ?? [] }
          : (schema.properties?.[name] ?? schema['x-missing']?.[name]);
      return {
        code: 'missing-property',
        message: 'required property is missing',
        below: name,
        expected: node && expectedText(node, words),
      };
    },
  ],
  [
    'additionalProperties',
    ({ params, data }, schema) => {
      const name = String(params['additionalProperty']);
      const near = nearest(name, Object.keys(schema.properties ?? {}));
      return {
        code: 'unknown-property',
        message: `not a property of ${readableName(schema.title ?? 'this object')}`,
        below: name,
        expected: near,
        value: Object(data)[name],
      };
    },
  ],
  ['discriminator', tagFault],
  [
    'enum',
    ({ data }, schema, { words }) => ({
      code: 'unknown-code',
      message: 'not one of the codes that can stand here',
      expected: expectedText(schema, words),
      value: data,
    }),
  ],
  ['const', invalidValue],
  ['pattern', invalidValue],
  ['minimum', invalidValue],
  ['maximum', invalidValue],
  ['minLength', ({ data }) => ({ code: 'empty-value', message: 'text is empty', value: data })],
  ['minItems', () => ({ code: 'empty-value', message: 'list is empty' })],
  ['minProperties', () => ({ code: 'empty-value', message: 'object has no properties' })],
  [
    'maxLength',
    ({ params }) => ({
      code: 'too-large',
      message: 'text is too long',
      expected: `at most ${params['limit']} characters`,
    }),
  ],
  [
    'maxItems',
    ({ params }) => ({
      code: 'too-large',
      message: 'list is too long',
      expected: `at most ${params['limit']} entries`,
    }),
  ],
]);

function invalidValue(
  { data }: SchemaError,
  schema: SchemaNode,
  { words }: SchemaErrorOptions,
): Fault {
  return {
    code: 'invalid-value',
    message: 'not of the form that must stand here',
    expected: expectedText(schema, words),
    value: data,
  };
}

/** The property that tells the members of a union apart is absent, no text, or names no member. */
function tagFault(
  { params, data }: SchemaError,
  schema: SchemaNode,
  { words }: SchemaErrorOptions,
): Fault {
  const below = String(params['tag']);
  const value: unknown = params['tagValue'];
  const expected = expectedText({ enum: schema['x-tags'] ?? [] }, words);
  if (!Object.hasOwn(Object(data), below)) {
    return { code: 'missing-property', message: 'required property is missing', below, expected };
  }
  return typeof value === 'string'
    ? { code: 'unknown-code', message: 'names no known kind', below, expected, value }
    : { code: 'wrong-type', message: `value is ${kindOf(value)}`, below, expected, value };
}
