/**
 * How soon a prompt asks for somebody to act, most urgent first: at once, on the same day, within two
 * days, by an urgent referral, in the ordinary way. Words of our own; guidelines have their own.
 */
export const urgencies = ['now', 'same-day', 'days', 'weeks', 'routine'] as const;

export type Urgency = (typeof urgencies)[number];
