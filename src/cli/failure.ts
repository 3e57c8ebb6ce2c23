/** A call that cannot be carried out as given: shown as one line, and the exit code is 2. */
export class UsageError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UsageError';
  }
}

/** The code of a fault of the system, such as ENOENT or EPIPE; undefined for other faults. */
export function systemCode(thrown: unknown): string | undefined {
  if (!(thrown instanceof Error) || !('code' in thrown)) return undefined;
  return typeof thrown.code === 'string' ? thrown.code : undefined;
}

const reasons: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'there is no such file or folder'],
  ['EACCES', 'access to it is denied'],
  ['EPERM', 'access to it is denied'],
  ['EISDIR', 'it is a folder'],
  ['ENOTDIR', 'part of its path is not a folder'],
  ['ENOSPC', 'the disk is full'],
  ['EROFS', 'the disk is read-only'],
  ['EEXIST', 'a file with this name is already there'],
  ['ENAMETOOLONG', 'its name is too long'],
  ['ELOOP', 'its links lead in a circle'],
  ['EMFILE', 'too many files are open'],
  ['EIO', 'the disk cannot be read or written'],
]);

/** What a fault of the system means, in words; undefined for faults of other kinds. */
export function systemReason(thrown: unknown): string | undefined {
  return reasons.get(systemCode(thrown) ?? '');
}

/** A usage error that says what could not be done with which file, and why. */
export function fileFailure(doing: string, path: string, thrown: unknown): UsageError {
  const reason = systemReason(thrown) ?? systemCode(thrown) ?? 'unknown fault';
  return new UsageError(`cannot ${doing} ${path}: ${reason}`);
}
