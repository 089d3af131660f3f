/** Rules that show the picked reps of a page, up to a number: one in a solid line, the other in a dotted one. */
export function pickStyle(highest: number): string {
  return Array.from({ length: highest }, (_, i) => rulesOf(i + 1)).join('');
}

function rulesOf(n: number): string {
  const one = `.block:has(.one${n}:checked)`;
  const other = `.block:has(.other${n}:checked)`;
  return `
${one} .picked.r${n} { display: inline; stroke: var(--pick); stroke-width: 2.6; }
${other} .picked.r${n} { display: inline; stroke: var(--other); stroke-width: 2.6; stroke-dasharray: 2 2.5; }
${one} .compare, ${other} .compare { display: block; }
${one} .cell.c${n}, ${other} .cell.c${n} { display: table-cell; }
${one} th.c${n} .solid, ${other} th.c${n} .dotted { display: inline-block; }
`;
}
