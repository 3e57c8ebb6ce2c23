import { decimalText } from '../../src/fhir/json/decimal.ts';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { orThrow } from '../../src/issues/issue.ts';

/** What a reader is known to write otherwise although it means the same. */
export interface Leave {
  /** A moment in one spelling, for a reader that keeps moments and not how they were written. */
  readonly times?: boolean;
  /** No space beside the tags of a narrative, for a reader that trims the text between them. */
  readonly spaces?: boolean;
}

/**
 * A JSON text with its properties in order of their names and each number as it was written, so that
 * two texts that say the same become the same text.
 */
export function canonical(text: string, leave: Leave = {}): string {
  return written(orThrow('read JSON', fromJson(text)), leave);
}

function written(value: unknown, leave: Leave): string {
  if (Array.isArray(value)) return `[${value.map((item) => written(item, leave)).join(',')}]`;
  if (typeof value === 'string') return JSON.stringify(plain(value, leave));
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const parts = Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, inner]) => {
      const number = typeof inner === 'number' ? decimalText(value, name) : undefined;
      return `${JSON.stringify(name)}:${number ?? written(inner, leave)}`;
    });
  return `{${parts.join(',')}}`;
}

function plain(text: string, { times = false, spaces = false }: Leave): string {
  if (spaces && text.startsWith('<div ')) return text.replace(/\s*(<[^>]*>)\s*/g, '$1');
  return times ? moment(text) : text;
}

/** `Z` and `-00:00` as `+00:00`, and no zeros at the end of a fraction: the same moment and zone. */
function moment(text: string): string {
  const match = /^(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d)(\.\d+)?(Z|[+-]\d\d:\d\d)$/.exec(text);
  if (match === null) return text;
  const [, second = '', fraction = '', zone = ''] = match;
  return second + fraction.replace(/\.?0+$/, '') + zone.replace(/^(Z|-00:00)$/, '+00:00');
}
