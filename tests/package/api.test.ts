import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { apiText } from './api.ts';

it('the public names and their types are those of api.txt', () => {
  // A change here is a change for users: write api.txt anew and say so in the CHANGELOG.
  expect(apiText()).toBe(readFileSync(join(import.meta.dirname, 'api.txt'), 'utf8'));
});
