/** Style of the page: system fonts, dark and light, narrow screens, A4. No address of anything outside. */
export const style = `
:root { color-scheme: light dark; --ink: #1b1b1b; --paper: #ffffff; --soft: #f0f0ee; --line: #767676;
  --sign: #ffd0c4; --normal: #d3ecd3; --partial: #fff0bd; --not-examined: #dcdcdc; --said: #dce8f7; }
@media (prefers-color-scheme: dark) { :root { --ink: #f2f2f2; --paper: #161616; --soft: #242424;
  --line: #a3a3a3; --sign: #6b2a1c; --normal: #1f4a26; --partial: #5a4708; --not-examined: #444444;
  --said: #22384f; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 60rem; font: 1rem/1.5 system-ui, sans-serif;
  color: var(--ink); background: var(--paper); overflow-wrap: anywhere; text-align: start; }
h1 { font-size: 1.5rem; } h2 { font-size: 1.2rem; border-block-end: 1px solid var(--line); }
h3 { font-size: 1rem; }
dl { display: grid; grid-template-columns: minmax(6rem, max-content) 1fr; gap: .2rem 1rem; }
dt { font-weight: 600; } dd { margin: 0; }
.status { padding: .4rem .8rem; border: 2px solid var(--line); }
.status-entered-in-error, .status-draft { border-style: dashed; border-width: 4px; }
.lead { font-size: 1.1rem; }
.note { color: var(--ink); background: var(--soft); padding: .1rem .5rem; }
.verbatim, .lead, .note { white-space: pre-wrap; }
.cautions, footer { border: 1px solid var(--line); padding: 0 .8rem; margin-block: 1rem; }
.scroll { overflow-x: auto; } .scroll:focus-visible { outline: 3px solid var(--line); }
table { border-collapse: collapse; width: 100%; } caption { text-align: start; font-weight: 600; }
th, td { border: 1px solid var(--line); padding: .25rem .5rem; text-align: start; vertical-align: top;
  min-width: 5rem; }
.map { display: flex; flex-wrap: wrap; gap: 1rem; align-items: flex-start; }
.map > * { flex: 1 1 16rem; } .drawing { max-width: 26rem; height: auto; }
.outline { fill: none; stroke: var(--line); stroke-width: 1.5; }
.mark { stroke: var(--ink); stroke-width: 1; } .mark.silent { fill: var(--paper); stroke-dasharray: 3 3; }
.symbol { font: 12px system-ui, sans-serif; text-anchor: middle; fill: var(--ink); }
.side { font: 14px system-ui, sans-serif; fill: var(--ink); } .side.end { text-anchor: end; }
.mark.sign { fill: var(--sign); stroke-width: 2.5; } .mark.normal { fill: var(--normal); }
.mark.partial { fill: var(--partial); } .mark.not-examined { fill: var(--not-examined); }
.mark.said { fill: var(--said); }
.legend { list-style: none; padding: 0; }
.key { display: inline-block; min-width: 1.6rem; text-align: center; border: 1px solid var(--ink);
  color: var(--ink); }
.key.sign { background: var(--sign); border-width: 2px; } .key.normal { background: var(--normal); }
.key.partial { background: var(--partial); } .key.not-examined { background: var(--not-examined); }
.key.said { background: var(--said); } .key.silent { background: var(--paper); border-style: dashed; }
@page { size: A4; margin: 15mm; }
@media print { body { max-width: none; padding: 0; font-size: 10pt; } section { break-inside: auto; }
  tr, li, svg { break-inside: avoid; } .scroll { overflow: visible; } }
`;
