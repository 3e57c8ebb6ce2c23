import { shapes } from './shapes/index.ts';

/**
 * Started with an entry, a shape and sizes in bytes; one line of JSON a size, as soon as it is known.
 * Processor time and not the clock, so that other work on the machine counts little; of the calls that
 * fit in a while the quickest counts. Stops before a size that would take longer than is left.
 */
const [entry, name, sizes = '', seconds = '60'] = process.argv.slice(2);
const shape = shapes.find((one) => one.entry === entry && one.name === name);
if (shape === undefined) throw new Error('cannot measure: no such shape');

function timed(call: () => unknown): { readonly took: number; readonly thrown?: string } {
  const before = process.cpuUsage();
  let thrown: string | undefined;
  try {
    call();
  } catch (found) {
    thrown = found instanceof Error ? found.name : 'no error';
  }
  const { user, system } = process.cpuUsage(before);
  return { took: (user + system) / 1e6, ...(thrown !== undefined && { thrown }) };
}

// Once small, so that loading and compiling are not measured.
for (let round = 0; round < 3; round++) timed(shape.prepare(2000));
for (const size of sizes.split(',').map(Number)) {
  const call = shape.prepare(size);
  globalThis.gc?.();
  const before = process.memoryUsage().rss;
  let best = timed(call);
  for (let round = 0, spent = best.took; round < 4 && spent < 0.4; round++) {
    const next = timed(call);
    spent += next.took;
    if (next.took < best.took) best = next;
  }
  // The highest so far, of which the input itself is a part.
  const memory = process.resourceUsage().maxRSS * 1024 - before;
  console.log(
    JSON.stringify({
      size,
      seconds: best.took,
      memory,
      ...(best.thrown && { thrown: best.thrown }),
    }),
  );
  if (best.took > Number(seconds)) break;
}
