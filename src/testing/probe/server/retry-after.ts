import type { HttpAnswer } from './exchange.ts';

/**
 * Milliseconds that an answer asks to wait, from `Retry-After`; undefined where it asks for nothing
 * that can be understood. A date is compared with the server's own clock.
 * @see https://www.rfc-editor.org/rfc/rfc9110 section 10.2.3
 */
export function askedWait({ header }: Pick<HttpAnswer, 'header'>): number | undefined {
  const asked = header('retry-after')?.trim();
  if (asked === undefined || asked === '') return undefined;
  if (/^\d{1,9}$/.test(asked)) return Number(asked) * 1000;
  const until = Date.parse(asked);
  const now = Date.parse(header('date') ?? '');
  return Number.isNaN(until) || Number.isNaN(now) ? undefined : Math.max(0, until - now);
}
