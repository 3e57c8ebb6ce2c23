// A conversion in a process of its own, so that it can be killed. Argument: the options as JSON.
import { register } from 'tsx/esm/api';

register();
const { convertFiles } = await import('../../../src/convert/bulk/convert-files.ts');
const worker = new URL('./worker-from-source.mjs', import.meta.url);
process.stdout.write('ready\n');
const { summary } = await convertFiles(JSON.parse(process.argv[2]), { now: () => 0, worker });
process.stdout.write(summary === undefined ? 'failed\n' : 'done\n');
