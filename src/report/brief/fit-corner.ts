import type { BriefCorner, BriefSection } from './brief.ts';

/** Characters on a line of half an A4 page at the size that briefs are printed in; wide letters are reckoned with. */
const LINE_CHARACTERS = 66;
/** Longest that a line of words or notes may get where room is short. */
const MOST_LINES = 2;
/** In these the driver reads the first and can do without the last; all others are kept whatever they take. */
const WORDY: readonly string[] = ['try first', 'notes'];

/**
 * The corner as it fits into so many printed lines, its title apart: long words and notes are cut with an ellipsis, then
 * the last ones are left out in turn and counted. A corner that fits is left as it is.
 */
export function fitCorner(corner: BriefCorner, lines: number): BriefCorner {
  if (linesOf(corner) <= lines) return corner;
  let fitted: BriefCorner = { ...corner, sections: corner.sections.map(cut) };
  let left = 0;
  while (linesOf(fitted) > lines - Math.sign(left)) {
    const shorter = withoutLast(fitted.sections);
    if (shorter === null) break;
    fitted = { ...fitted, sections: shorter };
    left++;
  }
  if (left === 0) return fitted;
  const said = { name: 'left out', lines: [`${left} more in the text form of the brief`] };
  return { ...fitted, sections: [...fitted.sections, said] };
}

/** Printed lines below the title. */
function linesOf({ numbers, sections }: BriefCorner): number {
  const characters = numbers.reduce(
    (sum, { name, value }) => sum + name.length + value.length + 4,
    0,
  );
  return (
    Math.ceil(characters / LINE_CHARACTERS) + sections.reduce((sum, one) => sum + rows(one), 0)
  );
}

function rows({ name, lines }: BriefSection): number {
  return lines.reduce(
    (sum, line, i) =>
      sum + Math.ceil((line.length + (i === 0 ? name.length + 2 : 0)) / LINE_CHARACTERS),
    0,
  );
}

function cut(section: BriefSection): BriefSection {
  if (!WORDY.includes(section.name)) return section;
  const most = MOST_LINES * LINE_CHARACTERS - section.name.length - 2;
  return { ...section, lines: section.lines.map((line) => shortened(line, most)) };
}

/** Between words where there are any. */
function shortened(line: string, most: number): string {
  const letters = [...line];
  if (letters.length <= most) return line;
  const kept = letters.slice(0, most - 2).join('');
  return `${kept.replace(/\s+\S{0,20}$/, '')} …`;
}

/** One line less, of the section that has most of them; null where nothing is left that may be left out. */
function withoutLast(sections: readonly BriefSection[]): readonly BriefSection[] | null {
  const wordy = sections.filter(({ name }) => WORDY.includes(name));
  const most = Math.max(0, ...wordy.map(({ lines }) => lines.length));
  const at = sections.findLastIndex(
    ({ name, lines }) => WORDY.includes(name) && lines.length === most,
  );
  const section = sections[at];
  if (section === undefined) return null;
  const lines = section.lines.slice(0, -1);
  return lines.length === 0 ? sections.toSpliced(at, 1) : sections.with(at, { ...section, lines });
}
