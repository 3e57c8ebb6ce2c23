/**
 * Conversion of large tables: memory and processor time beside csv-parse alone. Run: npm run bench:convert,
 * or after a build: npx tsx tests/bench/convert.ts [ROWS]
 * (default 1000000; a tenth and a hundredth are run first)
 */
import { measureConversion } from './conversion.ts';

const most = Number(process.argv[2] ?? 1_000_000);
for await (const { name, rows, convert, parse } of measureConversion([
  most / 100,
  most / 10,
  most,
])) {
  console.log(
    `${name}: ${String(rows).padStart(9)} rows  ${convert.seconds.toFixed(1).padStart(7)} s  ` +
      `${(convert.seconds / parse.seconds).toFixed(1).padStart(6)} x csv-parse (${parse.seconds.toFixed(1)} s)  ` +
      `${((convert.seconds / rows) * 1e6).toFixed(0).padStart(5)} us a row  peak ${convert.megabytes.toFixed(0)} MB ` +
      `(csv-parse ${parse.megabytes.toFixed(0)} MB)`,
  );
}
