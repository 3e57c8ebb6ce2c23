import { type Content, element, type Html, pageHead, section, table } from '../report/html.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import type { Audit, CoverageTally } from './audit.ts';
import type { AuditWords } from './audit-words.ts';
import { englishAuditWords } from './words.ts';

interface Wording {
  readonly words: AuditWords;
  readonly catalogue: Catalogue;
  readonly tag: string;
}

const english: Wording = { words: englishAuditWords, catalogue: builtInCatalogue, tag: 'en' };

/**
 * Writes an audit as a page, complete in itself and without script: tables, with bars that only
 * repeat their figures.
 *
 * @param audit From an auditor.
 * @param wording Words, catalogue and language tag. Default: English.
 * @returns The page as HTML.
 * @example
 * const page = auditHtml(createAuditor().result());
 */
export function auditHtml(audit: Audit, { words, catalogue, tag }: Wording = english): string {
  const display = (name: keyof Catalogue, code: string): string =>
    (catalogue[name].get(code) as { display?: string } | undefined)?.display ?? code; // every row has one
  const counts = (
    id: string,
    heading: string,
    some: Readonly<Record<string, number>>,
    name: (code: string) => string,
  ): Content => {
    const entries = Object.entries(some).sort(([, a], [, b]) => b - a);
    const most = entries[0]?.[1] ?? 0;
    const rows = entries.map(([code, number]): Content[] => [
      name(code),
      [String(number), bar(number, most)],
    ]);
    return section(id, heading, table({ caption: heading, head: [words.what, words.count], rows }));
  };
  const page = element(
    'html',
    { lang: tag },
    pageHead(words.title, style),
    element(
      'body',
      {},
      element(
        'main',
        {},
        element('h1', {}, words.title),
        element(
          'p',
          {},
          `${audit.exams} ${words.exams}${audit.first === undefined ? '' : `, ${audit.first} – ${audit.last}`}`,
        ),
        element('p', {}, words.caution),
        coverage('protocols', words.protocols, audit.protocols, (code) =>
          display('protocols', code),
        ),
        coverage('regions', words.regions, audit.regions, (code) => display('regions', code)),
        counts('reasons', words.reasons, audit.reasons, (code) => display('reasons', code)),
        counts('findings', words.findings, audit.findings, (code) => code),
        counts('concerns', words.concerns, audit.concerns, (code) =>
          display('values', `concern.${code}`),
        ),
        counts('statuses', words.statuses, audit.statuses, (code) => code),
        section(
          'prompts',
          words.prompts,
          table({
            caption: words.prompts,
            head: [words.what, words.fired, words.open],
            rows: Object.entries(audit.prompts).map(([rule, { fired, open }]) => [
              rule,
              String(fired),
              String(open),
            ]),
          }),
        ),
        section(
          'corrections',
          words.corrections,
          element(
            'p',
            {},
            `${audit.corrections.exams} ${words.exams}; ${audit.corrections.steps} ${words.steps}; ${audit.corrections.sides} ${words.sides}`,
          ),
        ),
        section(
          'agreement',
          words.agreement,
          element('p', {}, `${audit.agreement.pairs} ${words.pairs}`),
          table({
            caption: words.kappa,
            head: [words.what, words.count, 'κ'],
            rows: audit.agreement.signs.map(({ code, both, first, second, neither, kappa }) => [
              display('findings', code),
              String(both + first + second + neither),
              kappa === undefined ? '–' : kappa.toFixed(2),
            ]),
          }),
          table({
            caption: words.limits,
            head: [words.what, words.count, words.mean, words.between],
            rows: audit.agreement.measures.map(({ code, count, mean, lower, upper }) => [
              display('measures', code),
              String(count),
              mean.toFixed(2),
              `${lower.toFixed(2)} – ${upper.toFixed(2)}`,
            ]),
          }),
        ),
        section(
          'digits',
          words.digits,
          table({
            caption: words.digits,
            head: [words.what, words.count, words.zeroOrFive, 'χ²'],
            rows: Object.entries(audit.digits).map(([code, { count, zeroOrFive, chiSquare }]) => [
              display('measures', code),
              String(count),
              [percent(zeroOrFive), bar(zeroOrFive, 1)],
              chiSquare.toFixed(1),
            ]),
          }),
        ),
      ),
    ),
  );
  return `<!DOCTYPE html>\n${page.markup}\n`;

  function coverage(
    id: string,
    heading: string,
    tallies: Readonly<Record<string, CoverageTally>>,
    name: (code: string) => string,
  ): Content {
    return section(
      id,
      heading,
      table({
        caption: heading,
        head: [
          words.what,
          words.required,
          words.complete,
          words.partial,
          words.documented,
          words.gaps,
        ],
        rows: Object.entries(tallies).map(([code, one]) => [
          name(code),
          String(one.required),
          [percent(one.complete / one.required), bar(one.complete, one.required)],
          percent(one.partial / one.required),
          percent((one.documented + one.carried) / one.required),
          percent(one.gaps / one.required),
        ]),
      }),
    );
  }
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** A bar that repeats the figure beside it. */
function bar(value: number, most: number): Html {
  const width = most === 0 ? 0 : Math.round((value / most) * 100);
  return element(
    'svg',
    { viewBox: '0 0 100 6', class: 'bar', 'aria-hidden': 'true', preserveAspectRatio: 'none' },
    element('rect', { x: 0, y: 0, width, height: 6 }),
  );
}

/**
 * Writes an audit as a table of `part,code,figure,value`, a line for each figure.
 *
 * @param audit From an auditor.
 * @returns The table as CSV.
 * @example
 * const table = auditCsv(createAuditor().result());
 * @see https://www.rfc-editor.org/rfc/rfc4180
 */
export function auditCsv(audit: Audit): string {
  const lines: (readonly (string | number | undefined)[])[] = [['part', 'code', 'figure', 'value']];
  visit(audit, []);
  return lines.map((cells) => `${cells.map((cell) => cell ?? '').join(',')}\r\n`).join('');

  function visit(value: unknown, path: readonly string[]): void {
    if (typeof value === 'number' || typeof value === 'string') {
      const [part = '', ...rest] = path;
      lines.push([part, rest.slice(0, -1).join('/'), rest.at(-1) ?? '', value]);
    } else if (Array.isArray(value)) {
      value.forEach((one, at) => {
        const code =
          typeof one === 'object' && one !== null && 'code' in one ? String(one.code) : String(at);
        visit(one, [...path, code]);
      });
    } else if (typeof value === 'object' && value !== null) {
      for (const [name, inner] of Object.entries(value))
        if (name !== 'code') visit(inner, [...path, name]);
    }
  }
}

/** A constant: no character that HTML would read. */
const style = `
:root { color-scheme: light dark; --bar: #5a6b8c; }
@media (prefers-color-scheme: dark) { :root { --bar: #9db2d8; } }
body { margin: 0 auto; padding: 1rem; max-width: 62rem; font: 1rem/1.45 system-ui, sans-serif; }
h2 { font-size: 1.15rem; border-block-end: 1px solid; } table { border-collapse: collapse; width: 100%; }
caption { text-align: start; font-weight: 600; } .scroll { overflow-x: auto; }
th, td { border: 1px solid; padding: .2rem .5rem; text-align: start; }
.bar { display: block; width: 8rem; height: .45rem; } .bar rect { fill: var(--bar); }
@page { size: A4; margin: 12mm; } @media print { body { padding: 0; font-size: 9pt; } tr { break-inside: avoid; } }
`;
