import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';

export interface Converter {
  /** The line that answers a record; rejects when the program has ended before. */
  readonly convert: (id: string, record: object) => Promise<string>;
  /** Resolves when the program has ended, by itself or after `end`. */
  readonly ended: Promise<unknown>;
  readonly end: () => Promise<void>;
}

interface Waiting {
  readonly resolve: (line: string) => void;
  readonly reject: (error: Error) => void;
}

/**
 * One `face-neck-fhir convert --lines`, kept open: a record in, a line out. It ends with this process,
 * however that ends, since its standard input does.
 */
export function startConverter(program: string, mapping: string): Converter {
  const argv = [program, 'convert', '--lines', '--mapping', mapping];
  const child = spawn(process.execPath, argv, { stdio: ['pipe', 'pipe', 'inherit'] });
  const ended = once(child, 'close');
  // Answers come in the order of the records.
  const waiting: Waiting[] = [];
  let isOver = false;
  void ended.then(() => {
    isOver = true;
    for (const { reject } of waiting.splice(0)) reject(new Error('the converter has ended'));
  });
  // Told by `ended` as well.
  child.stdin.on('error', () => {});
  createInterface({ input: child.stdout }).on('line', (line) => waiting.shift()?.resolve(line));
  return {
    convert: (id, record) =>
      new Promise((resolve, reject) => {
        if (isOver) {
          reject(new Error('the converter has ended'));
          return;
        }
        waiting.push({ resolve, reject });
        child.stdin.write(`${JSON.stringify({ ...record, id })}\n`);
      }),
    ended,
    end: async () => {
      child.stdin.end();
      await ended;
    },
  };
}
