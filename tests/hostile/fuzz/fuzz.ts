import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { type Find, run } from './run.ts';

/**
 * `tsx tests/hostile/fuzz/fuzz.ts INPUTS SECONDS SEED`: each kind of find once, its input in
 * output/hostile/found. What is mended goes to the corpus, so that it is tried for good.
 */
const [inputs = '100000', seconds = '3600', seed = '1'] = process.argv.slice(2);
const folder = 'output/hostile/found';
mkdirSync(folder, { recursive: true });
const signatures = new Map<string, number>();

function keep(find: Find): void {
  const name = `${find.target} ${find.kind} ${find.signature}`;
  const count = (signatures.get(name) ?? 0) + 1;
  signatures.set(name, count);
  if (count > 1) return;
  const at = signatures.size;
  console.log(`${find.kind}  ${find.target}  ${find.signature}`);
  const written = JSON.stringify(find, (_, value: unknown) =>
    typeof value === 'bigint' || typeof value === 'symbol' || typeof value === 'function'
      ? String(value)
      : value,
  );
  writeFileSync(`${folder}/${seed}-${at}.json`, written);
}

run(
  { inputs: Number(inputs), seconds: Number(seconds), seed: Number(seed) },
  keep,
  ({ inputs: made, kept, slowest }) => {
    const line = `seed ${seed}: ${made} inputs, ${kept} kept, slowest ${Math.round(slowest)} ms, ${signatures.size} finds`;
    console.log(line);
    appendFileSync(`${folder}/log.txt`, `${line}\n`);
  },
);
