import { type Scan, type ScanOptions, scanExport } from '../../scan/scan.ts';
import { sampleOfFile } from './sample-of-file.ts';

/**
 * Looks at the beginning of a file before there is a mapping, as `scanExport` does.
 *
 * @param path The file; `.gz` and `.zip` are opened.
 * @param options How the file is read, where its beginning does not show it, and whether values are listed.
 * @returns What was found. A file that cannot be read is an issue.
 * @example
 * const { fields } = await scanFile('old.csv');
 */
export async function scanFile(path: string, options: ScanOptions = {}): Promise<Scan> {
  const { text, issues } = await sampleOfFile(path, options.source);
  const scan = scanExport(text, options);
  return { ...scan, issues: [...issues, ...scan.issues] };
}
