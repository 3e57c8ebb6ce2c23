// Stands before the command line: a record that holds a word ends it, each time.
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';

const [real, deadly, ...call] = process.argv.slice(2);
const stdio = ['pipe', 'pipe', 'inherit'];
const child = spawn(process.execPath, [real, ...call], { stdio });
let open = 0;
let isDead = false;
const die = () => {
  child.kill('SIGKILL');
  process.kill(process.pid, 'SIGKILL');
};
createInterface({ input: child.stdout })
  .on('line', (line) => {
    process.stdout.write(`${line}\n`);
    open -= 1;
    if (isDead && open === 0) die();
  })
  .on('close', () => process.exit());
for await (const line of createInterface({ input: process.stdin })) {
  if (line.includes(deadly)) {
    // What came before it is answered first, as a worker does that takes one after the other.
    isDead = true;
    if (open === 0) die();
    break;
  }
  open += 1;
  child.stdin.write(`${line}\n`);
}
if (!isDead) child.stdin.end();
