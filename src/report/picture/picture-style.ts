/**
 * Colours are those of Okabe and Ito; on white, sky blue and orange are darkened until they stand out by 3 to 1 (WCAG
 * 2.2, success criterion 1.4.11). Each is doubled by a dash, a width, a shape or a word.
 */
const LIGHT = `--ground: #fff; --ink: #1a1a1a; --quiet: #5a5a5a; --faint: #d8d8d8; --target: #2680b0;
  --driver: #b87400; --pick: #008a64; --other: #b45f8f;`;
const DARK = `--ground: #151515; --ink: #ececec; --quiet: #a8a8a8; --faint: #3c3c3c; --target: #56b4e9;
  --driver: #e69f00; --pick: #00b585; --other: #dd9ac0;`;

/** For pages and for pictures in files of their own; paper is always light. */
export const PICTURE_STYLE: string = `
:root { color-scheme: light dark; ${LIGHT} }
@media (prefers-color-scheme: dark) { :root { ${DARK} } }
@media print { :root { color-scheme: light; ${LIGHT} } }
.picture { font: 12.5px system-ui, sans-serif; }
.picture text { fill: var(--ink); }
.picture .quiet { fill: var(--quiet); }
.picture .ground { fill: var(--ground); }
.picture .end { text-anchor: end; }
.picture .middle { text-anchor: middle; }
.picture .grid { stroke: var(--faint); stroke-width: 1; fill: none; }
.picture .axis { stroke: var(--quiet); stroke-width: 1; fill: none; }
.picture .band { fill: var(--faint); fill-opacity: 0.55; }
.picture .line { fill: none; stroke-linejoin: round; }
.picture .target { stroke: var(--target); stroke-width: 2.4; stroke-dasharray: 7 4; }
.picture .corridor { stroke: var(--target); stroke-width: 1; stroke-dasharray: 1.5 3; }
.picture .rep { stroke: var(--ink); stroke-width: 0.8; stroke-opacity: 0.45; }
.picture .mean { stroke: var(--driver); stroke-width: 3; }
.picture .shade { fill: var(--driver); fill-opacity: 0.22; stroke: none; }
.picture .own { stroke: var(--driver); stroke-width: 2; }
.picture .trend { stroke: var(--driver); stroke-width: 1.5; }
.picture .dot { fill: var(--driver); stroke: var(--driver); stroke-width: 1.5; }
.picture .hollow { fill: var(--ground); }
.picture .first { stroke: var(--target); stroke-width: 2.2; fill: none; }
.picture .odd { fill: var(--other); stroke: var(--other); }
.picture .ring { fill: none; stroke: var(--ink); stroke-width: 1.5; }
.picture .break { stroke: var(--ink); stroke-width: 1.5; stroke-dasharray: 4 2; }
.picture .limit { stroke: var(--quiet); stroke-width: 1.4; stroke-dasharray: 8 3; }
.picture .centre { stroke: var(--quiet); stroke-width: 1.4; stroke-dasharray: 2 3; }
`;
