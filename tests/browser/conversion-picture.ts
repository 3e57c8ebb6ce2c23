import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Exam, orThrow, parseExam } from '../../src/index.ts';
import { tell } from '../../src/kinds/registries/pages.ts';
import { createPage } from '../../src/report/create-page.ts';
import { element, plainText, table } from '../../src/report/html.ts';
import { lineText } from '../../src/report/lines.ts';
import { pageStyle } from '../../src/report/style.ts';

const root = join(import.meta.dirname, '../..');
const example = join(root, 'examples/convert/vineyard');

interface LedgerField {
  readonly name: string;
  readonly fate: string;
  readonly statement?: string;
}

interface Converted {
  readonly summary: string;
  readonly fields: readonly LedgerField[];
  readonly exam: Exam;
}

/** What the command line makes of the example, with a ledger of where each field went. */
function converted(): Converted {
  const folder = mkdtempSync(join(tmpdir(), 'face-neck-'));
  try {
    const out = join(folder, 'out');
    const args = [
      `${example}.csv`,
      '--mapping',
      `${example}.mapping.json`,
      '--to',
      'exams',
      '--out',
      out,
      '--ledger',
    ];
    const program = [join(root, 'node_modules/tsx/dist/cli.mjs'), join(root, 'src/cli/bin.ts')];
    // The example holds rows that belong into quarantine, for which the exit code is 1.
    const { status } = spawnSync(process.execPath, [...program, 'convert', ...args]);
    if (status !== 1) throw new Error(`the conversion ended with ${status}`);
    const second = (name: string): string =>
      readFileSync(join(out, name), 'utf8').split('\n')[1] ?? '';
    const { fields } = JSON.parse(second('ledger.ndjson')) as Pick<Converted, 'fields'>; // as --ledger writes it
    const summary = readFileSync(join(out, 'summary.txt'), 'utf8');
    return {
      summary,
      fields,
      exam: orThrow('read the exam', parseExam(JSON.parse(second('exams.ndjson')))),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A page with a row of the example, what each field of it became, and the summary of the run. */
export function conversionPage(): string {
  const { summary, fields, exam } = converted();
  const { page: shown } = createPage(exam, {});
  const statements = new Map(exam.statements.map((one) => [one.key, one]));
  const lines = readFileSync(`${example}.csv`, 'utf8').split('\n');
  const [names = [], row = []] = [lines[0], lines[2]].map((line = '') => line.trim().split(';'));
  const texts = new Map(names.map((name, at) => [name, row[at] ?? '']));
  // In the words of the page, in which what is denied says so.
  const became = (key: string | undefined): string => {
    const statement = statements.get(key ?? '');
    return statement === undefined ? '' : plainText(lineText(tell(statement, shown), shown));
  };
  const rows = fields
    .filter(({ statement }) => statement !== undefined)
    .map((field) => [field.name, texts.get(field.name) ?? '', became(field.statement)]);
  const page = element(
    'main',
    {},
    element('h2', {}, 'A line of an old table, and where each field of it went'),
    element('pre', {}, `${lines[0]}\n${lines[2]}`),
    table({ caption: 'Ledger', head: ['Field', 'Text', 'Became'], rows }),
    element('h2', {}, 'Summary of the run'),
    element('pre', {}, summary.split('\nIssues')[0] ?? ''),
  );
  const style = pageStyle({ page: '', of: '' });
  return `<!DOCTYPE html><style>${style} pre { white-space: pre-wrap; background: var(--soft); padding: .5rem; } td, th { padding: .1rem .5rem; }</style>${page.markup}`;
}
