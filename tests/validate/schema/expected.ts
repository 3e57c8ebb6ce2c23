import type { Issue } from '../../../src/issues/issue.ts';
import type { Told } from '../../issues/without-facts.ts';

/** Made by hand and not by `issue()`, so that the whole shape is held. */
export function error(
  code: Issue['code'],
  path: Issue['path'],
  message: string,
  more: object = {},
): Told {
  return { code, severity: 'error', message, path, ...more };
}

export const status = {
  expected:
    'registered, preliminary, final, amended, corrected, cancelled, entered-in-error or unknown',
};
export const dateTime = {
  expected:
    'a date such as 2024, 2024-03 or 2024-03-01, or a time with zone such as 2024-03-01T09:30:00+01:00',
};

/** Sound narrative. */
export const text = {
  status: 'generated',
  div: '<div xmlns="http://www.w3.org/1999/xhtml">for people to read</div>',
};
