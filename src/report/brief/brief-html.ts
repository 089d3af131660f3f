import { escapeHtml } from '../escape-html.ts';
import type { Brief, BriefCorner, BriefSection } from './brief.ts';
import { BRIEF_STYLE } from './brief-style.ts';
import { fitCorner } from './fit-corner.ts';

const CORNERS_ON_A_PAGE = 8;
/** Printed lines that a corner has below its title on a page with one to four rows of two. */
const LINES_BY_ROWS: readonly number[] = [86, 42, 27, 20];

/** The brief as one HTML page without scripts and without anything to load: on paper eight corners to an A4 page. */
export function briefHtml({ title, subtitle, corners, cautions }: Brief): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeHtml(title)}</title>
<style>${BRIEF_STYLE}</style>
</head>
<body>
<header><h1>${escapeHtml(title)}</h1><p>${escapeHtml(subtitle)}</p></header>
${pagesOf(corners).map(pageHtml).join('\n')}
<footer>${cautions.map((caution) => `<p>${escapeHtml(caution)}</p>`).join('')}</footer>
</body>
</html>
`;
}

function pagesOf(corners: readonly BriefCorner[]): readonly (readonly BriefCorner[])[] {
  const pages = Array.from({ length: Math.ceil(corners.length / CORNERS_ON_A_PAGE) });
  return pages.map((_, i) => corners.slice(CORNERS_ON_A_PAGE * i, CORNERS_ON_A_PAGE * (i + 1)));
}

function pageHtml(corners: readonly BriefCorner[]): string {
  const lines = LINES_BY_ROWS[Math.ceil(corners.length / 2) - 1]!;
  const fitted = corners.map((corner) => fitCorner(corner, lines));
  return `<main>\n${fitted.map(cornerHtml).join('\n')}\n</main>`;
}

function cornerHtml({ title, subtitle, numbers, sections }: BriefCorner): string {
  const cells = numbers.map(
    ({ name, value }) => `<div><dt>${escapeHtml(name)}</dt><dd>${escapeHtml(value)}</dd></div>`,
  );
  return `<article>
<h2>${escapeHtml(title)} <small>${escapeHtml(subtitle)}</small></h2>
<dl class="numbers">${cells.join('')}</dl>
<dl>${sections.map(sectionHtml).join('')}</dl>
</article>`;
}

function sectionHtml({ name, lines }: BriefSection): string {
  return `<dt>${escapeHtml(name)}</dt>${lines.map((line) => `<dd>${escapeHtml(line)}</dd>`).join('')}`;
}
