import { escapeHtml } from '../escape-html.ts';
import type { Brief, BriefCorner, BriefSection } from './brief.ts';
import { BRIEF_STYLE } from './brief-style.ts';

/** The brief as one HTML page without scripts and without anything to load: up to eight corners on one A4 page. */
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
<main>
${corners.map(cornerHtml).join('\n')}
</main>
<footer>${cautions.map((caution) => `<p>${escapeHtml(caution)}</p>`).join('')}</footer>
</body>
</html>
`;
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
