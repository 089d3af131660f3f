/**
 * Black on white, for paper: two columns of up to four corners on A4 (ISO 216, 210 mm by 297 mm). On a narrow screen the
 * corners stand below each other.
 */
export const BRIEF_STYLE: string = `
@page { size: A4 portrait; margin: 8mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 3mm; max-width: 194mm; background: #fff; color: #000;
  font: 12px/1.3 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { margin: 0; font-size: 1.5em; }
h2 { margin: 0 0 1mm; font-size: 1.15em; border-bottom: 1px solid #000; }
small { font-weight: normal; font-size: 0.8em; }
header p, footer p { margin: 0; }
footer { margin-top: 2mm; font-size: 0.85em; }
main { display: grid; grid-template-columns: 1fr 1fr; gap: 3mm 5mm; margin-top: 2mm; }
main + main { break-before: page; }
article { break-inside: avoid; min-width: 0; }
dl.numbers { display: flex; flex-wrap: wrap; gap: 0 1em; margin: 0; }
.numbers div { white-space: nowrap; }
.numbers dt { float: none; display: inline; font-weight: normal; }
.numbers dd { display: inline; font-weight: bold; }
dl { margin: 1mm 0 0; }
dt { font-weight: bold; float: left; clear: left; margin-right: 0.5em; }
dd { margin: 0; }
@media screen and (max-width: 600px) {
  main { grid-template-columns: 1fr; }
  body { font-size: 15px; }
}
@media print {
  body { padding: 0; max-width: none; font-size: 6.6pt; line-height: 1.2; }
}
`;
