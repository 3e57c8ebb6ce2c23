/** Digits of the gaps in tables/free-set-ids.ts: the first 32 end a number, the others go on. */
export const GAP_DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+-';
