import { decimalText } from '../../src/fhir/decimal.ts';
import { fromJson } from '../../src/fhir/from-json.ts';
import { orThrow } from '../../src/issue.ts';

/**
 * A JSON text with its properties in order of their names and each number as it was written, so that
 * two texts that say the same become the same text.
 * @param times write a moment in one form, for a reader that keeps moments and not their spelling
 */
export function canonical(text: string, { times = false } = {}): string {
  return written(orThrow('read JSON', fromJson(text)), times);
}

function written(value: unknown, times: boolean): string {
  if (Array.isArray(value)) return `[${value.map((item) => written(item, times)).join(',')}]`;
  if (typeof value === 'string') return JSON.stringify(times ? moment(value) : value);
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const parts = Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, inner]) => {
      const number = typeof inner === 'number' ? decimalText(value, name) : undefined;
      return `${JSON.stringify(name)}:${number ?? written(inner, times)}`;
    });
  return `{${parts.join(',')}}`;
}

/** `Z` as `+00:00`, and no zeros at the end of a fraction: the same moment, in the same zone. */
function moment(text: string): string {
  const match = /^(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d)(\.\d+)?(Z|[+-]\d\d:\d\d)$/.exec(text);
  if (match === null) return text;
  const [, second = '', fraction = '', zone = ''] = match;
  return second + fraction.replace(/\.?0+$/, '') + zone.replace('Z', '+00:00');
}
