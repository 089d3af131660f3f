import { escapeMarkdown } from '../escape-markdown.ts';
import type { Brief, BriefCorner } from './brief.ts';

/** The brief as Markdown (CommonMark, with the table extension): no text from outside is markup in it. */
export function briefMarkdown({ title, subtitle, corners, cautions }: Brief): string {
  const lines = [
    `# ${escapeMarkdown(title)}`,
    '',
    escapeMarkdown(subtitle),
    ...corners.flatMap((corner) => ['', ...cornerLines(corner)]),
    '',
    ...cautions.map((caution) => `> ${escapeMarkdown(caution)}`),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

function cornerLines({ title, subtitle, numbers, sections }: BriefCorner): string[] {
  return [
    `## ${escapeMarkdown(title)}`,
    '',
    escapeMarkdown(subtitle),
    '',
    '| target | |',
    '| --- | --- |',
    ...numbers.map(({ name, value }) => `| ${escapeMarkdown(name)} | ${escapeMarkdown(value)} |`),
    '',
    ...sections.flatMap(({ name, lines }) => [
      `- **${escapeMarkdown(name)}**`,
      ...lines.map((line) => `  - ${escapeMarkdown(line)}`),
    ]),
  ];
}
