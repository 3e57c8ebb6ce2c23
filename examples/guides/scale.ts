import { readFileSync } from 'node:fs';
import { convertLines, cutFiles, parseMappingText } from '../../src/convert/bulk/index.ts';

const { value: mapping } = parseMappingText(
  readFileSync('examples/convert/vineyard.mapping.json', 'utf8'),
);

// Once, on one machine: every exam of whatever files as a record a line.
const records: string[] = [];
for await (const one of cutFiles(['examples/convert/vineyard.csv'], mapping)) {
  if ('unit' in one) records.push(JSON.stringify({ id: records.length, ...one.unit }));
  else console.error(one.file, one.problem.code);
}

// On many machines: a part of them each, in one process that stays open.
async function answered(part: readonly string[]): Promise<readonly string[]> {
  const answers: string[] = [];
  async function* bytes(): AsyncGenerator<Uint8Array> {
    for (const record of part) yield new TextEncoder().encode(`${record}\n`);
  }
  await convertLines(bytes(), { mapping }, async (line) => {
    answers.push(line);
  });
  return answers;
}

const whole = await answered(records);
const parts = [await answered(records.slice(0, 2)), await answered(records.slice(2))];
console.log(records.length, 'records', whole.length, 'answers');
console.log(whole.filter((line) => 'quarantine' in JSON.parse(line)).length, 'kept back');
console.log('the same in two parts:', parts.flat().join('') === whole.join(''));
