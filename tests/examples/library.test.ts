import { expect, it, vi } from 'vitest';

it('the library example prints a valid bundle', async () => {
  const printed = vi.spyOn(console, 'log').mockImplementation(() => {});
  await import('../../examples/library.ts');
  const [valid, , json] = printed.mock.calls[0] ?? [];
  printed.mockRestore();
  expect(valid).toBe(true);
  const bundle = JSON.parse(String(json));
  expect(bundle).toMatchObject({ resourceType: 'Bundle', type: 'collection' });
  expect(json).toContain('Naevus (mole)');
});
