import { textWidth } from './write-text.ts';

/** Items side by side with `gap` between them, in as few lines as they fit in; an item is never broken. */
export function flowItems(items: readonly string[], width: number, gap: string): readonly string[] {
  const lines: string[] = [];
  for (const item of items) {
    const longer = `${lines.at(-1) ?? ''}${gap}${item}`;
    if (lines.length > 0 && textWidth(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(item);
  }
  return lines;
}
