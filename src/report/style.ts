import { drawingStyle } from './drawing/style.ts';

/**
 * Style of the page: system fonts, dark and light, narrow screens, A4. No address of anything outside.
 * What matters is told by words, form and weight; colour only adds.
 */
export function pageStyle(pageNumber: PageNumber): string {
  return `${screen}${drawingStyle}${print}${pageNumberStyle(pageNumber)}`;
}

/** Words around the number of a printed page. */
interface PageNumber {
  readonly page: string;
  readonly of: string;
}

/** `Page 2 of 3` at the foot of every printed page. */
export function pageNumberStyle({ page, of }: PageNumber): string {
  return `
@page { @bottom-right { content: ${cssText(`${page} `)} counter(page) ${cssText(` ${of} `)} counter(pages);
  font: 8pt system-ui, sans-serif; } }
`;
}

/**
 * A text as a string of CSS, in which every character but letters and digits is written by its number.
 * @see https://www.w3.org/TR/css-syntax-3/#consume-escaped-code-point
 */
function cssText(text: string): string {
  const escaped = [...text].map((one) =>
    /[A-Za-z0-9]/.test(one) ? one : `\\${(one.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${escaped.join('')}"`;
}

const screen = `
:root { color-scheme: light dark; --ink: #1b1b1b; --paper: #ffffff; --soft: #f1f1ee; --line: #767676;
  --faint: #c9c9c4; --sign: #b3261e; --on-sign: #ffffff; --sign-area: #f6c9bf; --normal: #d3ecd3;
  --partial: #fff0bd; --not-examined: #dcdcdc; --said: #dce8f7; --skin: #faf3ec; --deep: #eef1f6; }
@media (prefers-color-scheme: dark) { :root { --ink: #f2f2f2; --paper: #161616; --soft: #242424;
  --line: #a3a3a3; --faint: #4a4a48; --sign: #ffb4a6; --on-sign: #2a0b06; --sign-area: #6b2a1c;
  --normal: #1f4a26; --partial: #5a4708; --not-examined: #444444; --said: #22384f; --skin: #211d1a;
  --deep: #1b1f26; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 0 1rem 1rem; max-width: 62rem; font: 1rem/1.45 system-ui, sans-serif;
  color: var(--ink); background: var(--paper); overflow-wrap: anywhere; text-align: start; }
h1 { font-size: 1.4rem; margin-block: .8rem .4rem; }
h2 { font-size: 1.15rem; border-block-end: 1px solid var(--line); margin-block: 1.1rem .4rem; }
h3 { font-size: 1rem; margin-block: .5rem .1rem; }
p { margin-block: .35rem; } ul { margin-block: .2rem; padding-inline-start: 1.2rem; }
a { color: inherit; }
.strip { position: sticky; top: 0; z-index: 1; display: flex; flex-wrap: wrap; gap: 0 1rem;
  padding: .3rem 1rem; margin: 0 -1rem; font-size: .85rem; background: var(--paper);
  border-block-end: 2px solid var(--line); }
.strip-status { display: inline-block; border: 1px solid var(--ink); padding: 0 .4rem; }
.strip-draft, .strip-preliminary { border-block-end: 4px dashed var(--ink); }
.strip-amended, .strip-corrected, .strip-appended { border-block-end: 4px double var(--ink); }
.strip-cancelled, .strip-entered-in-error { border-block: 6px solid var(--ink); }
.strip-draft .strip-status, .strip-preliminary .strip-status { border: 3px dashed var(--ink); }
.strip-amended .strip-status, .strip-corrected .strip-status, .strip-appended .strip-status {
  border: 4px double var(--ink); }
.strip-cancelled .strip-status, .strip-entered-in-error .strip-status { border: 4px solid var(--ink);
  text-decoration: underline; }
.record-entered-in-error main { text-decoration: line-through; text-decoration-thickness: 1px; }
.status { display: inline-block; padding: .2rem .7rem; border: 2px solid var(--line); margin: 0; }
.status-entered-in-error, .status-draft { border-style: dashed; border-width: 4px; }
.facts { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 20rem), 1fr));
  gap: .15rem 1.5rem; margin-block: .5rem; }
.facts > div { display: flex; gap: .6rem; } .facts > div:first-child { grid-column: 1 / -1; font-size: 1.1rem; }
dt { font-weight: 600; flex: 0 0 7rem; overflow-wrap: normal; hyphens: auto; } dd { margin: 0; }
.lead { font-size: 1.1rem; }
.concern { display: flex; flex-wrap: wrap; align-items: center; gap: .2rem .8rem; padding: .3rem .8rem;
  border: 1px solid var(--line); }
.concern-watch { border-width: 2px; } .concern-refer-routine { border-width: 3px; }
.concern-refer-urgent { border: 5px solid var(--ink); font-size: 1.2rem; }
.concern-emergency { border: 12px double var(--ink); font-size: 1.5rem; text-transform: uppercase; }
.concern-refer-urgent strong, .concern-emergency strong { text-decoration: underline; color: var(--sign); }
.steps { display: inline-flex; gap: 3px; }
.step { width: .8rem; height: 1.1rem; border: 2px solid var(--ink); }
.step.on { border-width: .55rem .4rem; }
.pressing { white-space: nowrap; border: 2px solid var(--ink); padding: 0 .3rem; }
.net { border-inline-start: 4px solid var(--line); padding-inline-start: .6rem; }
.parts { columns: 22rem 2; column-gap: 1.6rem; } .part { break-inside: avoid; margin-block-end: .4rem; }
.signs { list-style: none; padding: 0; } .signs > li { padding-inline-start: 2.1rem; text-indent: -2.1rem;
  margin-block: .2rem; } .signs > li > * { text-indent: 0; }
.signs > .state { padding-inline-start: 2.1rem; text-indent: 0; }
.basis .sign { font-weight: 600; } .size { font-weight: 600; }
.number { display: inline-block; min-width: 1.6rem; padding: 0 .3rem; text-align: center; text-indent: 0;
  border: 2px solid var(--sign); border-radius: 1rem; font-weight: 700; font-size: .9rem;
  color: var(--sign); background: var(--paper); text-decoration: none; margin-inline-end: .3rem; }
:target { outline: 3px solid var(--sign); outline-offset: 2px; }
.deviates { font-weight: 700; text-decoration: underline; }
.note { color: var(--ink); background: var(--soft); padding: .05rem .5rem; text-indent: 0; }
.note::before { content: "\\201C"; } .note::after { content: "\\201D"; }
.origin { font-style: italic; }
.verbatim, .lead, .note { white-space: pre-wrap; }
.cautions, footer { border: 1px solid var(--line); padding: 0 .8rem; margin-block: 1rem; }
.scroll { overflow-x: auto; } .scroll:focus-visible { outline: 3px solid var(--line); }
table { border-collapse: collapse; width: 100%; } caption { text-align: start; font-weight: 600; }
section > h2 + .scroll caption { position: absolute; clip-path: inset(50%); height: 1px; width: 1px;
  overflow: hidden; }
th, td { border: 1px solid var(--line); padding: .2rem .5rem; text-align: start; vertical-align: top;
  min-width: 5rem; overflow-wrap: break-word; }
@media screen and (max-width: 30rem) { tr { display: flex; flex-wrap: wrap; }
  th, td { flex: 1 1 0; min-width: 0; padding: .2rem .3rem; } tr > :first-child { flex-basis: 100%; } }
`;

const print = `
@page { size: A4; margin: 9mm 11mm 13mm; }
@media print {
  :root { --ink: #000000; --paper: #ffffff; --line: #555555; --sign: #000000; --on-sign: #ffffff; }
  body { display: table; width: 100%; max-width: none; padding: 0; font-size: 8.3pt; line-height: 1.25; }
  .strip { display: table-header-group; position: static; break-inside: avoid; font-size: 8.5pt; }
  .strip > * { margin-inline-end: .8rem; }
  .strip::after { content: ""; display: block; border-block-end: 1px solid var(--line); margin-block: 1mm 1.5mm; }
  .strip-draft::after, .strip-preliminary::after { border-block-end: 4px dashed var(--ink); }
  .strip-amended::after, .strip-corrected::after, .strip-appended::after { border-block-end: 4px double var(--ink); }
  .strip-cancelled::after, .strip-entered-in-error::after { border-block-end: 6px solid var(--ink); }
  h1 { font-size: 13pt; margin-block: 0 1mm; } h2 { font-size: 10pt; margin-block: 1.5mm .5mm; }
  h3 { font-size: 9pt; margin-block: .7mm 0; } p, ul { margin-block: .6mm; } ul { padding-inline-start: 3.5mm; } .lead, .facts > div:first-child { font-size: 10pt; }
  h2, h3 { break-after: avoid; break-inside: avoid; } tr, li, svg { break-inside: avoid; } .scroll { overflow: visible; }
  .concern-refer-urgent { font-size: 11pt; } .concern-emergency { font-size: 13pt; border-width: 8px; }
  tbody tr:first-child { break-before: avoid; } 
  th, td { padding: .3mm 1.5mm; } .parts { columns: 2; }
  .details { columns: 2; column-gap: 6mm; font-size: 7.6pt; line-height: 1.22; } .details table { font-size: 7.2pt; }
  .appendix { break-before: page; } .appendix .whole { column-span: all; font-size: 12pt; }
  .details th { font-weight: 500; } details:not([open]) { display: none; } .details { hyphens: auto; } .details th, .details td { min-width: 0; overflow-wrap: break-word; }
  .part { break-inside: auto; } .views > *, .part > h3 { break-inside: avoid; } .note { padding: 0 1mm; }
  .views { grid-template-columns: repeat(6, 1fr); gap: 1mm 2mm; } .beside { grid-column: span 3; }
  .badge circle { r: 13px; } .badge text { font-size: 16px; } .symbol { font-size: 13px; }
  .view .side { font-size: 14px; } .view-eye .side, .view-ear .side, .view-neck .side, .view-nose .side { font-size: 12px; }
  .stack { gap: 1mm; } header .status { display: none; } .legend, .wholes { font-size: 8pt; }
  footer, .cautions { break-inside: avoid; padding: 0 2mm; margin-block: 1mm; font-size: 7.6pt; } footer h2 { font-size: 9pt; border: 0; }
}
`;
