import type { Correction } from './correction.ts';
import type { Definitions, SchemaNode } from './types.ts';

/** A correction that needs to know nothing but the definitions. */
export interface PrimitiveCorrection extends Correction {
  run(definitions: Definitions): number;
}

const int32 = 2 ** 31 - 1;
const dateTimePattern =
  '^([0-9]([0-9]([0-9][1-9]|[1-9]0)|[1-9]00)|[1-9]000)(-(0[1-9]|1[0-2])(-(0[1-9]|[1-2][0-9]|3[0-1])(T([01][0-9]|2[0-3]):[0-5][0-9]:([0-5][0-9]|60)(\\.[0-9]DIGITS)?(Z|(\\+|-)((0[0-9]|1[0-3]):[0-5][0-9]|14:00)))?)?)?$';
const withoutSpace: SchemaNode = { type: 'string', pattern: '^\\S+$' };

/**
 * Primitive types that the published schemas get wrong.
 * @see https://hl7.org/fhir/R4/datatypes.html#primitive and https://hl7.org/fhir/R5/datatypes.html#primitive
 */
export const primitiveCorrections: readonly PrimitiveCorrection[] = [
  replaceTypes(
    'numbers',
    'A pattern has no effect on a JSON number: 1.5 passed as an integer and -1 as a positiveInt. The R5 pattern of decimal is no valid regular expression besides. FHIR integers have 32 bits.',
    {
      decimal: { type: 'number' },
      integer: { type: 'integer', minimum: -int32 - 1, maximum: int32 },
      positiveInt: { type: 'integer', minimum: 1, maximum: int32 },
      unsignedInt: { type: 'integer', minimum: 0, maximum: int32 },
      integer64: { type: 'string', pattern: '^(0|[-+]?[1-9][0-9]*)$' },
    },
  ),
  replaceTypes('boolean', 'A pattern has no effect on a JSON boolean.', {
    boolean: { type: 'boolean' },
  }),
  replaceTypes(
    'text',
    'The R4 pattern uses \\S, which in ECMAScript refuses the no-break space that FHIR allows. Forbidden control characters are looked for before the schema is used.',
    {
      string: { type: 'string', minLength: 1 },
      markdown: { type: 'string', minLength: 1 },
    },
  ),
  replaceTypes('uri', 'Empty text passed, which FHIR never allows.', {
    uri: withoutSpace,
    url: withoutSpace,
    canonical: withoutSpace,
  }),
  replaceTypes(
    'base64',
    'Where a pattern was given it could take exponential time, elsewhere there was none. That the length fits is checked elsewhere.',
    { base64Binary: { type: 'string', pattern: '^[A-Za-z0-9+/=\\s]+$' } },
  ),
  replaceTypes('xhtml', 'It had no type at all.', { xhtml: { type: 'string', minLength: 1 } }),
  {
    id: 'date-time',
    reason:
      'The R5 pattern took a time without an offset and an offset without a time, both against the text of the type. It is now that of R4, with the nine digits of a second that R5 allows.',
    run(definitions) {
      const { dateTime } = definitions;
      const digits = dateTime?.pattern?.includes('{1,9}') ? '{1,9}' : '+';
      const pattern = dateTimePattern.replace('DIGITS', digits);
      if (dateTime === undefined || dateTime.pattern === pattern) return 0;
      definitions['dateTime'] = { type: 'string', pattern };
      return 1;
    },
  },
];

function replaceTypes(
  id: string,
  reason: string,
  types: Readonly<Record<string, SchemaNode>>,
): PrimitiveCorrection {
  return {
    id,
    reason,
    run: (definitions: Definitions) =>
      Object.entries(types).filter(([name, node]) => {
        const before = definitions[name];
        if (before === undefined || same(before, node)) return false;
        definitions[name] = { ...node };
        return true;
      }).length,
  };
}

function same(one: SchemaNode, other: SchemaNode): boolean {
  return one.type === other.type && one.pattern === other.pattern && !('minLength' in other);
}
