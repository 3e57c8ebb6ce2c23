/// <reference types="node" />
import type { CliIo } from './io.ts';

/** The surroundings of the running process. */
export function nodeIo(): CliIo {
  // Without a listener a closed pipe would end the process with a stack trace; write() rejects too.
  process.stdout.on('error', () => {});
  process.stderr.on('error', () => {});
  return {
    stdin: process.stdin,
    interactive: process.stdin.isTTY === true,
    out: (text) => write(process.stdout, text),
    // Nothing can be told where standard error itself is closed.
    err: (text) => write(process.stderr, text).catch(() => {}),
    errIsTerminal: process.stderr.isTTY === true,
    now: () => new Date(),
    cwd: process.cwd(),
  };
}

function write(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => {
      if (error) reject(error);
      else resolve();
    });
  });
}
