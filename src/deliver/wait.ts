export interface Pause {
  /** How often it was tried before. */
  readonly attempt: number;
  /** Milliseconds that the server asks for. */
  readonly asked: number | undefined;
}

/** Milliseconds to the next attempt: doubled each time from half a second, never less than asked for. */
export function nextWait({ attempt, asked = 0 }: Pause): number {
  return Math.max(500 * 2 ** Math.min(attempt, 20), asked);
}

/**
 * Milliseconds that `Retry-After` asks to wait, as seconds or as a date, which is compared with the
 * clock of the server where it tells that.
 * @see https://www.rfc-editor.org/rfc/rfc9110#field.retry-after
 */
export function pauseAsked(
  header: (name: string) => string | null,
  now: number,
): number | undefined {
  const asked = header('retry-after')?.trim();
  if (asked === undefined || asked === '') return undefined;
  if (/^\d{1,9}$/.test(asked)) return Number(asked) * 1000;
  const until = Date.parse(asked);
  const clock = Date.parse(header('date') ?? '');
  return Number.isNaN(until) ? undefined : Math.max(0, until - (Number.isNaN(clock) ? now : clock));
}
