import { once } from 'node:events';
import { createServer } from 'node:http';
import { afterEach, expect, it, vi } from 'vitest';
import { readAgain } from '../reference/read-again.ts';

// The program that reads back from real servers must not fail where one closes an idle connection.

const servers: ReturnType<typeof createServer>[] = [];
afterEach(() => {
  vi.restoreAllMocks();
  for (const server of servers.splice(0)) server.close();
});

/** A server that ends so many connections without an answer, and then answers with a status. */
async function closing(times: number, status = 200): Promise<{ url: string; asked: () => number }> {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  let asked = 0;
  const server = createServer((request, answer) => {
    asked += 1;
    if (asked <= times) request.socket.destroy();
    else answer.writeHead(status).end('held');
  }).listen(0, '127.0.0.1');
  servers.push(server);
  await once(server, 'listening');
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('there is no port');
  return { url: `http://127.0.0.1:${address.port}`, asked: () => asked };
}

it.each([0, 1, 2])('a read is asked again after %i ended connections', async (times) => {
  const { url, asked } = await closing(times);
  expect(await readAgain(url)).toBe('held');
  expect(asked()).toBe(times + 1);
});

it('fails where no connection holds', async () => {
  const { url, asked } = await closing(9);
  await expect(readAgain(url)).rejects.toThrow('fetch failed');
  expect(asked()).toBe(3);
});

it('takes a refusal as the answer', async () => {
  const { url, asked } = await closing(0, 422);
  await expect(readAgain(url)).rejects.toThrow('the server answered 422');
  expect(asked()).toBe(1);
});
