import { PICTURE_STYLE } from '../picture/picture-style.ts';

/** For a phone, a desk and A4 paper; colours are those of the pictures. */
export const PAGE_STYLE: string = `${PICTURE_STYLE}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; padding: 12px; max-width: 1000px; background: var(--ground); color: var(--ink);
  font: 16px/1.45 system-ui, sans-serif; overflow-wrap: break-word; }
h1 { font-size: 1.5em; line-height: 1.2; margin: 0; }
h2 { font-size: 1.2em; line-height: 1.25; margin: 0 0 4px; padding-top: 14px; border-top: 2px solid var(--ink); }
h3 { font-size: 1em; margin: 12px 0 4px; }
p { margin: 4px 0; }
.quiet, figcaption, caption { color: var(--quiet); }
.lead { font-weight: 600; font-size: 1.06em; }
section { margin-top: 22px; }
nav ul, .notes { padding-left: 1.2em; margin: 6px 0; }
a { color: inherit; }
.figures { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 420px), 1fr)); gap: 12px 24px; }
@media (min-width: 920px) { .block .figures figure:first-child { grid-row: span 2; } }
figure { margin: 10px 0 0; min-width: 0; }
.picture { display: block; width: 100%; height: auto; max-width: 620px; }
figcaption b { color: var(--ink); }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; margin: 6px 0; }
caption { text-align: left; }
th, td { padding: 3px 10px 3px 0; text-align: left; vertical-align: top; }
th { font-weight: 600; }
thead th { border-bottom: 1px solid var(--quiet); }
tbody tr + tr :is(td, th) { border-top: 1px solid var(--faint); }
@media (max-width: 600px) { table { font-size: 0.92em; } }
details { margin: 4px 0; }
summary { cursor: pointer; padding: 4px 0; }
details table { font-size: 0.85em; }
details td, details th { white-space: nowrap; }
footer { margin-top: 26px; font-size: 0.92em; }
fieldset { border: 0; padding: 0; margin: 8px 0; min-width: 0; }
legend { padding: 0; }
.chips { display: flex; flex-wrap: wrap; gap: 6px; }
.chips label { position: relative; }
.chips input { position: absolute; opacity: 0; width: 100%; height: 100%; margin: 0; cursor: pointer; }
.chips span { display: block; min-width: 36px; padding: 5px 9px; text-align: center; border: 1.5px solid var(--quiet);
  border-radius: 6px; }
.chips input:checked + span { border-color: var(--ink); box-shadow: inset 0 0 0 2px var(--ink); font-weight: 700; }
.chips input:focus-visible + span { outline: 3px solid var(--target); outline-offset: 2px; }
.picture .picked { display: none; }
.compare { display: none; }
.compare .cell, .key { display: none; }
.key { width: 2.2em; margin-left: 0.5em; vertical-align: middle; }
.solid { border-top: 3px solid var(--pick); }
.dotted { border-top: 3px dotted var(--other); }
@supports not selector(:has(a)) { .pick { display: none; } }
@page { size: A4; margin: 12mm; }
@media print {
  body { padding: 0; max-width: none; font-size: 9.5pt; }
  .figures { grid-template-columns: 1fr 1fr; grid-auto-rows: min-content; }
  .block .figures figure:first-child { grid-row: span 2; }
  figure, tr, fieldset, h2, h3 { break-inside: avoid; }
  h2, h3 { break-after: avoid; }
  .pick, nav { display: none; }
  details:not([open]) { display: none; }
}
`;
