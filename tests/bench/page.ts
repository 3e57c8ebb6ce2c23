import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { root } from './built.ts';
import { type Conversion, measureConversion } from './conversion.ts';
import type { PeerResult } from './peers/run-peers.ts';
import { runPeers } from './peers/run-peers.ts';
import { measureSteps, type Ratio, type Steps } from './steps.ts';

const page = join(root, 'examples/guides/speed.md');
const committed = join(root, 'tests/bench/ratios.json');
const EXAM = 'examples/exams/yearly-check.json';
const ROWS = 50_000;

/** How far a ratio may lie above the committed one before a run of CI fails: its machines are busy ones. */
const ROOM = 2;

/** Measures everything in one run, and writes the page and the ratios that CI compares with. */
export async function writePage(log: (line: string) => void): Promise<void> {
  log('steps');
  const steps = await measureSteps(EXAM, 40);
  const peers = await runPeers(200, log);
  const conversions: Conversion[] = [];
  for await (const one of measureConversion([ROWS])) {
    log(one.name);
    conversions.push(one);
  }
  writeFileSync(page, pageText(steps, peers, conversions));
  const kept = Object.fromEntries(
    steps.ratios.map(({ name, ratio }) => [name, Number(ratio.toFixed(2))]),
  );
  writeFileSync(committed, `${JSON.stringify(kept, null, 2)}\n`);
}

/** Steps that take more than twice their committed ratio, one line each. */
export async function slowerSteps(rounds: number): Promise<string[]> {
  const kept = JSON.parse(readFileSync(committed, 'utf8')) as Readonly<Record<string, number>>; // as written above
  const { ratios } = await measureSteps(EXAM, rounds);
  return ratios.flatMap(({ name, low }) => {
    const before = kept[name];
    if (before === undefined)
      return [`${name}: has no committed ratio; run npm run bench -- --page`];
    // Three of four rounds were slower than this, so that a few that were disturbed count for nothing.
    return low > before * ROOM
      ? [`${name}: ${low.toFixed(2)}, committed is ${before.toFixed(2)}`]
      : [];
  });
}

function pageText(
  { entries, characters, ratios }: Steps,
  peers: readonly PeerResult[],
  conversions: readonly Conversion[],
): string {
  return `# Speed

How long each step takes, beside what it cannot be quicker than, and beside other validators on the same bundles. Written by \`npm run bench -- --page\` in one run on one machine (Node ${process.version}, ${cpus()[0]?.model.trim() ?? 'unknown processor'}): compare the ratios, not the times. Times are of the processor, all threads; ratios are of medians, with the quartiles of the rounds. Each step starts from fresh data: an export is made anew before it is written.

## From exam to bytes and back

The yearly check in R4: ${entries} entries, ${characters.toLocaleString('en')} characters.

| step | ms | ratio | quartiles | to | aim |
|---|---|---|---|---|---|
${ratios.map(stepRow).join('\n')}

The aims are ours. Where a ratio lies above its aim, the aim is not met. What profiles of the last version show:

- \`toBundle\` checks the exam, makes the resources, and then searches all that leaves for codes that may not leave: the making takes more than half, with what the collector takes for it, the other two about a fifth each. No single place takes more than a tenth: the rest is objects that are made and collected. Fewer objects would mean that resources share them, and a caller who changes one would change others.
- Lines of NDJSON are made from the same resources, copied with relative references.
- \`fromBundle\` notes of every property of every object whether it found its place in the exam, which is how nothing is lost; a sixth of its time goes to the collector.
- \`fromXml\` makes an object with its place for every element before it makes the resource; four tenths of its time go to the collector. \`toXml\` looks up every element in its definition.
- \`validateBundle\` takes three passes: plain data, structure, and everything that needs both.
- A converted row is checked as an exam, exported, validated and written: export and validation take about a third of the time each, reading the row and the checks of the exam an eighth, the writing less.

## Validators

On the same bundles, each in a process of its own, as a ratio to \`JSON.stringify\`; the small bundle has 60 entries. *Found* counts 32 bundles with a single fault each, drawn by rule from those that HL7's validator refuses, *refused* 32 sound ones. A validator that finds less does less: read both columns. Those of JavaScript read the text with \`JSON.parse\`, ours with \`fromJson\`, which keeps decimals as stated and refuses duplicate names.

| validator | found | refused | object, small | object, ${entries} | text, small | text, ${entries} |
|---|---|---|---|---|---|---|
${peers.map(peerRow).join('\n')}

HL7's own validator finds all 32, since the faults were drawn from those it refuses. \`npm run bench -- --reference\` times it beside ours, warm and from text.

## Conversion

${ROWS.toLocaleString('en')} rows of CSV by the command line, beside csv-parse alone on the same file.

| what | µs a row | × csv-parse | peak MB |
|---|---|---|---|
${conversions.map(conversionRow).join('\n')}
`;
}

function stepRow({ name, milliseconds, ratio, low, high, unit, aim }: Ratio): string {
  const quartiles = `${low.toFixed(2)} to ${high.toFixed(2)}`;
  return `| ${name} | ${milliseconds.toFixed(1)} | ${ratio.toFixed(2)} | ${quartiles} | ${unit} | ${aim ?? ''} |`;
}

function peerRow({ name, found, refused, small, large }: PeerResult): string {
  const times = [small.object, large.object, small.text, large.text].map(
    (time) => time?.toFixed(1) ?? 'takes text',
  );
  return `| ${name} | ${found} | ${refused} | ${times.join(' | ')} |`;
}

function conversionRow({ name, rows, convert, parse }: Conversion): string {
  const each = ((convert.seconds / rows) * 1e6).toFixed(0);
  const ratio = (convert.seconds / parse.seconds).toFixed(1);
  return `| ${name} | ${each} | ${ratio} | ${convert.megabytes.toFixed(0)} |`;
}
