/** Style of the pages about a conversion: system fonts, dark and light, narrow screens, print. */
export const conversionStyle = `
:root { color-scheme: light dark; --ink: #1b1b1b; --paper: #ffffff; --soft: #f1f1ee; --line: #6b6b6b; --wrong: #a5201a; }
@media (prefers-color-scheme: dark) { :root { --ink: #f2f2f2; --paper: #161616; --soft: #262626;
  --line: #a3a3a3; --wrong: #ffb4a6; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 0 1rem 5rem; max-width: 62rem; font: 1rem/1.45 system-ui, sans-serif;
  color: var(--ink); background: var(--paper); overflow-wrap: anywhere; }
h1 { font-size: 1.4rem; } h2 { font-size: 1.15rem; border-block-end: 1px solid var(--line); }
fieldset { border: 1px solid var(--line); margin: 0 0 1rem; padding: .4rem .8rem .8rem; min-width: 0; }
legend { font-weight: 700; padding: 0 .4rem; } p { margin-block: .35rem; }
ul { margin-block: .2rem; padding-inline-start: 1.2rem; }
label { display: inline-flex; gap: .4rem; align-items: center; min-height: 2rem; margin-inline-end: 1rem; }
[data-control] { display: flex; flex-wrap: wrap; gap: .3rem .6rem; align-items: center; margin-block: .3rem; }
[hidden] { display: none !important; }
input, select, button { font: inherit; color: inherit; background: var(--paper); border: 1px solid var(--line);
  padding: .3rem .5rem; max-width: 100%; min-height: 2rem; }
input[type="radio"] { min-height: 1.2rem; width: 1.2rem; }
button { font-weight: 700; border-width: 2px; padding: .4rem 1rem; }
:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
[aria-invalid] { border: 3px dashed var(--wrong); }
.bar { position: sticky; bottom: 0; display: flex; flex-wrap: wrap; gap: .3rem 1rem; align-items: center;
  background: var(--paper); border-block-start: 2px solid var(--line); padding: .5rem 0; }
.asked { font-weight: 700; } .soft { background: var(--soft); padding: .2rem .5rem; }
.scroll { overflow-x: auto; } .scroll:focus-visible { outline: 3px solid var(--line); }
table { border-collapse: collapse; width: 100%; } caption { text-align: start; font-weight: 600; }
th, td { border: 1px solid var(--line); padding: .2rem .5rem; text-align: start; vertical-align: top;
  min-width: 5rem; }
.verbatim { white-space: pre-wrap; } .changed { font-weight: 700; text-decoration: underline; }
@media print { .bar { display: none; } body { max-width: none; padding: 0; font-size: 9pt; } }
`;
