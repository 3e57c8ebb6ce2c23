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

it('the form example takes the field that fits and tells what does not in the others', async () => {
  const printed = vi.spyOn(console, 'log').mockImplementation(() => {});
  await import('../../examples/form.ts');
  const lines = printed.mock.calls.map((call) => call.join(' '));
  printed.mockRestore();
  expect(lines.map((line) => line.split('  ').slice(1, 2).join('') || line)).toEqual([
    'region',
    'side',
    'attributes.lesion-border',
    '1',
  ]);
});

it('the example of a life prints what changed, and reads the same exam back', async () => {
  const printed = vi.spyOn(console, 'log').mockImplementation(() => {});
  await import('../../examples/life.ts');
  const lines = printed.mock.calls.map((call) => call.join(' ').trim());
  printed.mockRestore();
  expect(lines).toEqual(['123 gaps', 'lid-upper same', 'pfh changed -3.0', 'corrected true']);
});
