/** Style of the views: lines of the body, marks by form and glyph as well as colour, numbers. */
export const drawingStyle = `
.views { display: grid; grid-template-columns: repeat(3, 1fr); gap: .4rem 1rem; align-items: start; }
.beside { grid-column: 1 / -1; }
.view { width: 100%; height: auto; overflow: visible; } .stack { display: grid; gap: .6rem; }
.view-eye .side, .view-ear .side { font-size: 9px; } .view-neck .side, .view-nose .side, .view-front .side,
.view-sensation .side { font-size: 12.5px; }
.line { fill: none; stroke: var(--line); stroke-width: 1.2; stroke-linejoin: round; stroke-linecap: round; }
.line.skin { fill: var(--skin); stroke: var(--ink); stroke-width: 1.4; }
.line.deep { fill: var(--deep); stroke: var(--ink); stroke-width: 1.2; }
.line.hair { fill: var(--soft); stroke: var(--line); } .line.contour { stroke: var(--ink); }
.line.dark { fill: var(--line); stroke: none; } .line.pale { stroke: var(--faint); }
.border { fill: none; stroke: var(--ink); stroke-width: 1; stroke-dasharray: 6 3 1 3; }
.division { font: italic 12px system-ui, sans-serif; text-anchor: middle; fill: var(--ink); }
.side { font: 11px system-ui, sans-serif; fill: var(--ink); }
.side.middle { text-anchor: middle; font-weight: 600; } .side.end { text-anchor: end; }
.mark { stroke: var(--line); stroke-width: .7; fill-opacity: .6; }
.mark.normal { fill: var(--normal); } .mark.partial { fill: var(--partial); stroke-width: 1.4; }
.mark.not-examined { fill: var(--not-examined); stroke-width: 1.4; stroke-dasharray: 2 2; }
.mark.said { fill: var(--said); } .mark.silent { fill: none; stroke: var(--faint); stroke-dasharray: 3 3; }
.mark.sign { fill: var(--sign-area); stroke: var(--sign); stroke-width: 2; }
.mark.before { fill: none; stroke: var(--line); stroke-width: 1; stroke-dasharray: 1 2; }
.symbol { font: 8px system-ui, sans-serif; text-anchor: middle; fill: var(--ink); }
.lesion { fill: var(--sign); fill-opacity: .35; stroke: var(--sign); stroke-width: 1; }
.lead-line { stroke: var(--sign); stroke-width: 1.2; }
.badge circle { fill: var(--paper); stroke: var(--sign); stroke-width: 2; }
.badge text { font: 700 11px system-ui, sans-serif; text-anchor: middle; fill: var(--sign); }
.badge:focus-visible circle { stroke-width: 4; } .badge:target circle { fill: var(--partial); }
.course { width: 10rem; height: 2.5rem; } .visit { display: inline-block; margin-inline-end: .8rem; } .point { fill: var(--ink); }
.wholes, .legend { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .2rem 1.2rem;
  font-size: .9rem; }
.key { display: inline-block; min-width: 1.4rem; min-height: 1.2em; text-align: center;
  border: 1px solid var(--ink); color: var(--ink); border-radius: 1rem; }
.key.sign, .key.numbered { background: var(--paper); border: 2px solid var(--sign); color: var(--sign);
  font-weight: 700; }
.key.normal { background: var(--normal); } .key.partial { background: var(--partial); border-width: 2px; }
.key.not-examined { background: var(--not-examined); border-style: dashed; }
.key.said { background: var(--said); } .key.silent { background: none; border-style: dashed; }
.key.before { border-style: dotted; }
@media screen and (max-width: 44rem) { .views { grid-template-columns: 1fr 1fr; grid-auto-flow: dense; }
  .views > .of-right { grid-column: 1; } .views > .of-left { grid-column: 2; }
  .views > .view-front, .views > .middle, .views > .view-sensation { grid-column: 1 / -1; }
  .views > .view-front { order: -1; } .views > .blank { display: none; }
  .views > .of-right > .side, .views > .of-left > .side { font-size: 17px; } .stack > .view .side { font-size: 11.5px; }
  .views > .of-right > .badge, .views > .of-left > .badge { transform: scale(1.6); transform-box: fill-box; transform-origin: center; } }
@media (forced-colors: active) { .line, .mark, .border { stroke: CanvasText; fill: none; }
  .badge circle { fill: Canvas; stroke: LinkText; } .badge text, .symbol, .side, .division {
  fill: CanvasText; } .lesion { fill: CanvasText; } .concern { border-color: CanvasText; } }
`;
