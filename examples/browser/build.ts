import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { finishExamOrThrow, startExam } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';

const here = import.meta.dirname;

/** A file of the page as it is served. */
export interface PageFile {
  readonly type: string;
  readonly text: string;
}

/** The files of the page by name. They can be served by any web server, from one folder. */
export async function pageFiles(): Promise<ReadonlyMap<string, PageFile>> {
  const [app, style, html] = await Promise.all([
    bundled('app.ts', {}),
    readFile(join(here, 'style.css'), 'utf8'),
    readFile(join(here, 'index.html'), 'utf8'),
  ]);
  const page = html.replace('REPORT_STYLE', reportStyleHash());
  const version = createHash('sha256').update(`${app}${style}${page}`).digest('hex').slice(0, 16);
  const offline = await bundled('offline.ts', { FILES_VERSION: JSON.stringify(version) });
  return new Map([
    ['index.html', { type: 'text/html; charset=utf-8', text: page }],
    ['style.css', { type: 'text/css; charset=utf-8', text: style }],
    ['app.js', { type: 'text/javascript; charset=utf-8', text: app }],
    ['offline.js', { type: 'text/javascript; charset=utf-8', text: offline }],
  ]);
}

async function bundled(entry: string, define: Record<string, string>): Promise<string> {
  const made = await build({
    entryPoints: [join(here, entry)],
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    logLevel: 'silent',
    define,
  });
  return made.outputFiles[0]?.text ?? '';
}

/** A frame takes over the policy of its page, so the page names the one style of the report. */
function reportStyleHash(): string {
  const draft = startExam({
    id: 'style',
    subject: { reference: 'Patient/style' },
    examiners: [{ key: 'nurse' }],
    performed: { start: '2025-05-06T08:00:00Z' },
    recorded: '2025-05-06T08:00:00Z',
    protocol: { id: 'skin-lesion', version: '1.0.0' },
  });
  const style = /<style>([\s\S]*?)<\/style>/.exec(toHtml(finishExamOrThrow(draft, 'draft')))?.[1];
  if (style === undefined) throw new Error('the report has no style');
  return `sha256-${createHash('sha256').update(style).digest('base64')}`;
}
