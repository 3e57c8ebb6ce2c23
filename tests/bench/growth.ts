import { built } from './built.ts';
import { bundleOf } from './bundles.ts';
import { medians } from './timing.ts';

const { validateBundle } =
  await built<typeof import('../../src/validate/versions/r4.ts')>('validate/versions/r4.js');

/**
 * Time of a validation over the number of entries, and the slope on logarithmic scales: 1 is linear.
 * JSON.stringify of the same bundles shows how much of it is the memory and not the validation.
 */
export function growth(sizes: readonly number[]): void {
  const points: Record<'validate' | 'stringify', Point[]> = { validate: [], stringify: [] };
  console.log('\nGrowth of validateBundle (R4)');
  for (const size of sizes) {
    const bundle = bundleOf(size);
    const entries = bundle.entry?.length ?? 0;
    const rounds = Math.max(3, Math.round(3000 / size));
    const { valid } = validateBundle(bundle);
    const times = medians(
      [
        ['validate', () => validateBundle(bundle)],
        ['stringify', () => JSON.stringify(bundle)],
      ],
      rounds,
    );
    const milliseconds = times.get('validate') ?? Number.NaN;
    const stringify = times.get('stringify') ?? Number.NaN;
    points.validate.push({ entries, milliseconds });
    points.stringify.push({ entries, milliseconds: stringify });
    const each = ((1000 * milliseconds) / entries).toFixed(1);
    const ratio = (milliseconds / stringify).toFixed(2);
    console.log(
      `${String(entries).padStart(7)} entries ${milliseconds.toFixed(2).padStart(10)} ms  ${each.padStart(6)} microseconds an entry  ${ratio} x stringify  ${valid ? 'valid' : 'INVALID'}`,
    );
  }
  console.log(
    `slope ${slope(points.validate).toFixed(3)}, of JSON.stringify ${slope(points.stringify).toFixed(3)} (least squares of the logarithms)`,
  );
}

interface Point {
  readonly entries: number;
  readonly milliseconds: number;
}

function slope(points: readonly Point[]): number {
  const xs = points.map(({ entries }) => Math.log(entries));
  const ys = points.map(({ milliseconds }) => Math.log(milliseconds));
  const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
  const [mx, my] = [mean(xs), mean(ys)];
  const over = xs.reduce((sum, x, at) => sum + (x - mx) * ((ys[at] ?? 0) - my), 0);
  return over / xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
}
