import { parentPort } from 'node:worker_threads';
import { accept } from './accept.ts';

type Message = { readonly text: string } | { readonly text?: never; readonly stored?: string };

/**
 * Works exams off in a thread of its own, so that a large one holds up no other request. It gets
 * `{ text }`, asks `{ exam }` for what is stored of it, gets `{ stored }` and answers `{ judged }`.
 */
let told: (stored: string | undefined) => void = () => {};

async function work(text: string): Promise<void> {
  const judged = await accept(text, (exam) => {
    parentPort?.postMessage({ exam });
    return new Promise((resolve) => {
      told = resolve;
    });
  });
  parentPort?.postMessage({ judged });
}

parentPort?.on('message', (message: Message) => {
  if (message.text === undefined) told(message.stored);
  else void work(message.text);
});
