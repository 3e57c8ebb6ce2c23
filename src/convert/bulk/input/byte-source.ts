import { open } from 'node:fs/promises';

/** Bytes that are read by their place. */
export interface ByteSource {
  readonly size: number;
  /** As many of the bytes as are there. */
  readonly read: (at: number, length: number) => Promise<Buffer>;
  readonly close: () => Promise<void>;
}

export async function fileSource(path: string): Promise<ByteSource> {
  const file = await open(path, 'r');
  const { size } = await file.stat();
  return {
    size,
    read: async (at, length) => {
      const buffer = Buffer.alloc(length);
      const { bytesRead } = await file.read(buffer, 0, length, at);
      return buffer.subarray(0, bytesRead);
    },
    close: () => file.close(),
  };
}

export function memorySource(bytes: Buffer): ByteSource {
  return {
    size: bytes.length,
    read: async (at, length) => bytes.subarray(at, at + length),
    close: async () => {},
  };
}
