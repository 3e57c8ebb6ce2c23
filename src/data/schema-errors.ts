import type { FormWord } from '../issues/forms.ts';
import { type Issue, issue, type RecordFacts } from '../issues/issue.ts';
import { firstNearest, type nearest } from '../issues/nearest.ts';
import { pathFromPointer, pathPointer } from '../issues/path.ts';
import { formOf, kindOf, readableName, receivedText, type SchemaNode } from './schema-words.ts';

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
  /** What a definition of the schema accepts: `Decimal` is a `decimal-text`. */
  readonly forms: ReadonlyMap<string, FormWord>;
  readonly includeValues: boolean;
  /** A reading of its own for some errors; `undefined` leaves an error to the usual one. */
  readonly special?: (error: SchemaError) => Issue | undefined;
}

type FaultCode =
  | 'wrong-type'
  | 'missing-property'
  | 'unknown-property'
  | 'unknown-code'
  | 'invalid-value'
  | 'empty-value'
  | 'too-large';

type Told = {
  [Code in FaultCode]: { readonly code: Code; readonly facts: RecordFacts<Code> };
}[FaultCode];

type Fault = Told & {
  /** Below the path of the error: the name of a missing or unknown property. */
  readonly below?: string;
  /** Left out where there is no value. */
  readonly value?: unknown;
};

/** What the readers work with beside an error. */
interface Reading extends SchemaErrorOptions {
  readonly near: typeof nearest;
}

type Reader = (error: SchemaError, schema: SchemaNode, reading: Reading) => Fault;

/** One issue for each fault: of several errors at one place the most basic one is kept. */
export function schemaErrorIssues(
  errors: readonly SchemaError[],
  options: SchemaErrorOptions,
): Issue[] {
  const reading: Reading = { ...options, near: firstNearest() };
  const found = new Map<string, Issue>();
  for (const error of errors) {
    const made = options.special?.(error) ?? usualIssue(error, reading);
    if (made === undefined) continue;
    const place = pathPointer(made.path);
    const before = found.get(place);
    if (before === undefined || rank(made.code) < rank(before.code)) found.set(place, made);
  }
  return [...found.values()];
}

function usualIssue(error: SchemaError, options: Reading): Issue | undefined {
  const read = readers.get(error.keyword);
  if (read === undefined) return undefined;
  const fault = read(error, error.parentSchema ?? {}, options);
  const at = pathFromPointer(error.instancePath);
  return issue(fault.code, fault.below === undefined ? at : [...at, fault.below], fault.facts, {
    received: options.includeValues && 'value' in fault ? receivedText(fault.value) : undefined,
  });
}

const basicFirst: readonly string[] = ['wrong-type', 'missing-property', 'empty-value'];

function rank(code: string): number {
  const place = basicFirst.indexOf(code);
  return place === -1 ? basicFirst.length : place;
}

/** By keyword of JSON Schema. `if` and `oneOf` are absent: what failed inside them is told by itself. */
const readers: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  [
    'type',
    ({ data }, schema, { forms }) => ({
      code: 'wrong-type',
      facts: { reason: 'json', found: kindOf(data), form: formOf(schema, forms) },
      value: data,
    }),
  ],
  [
    'required',
    ({ params }, schema, { forms }) => {
      const name = String(params['missingProperty']);
      const node =
        schema.discriminator?.propertyName === name
          ? { enum: schema['x-tags'] ?? [] }
          : (schema.properties?.[name] ?? schema['x-missing']?.[name]);
      return {
        code: 'missing-property',
        facts: { reason: 'required', form: node && formOf(node, forms) },
        below: name,
      };
    },
  ],
  [
    'additionalProperties',
    ({ params, data }, schema, { near: nearest }) => {
      const name = String(params['additionalProperty']);
      const near = nearest(name, Object.keys(schema.properties ?? {}));
      return {
        code: 'unknown-property',
        facts:
          schema.title === undefined
            ? { reason: 'object', near }
            : { reason: 'schema', type: readableName(schema.title), near },
        below: name,
        value: Object(data)[name],
      };
    },
  ],
  ['discriminator', tagFault],
  [
    'enum',
    ({ data }, schema, { forms }) => ({
      code: 'unknown-code',
      facts: { reason: 'schema', form: formOf(schema, forms) },
      value: data,
    }),
  ],
  ['const', invalidValue],
  ['pattern', invalidValue],
  ['minimum', invalidValue],
  ['maximum', invalidValue],
  ['minLength', ({ data }) => ({ code: 'empty-value', facts: { reason: 'text' }, value: data })],
  ['minItems', () => ({ code: 'empty-value', facts: { reason: 'list' } })],
  ['minProperties', () => ({ code: 'empty-value', facts: { reason: 'object' } })],
  [
    'maxLength',
    ({ params }) => ({
      code: 'too-large',
      facts: { reason: 'text', maximum: Number(params['limit']) },
    }),
  ],
  [
    'x-faults',
    ({ params }) => ({
      code: 'too-large',
      facts: { reason: 'faults', maximum: Number(params['limit']) },
    }),
  ],
  [
    'maxItems',
    ({ params }) => ({
      code: 'too-large',
      facts: { reason: 'list', maximum: Number(params['limit']) },
    }),
  ],
]);

function invalidValue(
  { data }: SchemaError,
  schema: SchemaNode,
  { forms }: SchemaErrorOptions,
): Fault {
  return {
    code: 'invalid-value',
    facts: { reason: 'form', form: formOf(schema, forms) },
    value: data,
  };
}

/** The property that tells the members of a union apart is absent, no text, or names no member. */
function tagFault(
  { params, data }: SchemaError,
  schema: SchemaNode,
  { forms }: SchemaErrorOptions,
): Fault {
  const below = String(params['tag']);
  const value: unknown = params['tagValue'];
  const form = formOf({ enum: schema['x-tags'] ?? [] }, forms);
  if (!Object.hasOwn(Object(data), below)) {
    return { code: 'missing-property', facts: { reason: 'required', form }, below };
  }
  return typeof value === 'string'
    ? { code: 'unknown-code', facts: { reason: 'kind', form }, below, value }
    : { code: 'wrong-type', facts: { reason: 'json', found: kindOf(value), form }, below, value };
}
