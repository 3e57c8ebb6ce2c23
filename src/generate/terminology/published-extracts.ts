import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { published, publishedPackages } from '../published.ts';
import { readTables } from './terminology.ts';
import { type Row, rows } from './terminology-check.ts';

/**
 * Writes terminology/published/{snomed,loinc,hl7}.json: from each published file that a row of those
 * tables names as its source, the rows we use and nothing else, so that the tests can prove every
 * code without the packages. Value sets that no package holds were read by hand and stay as they are.
 */
const folder = fileURLToPath(new URL('../../../terminology/published/', import.meta.url));

const systems = { snomed: 'http://snomed.info/sct', loinc: 'http://loinc.org' } as const;

interface Extract {
  /** `name@version file`, or the canonical URL and version of a value set read by hand. */
  readonly source: string;
  readonly licence?: string;
  readonly system: string;
  readonly version?: string;
  readonly readByHand?: true;
  readonly concepts: readonly { readonly code: string; readonly display?: string }[];
}

/** Packages with a code system in a file of its own, the first that has it wins. */
const codeSystemPackages = ['hl7.terminology.r4@7.0.1', 'hl7.fhir.r4.examples@4.0.1'];

async function readPublished(source: string): Promise<Row> {
  const [name, file] = source.split(' ');
  const at = name?.lastIndexOf('@') ?? -1;
  if (name === undefined || file === undefined || at < 1) throw new Error(`no file in "${source}"`);
  const path = join(await published(name.slice(0, at), name.slice(at + 1)), file);
  return JSON.parse(await readFile(path, 'utf8'));
}

function licenceOf(source: string): string | undefined {
  return publishedPackages.find((row) => source.startsWith(`${row.name}@`))?.licence;
}

/** Every display that a file prints for a code of a system, in the order of the file. */
function displays(
  file: unknown,
  system: string,
  found = new Map<string, string[]>(),
  of = '',
): Map<string, string[]> {
  if (Array.isArray(file)) {
    for (const item of file) displays(item, system, found, of);
  } else if (typeof file === 'object' && file !== null) {
    const node = file as Row; // a JSON object
    const own = typeof node.system === 'string' ? node.system : of;
    if (own === system && typeof node.code === 'string') {
      const list = found.get(node.code) ?? [];
      if (typeof node.display === 'string') list.push(node.display);
      found.set(node.code, list);
    }
    for (const value of Object.values(node)) displays(value, system, found, own);
  }
  return found;
}

/** The wanted codes of one file; throws where the file lacks a code or prints no such display. */
function extract(
  source: string,
  system: string,
  file: Row,
  wanted: ReadonlyMap<string, string | undefined>,
): Extract {
  const printed = displays(
    file,
    system,
    new Map(),
    file.resourceType === 'CodeSystem' ? system : '',
  );
  const concepts = [...wanted].map(([code, display]) => {
    const list = printed.get(code);
    if (list === undefined) throw new Error(`${source} does not hold ${code}`);
    if (display !== undefined && !list.includes(display)) {
      throw new Error(
        `${source} prints ${code} as ${list.join(', ') || 'nothing'}, not ${display}`,
      );
    }
    return { code, ...(display !== undefined && { display }) };
  });
  const licence = licenceOf(source);
  return {
    source,
    ...(licence !== undefined && { licence }),
    system,
    ...(typeof file.version === 'string' && { version: file.version }),
    concepts,
  };
}

async function extractsBySource(
  table: 'snomed' | 'loinc',
  all: readonly Row[],
): Promise<Extract[]> {
  const bySource = new Map<string, Map<string, string | undefined>>();
  for (const row of all) {
    const source = String(row.source);
    const wanted = bySource.get(source) ?? new Map<string, string | undefined>();
    const display = row.fsn ?? row.display;
    wanted.set(String(row.id ?? row.code), display === undefined ? undefined : String(display));
    bySource.set(source, wanted);
  }
  const byHand = await kept(table);
  const made = [...bySource].map(async ([source, wanted]) => {
    const hand = byHand.find((row) => row.source === source);
    return hand ?? extract(source, systems[table], await readPublished(source), wanted);
  });
  return Promise.all(made);
}

async function kept(table: string): Promise<Extract[]> {
  const text = await readFile(join(folder, `${table}.json`), 'utf8').catch(() => '[]');
  const extracts: Extract[] = JSON.parse(text);
  return extracts.filter((row) => row.readByHand === true);
}

async function codeSystemExtracts(all: readonly Row[]): Promise<Extract[]> {
  const list: Extract[] = [];
  for (const system of new Set(all.map((row) => String(row.system)))) {
    const own = all.filter((row) => row.system === system);
    const wanted = new Map(own.map((row) => [String(row.code), String(row.display)]));
    list.push(await codeSystemExtract(system, wanted));
  }
  return list;
}

/** Files that are not named after the end of the URL. */
const fileNames: Readonly<Record<string, string>> = {
  'urn:iso-astm:E1762-95:2013': 'signature-type',
};

async function codeSystemExtract(
  system: string,
  wanted: ReadonlyMap<string, string>,
): Promise<Extract> {
  for (const name of codeSystemPackages) {
    const source = `${name} CodeSystem-${fileNames[system] ?? system.split('/').at(-1) ?? ''}.json`;
    const file = await readPublished(source).catch(() => undefined);
    if (file?.url === system) return extract(source, system, file, wanted);
  }
  throw new Error(`no package holds ${system}`);
}

async function write(table: string, extracts: readonly Extract[]): Promise<void> {
  await writeFile(join(folder, `${table}.json`), `${JSON.stringify(extracts, null, 1)}\n`);
}

const tables = await readTables();
await write('snomed', await extractsBySource('snomed', rows(tables, 'snomed')));
await write('loinc', await extractsBySource('loinc', rows(tables, 'loinc')));
await write('hl7', await codeSystemExtracts(rows(tables, 'hl7')));
